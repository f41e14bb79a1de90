using SensorProfile.FixedPattern.Telegraph;
using SensorProfile.Tests.Pixels;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern.Telegraph;

/// <summary>Two or more levels are told from mere noise at the stated chance.</summary>
public sealed class TelegraphTestTests(ITestOutputHelper output)
{
    /// <summary>Normal samples of a given noise in units of the expected.</summary>
    private static SampleGroup[] Noise(Random random, int[] frames, double sigma) =>
        [
            .. frames.Select(
                (n, g) =>
                    new SampleGroup(
                        [.. Enumerable.Range(0, n).Select(_ => 40.0 * g + sigma * NormalNoise.Of(random))],
                        1,
                        10 * (g + 1),
                        [.. Enumerable.Range(0, n).Select(i => 100.0 * i)]
                    )
            ),
        ];

    [
        Theory,
        InlineData(new[] { 8 }, 1),
        InlineData(new[] { 8 }, 3),
        InlineData(new[] { 5, 5 }, 3),
        InlineData(new[] { 20 }, 2),
        InlineData(new[] { 4, 4, 4, 4 }, 3),
        InlineData(new[] { 16, 5, 5, 5 }, 3)
    ]
    public void NormalNoisePassesNoMoreOftenThanStated(int[] frames, double sigma)
    {
        const int Trials = 4000;
        var random = new Random(11);
        int below1 = 0,
            below01 = 0;
        for (int i = 0; i < Trials; i++)
        {
            double chance = TelegraphTest.Run(Noise(random, frames, sigma), 3) is { } fit ? Math.Exp(fit.LogChance) : 1;
            if (chance < 0.01)
                below1++;
            if (chance < 0.001)
                below01++;
        }
        output.WriteLine(
            $"{string.Join('+', frames)} frames, noise {sigma} times the expected: {below1} of {Trials} below 1 %, "
                + $"{below01} below 0.1 %"
        );
        // No more than 1 % (0.1 %) of 4000, plus 4 binomial standard errors.
        Assert.InRange(below1, 0, 40 + 4 * 7);
        Assert.InRange(below01, 0, 4 + 4 * 2);
    }

    [Fact]
    public void FarNoisierPixelsAreProtectedByTheFormAlone()
    {
        // Ten times the camera's noise: beyond the stated factor 3, but still no more than 1 % pass, plus 4 binomial
        // standard errors.
        var random = new Random(13);
        int passed = Enumerable
            .Range(0, 4000)
            .Count(_ => TelegraphTest.Run(Noise(random, [6, 6, 6], 10), 3) is { LogChance: < -7 });
        output.WriteLine($"{passed} of 4000");
        Assert.InRange(passed, 0, 40 + 4 * 7);
    }

    [Fact]
    public void TheStepIsFoundWithItsUncertainty()
    {
        var random = new Random(5);
        var z = new List<double>();
        for (int trial = 0; trial < 300; trial++)
        {
            SampleGroup[] groups = Noise(random, [10, 6, 6, 6], 1);
            foreach (SampleGroup group in groups)
                for (int i = 0; i < group.Values.Length; i++)
                    group.Values[i] += random.NextDouble() < 0.4 ? 8 : 0;
            TelegraphFit fit = TelegraphTest.Run(groups, 3)!;
            if (fit is { Levels: 2, Thermal: false } && fit.LogChance < -7)
                z.Add((fit.Step - 8) / fit.StepUncertainty);
        }
        Assert.InRange(z.Count, 285, 300);
        Assert.InRange(z.Average(), -3.5 / Math.Sqrt(z.Count), 3.5 / Math.Sqrt(z.Count));
        Assert.InRange(z.Count(v => Math.Abs(v) < 1.96) / (double)z.Count, 0.95 - 3.5 * 0.0126, 1);
    }

    [Fact]
    public void AStepThatGrowsWithTheDarkSignalIsToldFromOneThatDoesNot()
    {
        var random = new Random(6);
        int thermal = 0;
        for (int trial = 0; trial < 100; trial++)
        {
            SampleGroup[] groups = Noise(random, [6, 6, 6, 6], 1);
            foreach (SampleGroup group in groups)
                for (int i = 0; i < group.Values.Length; i++)
                    group.Values[i] += random.NextDouble() < 0.5 ? 0.5 * group.Thermal : 0;
            TelegraphFit fit = TelegraphTest.Run(groups, 3)!;
            if (fit.Thermal && Math.Abs(fit.Step - 0.5) < 4 * fit.StepUncertainty)
                thermal++;
        }
        Assert.InRange(thermal, 97, 100);
    }

    [Fact]
    public void ThreeLevelsAreSeenAsThree()
    {
        var random = new Random(7);
        int three = 0;
        for (int trial = 0; trial < 50; trial++)
        {
            SampleGroup[] groups = Noise(random, [30, 8, 8], 1);
            foreach (SampleGroup group in groups)
                for (int i = 0; i < group.Values.Length; i++)
                    group.Values[i] += 12 * random.Next(3);
            if (TelegraphTest.Run(groups, 3) is { Levels: 3 } fit && Math.Abs(fit.Step - 12) < 4 * fit.StepUncertainty)
                three++;
        }
        Assert.InRange(three, 48, 50);
    }

    [Fact]
    public void HitsByChargedParticlesAreNoLevel()
    {
        var random = new Random(8);
        for (int trial = 0; trial < 200; trial++)
        {
            SampleGroup[] groups = Noise(random, [10, 5, 5, 5], 1);
            groups[1].Values[2] += 900;
            if (trial % 2 == 0)
                groups[2].Values[4] += 300;
            if (TelegraphTest.Run(groups, 3) is { } fit)
                Assert.InRange(fit.LogChance, Math.Log(1e-3), 0);
        }
    }

    [Fact]
    public void AHitDoesNotHideTheLevels()
    {
        var random = new Random(9);
        int found = 0;
        for (int trial = 0; trial < 100; trial++)
        {
            SampleGroup[] groups = Noise(random, [10, 6, 6, 6], 1);
            foreach (SampleGroup group in groups)
                for (int i = 0; i < group.Values.Length; i++)
                    group.Values[i] += random.NextDouble() < 0.5 ? 10 : 0;
            groups[1].Values[2] += 2000;
            if (
                TelegraphTest.Run(groups, 3) is { LogChance: < -7 } fit
                && Math.Abs(fit.Step - 10) < 4 * fit.StepUncertainty
            )
                found++;
        }
        Assert.InRange(found, 95, 100);
    }

    [Fact]
    public void ADriftIsNoLevel()
    {
        // A steady rise changes its side once: a pixel that never comes back does not flicker.
        SampleGroup ramp = new(
            [.. Enumerable.Range(0, 30).Select(i => 3.0 * i)],
            1,
            10,
            [.. Enumerable.Range(0, 30).Select(i => 100.0 * i)]
        );
        Assert.True(TelegraphTest.Run([ramp], 3) is not { LogChance: < -7 });
    }

    [Fact]
    public void DwellTimesAreRecoveredWhereTheFramesCanTell()
    {
        var random = new Random(10);
        int covered = 0,
            known = 0;
        for (int trial = 0; trial < 200; trial++)
        {
            var states = new bool[120];
            bool state = random.NextDouble() < 1 / 3.0;
            int upper = 0;
            double memory = Math.Exp(-100.0 / 400); // 100 s apart; 600 s up, 1200 s down: τ = 400 s
            for (int i = 0; i < 120; i++)
            {
                states[i] = state;
                if (state)
                    upper++;
                state = random.NextDouble() < memory ? state : random.NextDouble() < 1 / 3.0;
            }
            if (DwellTimes.Measure(Runs(states), upper / 120.0) is not { } dwell)
                continue;
            known++;
            double tau = dwell.UpperSeconds * (1 - upper / 120.0);
            if (Math.Abs(Math.Log(tau / 400)) < 1.96 * Math.Log(dwell.Factor))
                covered++;
        }
        output.WriteLine($"known {known} of 200, inside ±1.96 u {covered}");
        Assert.InRange(known, 190, 200);
        Assert.InRange(covered / (double)known, 0.9, 1);
    }

    [Fact]
    public void APixelThatSwitchesFasterThanTheFramesHasNoDwellTime()
    {
        var random = new Random(12);
        Assert.Null(DwellTimes.Measure(Runs([.. Enumerable.Range(0, 100).Select(_ => random.Next(2) == 0)]), 0.5));
        Assert.Null(DwellTimes.Measure(Runs([false, true, true, true]), 0.75));
    }

    /// <summary>One set, a frame every 100 s.</summary>
    private static DwellRun[] Runs(bool[] states) => [new([.. states.Select((_, i) => 100.0 * i)], states)];
}
