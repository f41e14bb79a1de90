using System.Globalization;
using System.Text.RegularExpressions;
using MathNet.Numerics.Distributions;
using SensorProfile.Drift.MasterDarks;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Tests.Data;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Reporting.Tests.Answers.Darks;

/// <summary>
/// Over sensors, masters and stacks at random: sentence, verdict, numbers and table of a check say the same, and a
/// stack that bears more never condemns a master that a stricter one keeps.
/// </summary>
public sealed partial class CheckAdviceTests
{
    private const int Width = 96,
        Height = 64;

    private static readonly int Cases = LongRuns.Of(50, 1000);

    [Fact]
    public void ChecksAgreeWithThemselves()
    {
        var seen = new HashSet<CheckVerdict>();
        for (int seed = 0; seed < Cases; seed++)
        {
            var given = new RandomStack(40_000 + seed);
            (MasterDark master, FreshDarks fresh) = Darks(given, seed);
            DarkLibraryAnswer answer = Check(given, given.Stack, master, fresh);
            AnswerDocument said = DarkLibraryDocument.Compose(answer);
            MasterVerdict verdict = Assert.Single(answer.Masters);
            seen.Add(verdict.Verdict);
            string note = $"seed {seed}: {said.Sentence} {said.Reason}";
            Assert.Equal(verdict.Verdict, answer.Library);
            Assert.Equal(verdict.Verdict == CheckVerdict.CannotTell, said.CannotTell);
            Assert.StartsWith(
                verdict.Verdict switch
                {
                    CheckVerdict.Keep => "Keep",
                    CheckVerdict.Retake => "Retake",
                    _ => "Cannot tell",
                },
                said.Sentence,
                StringComparison.Ordinal
            );
            Assert.Equal(verdict.Verdict != CheckVerdict.Keep, answer.Shoot.Count > 0);
            Assert.Equal(EnumWord.Spaced(verdict.Verdict), said.Tables[0].Rows[0][1]);
            Assert.Equal(QuantityText.Of(verdict.Loss), said.Tables[0].Rows[0][3]);
            double loss = verdict.Loss!.Value,
                accepted = 100 * given.Stack.Limits.NoiseLoss;
            Assert.True(loss >= 0 && verdict.Loss.StandardUncertainty >= 0, note);
            Match adds = Adds().Match(said.Reason);
            Assert.Equal(verdict.Verdict == CheckVerdict.Keep, adds.Success);
            if (adds.Success && loss >= 0.01)
                Assert.InRange(Number(adds), loss * 0.949, loss * 1.051);
            // a master that is kept although it costs more than accepted says so, and is hardly beyond it
            if (verdict.Verdict == CheckVerdict.Keep && loss > accepted)
            {
                Assert.Contains("(accepted:", said.Reason, StringComparison.Ordinal);
                Assert.True(
                    verdict.Parts.Single(p => p.Kind == ResidualKind.Typical).Verdict == CheckVerdict.Keep,
                    note
                );
            }
            foreach (ResidualPart part in verdict.Parts.Where(p => p.Verdict == CheckVerdict.Retake))
                Assert.True(part.Value.Value > part.Limit * (1 - 1e-9), $"{part}; {note}");
            Match raises = Raises().Match(said.Reason);
            if (raises.Success)
                Assert.True(loss > accepted, note);
        }
        Assert.Equal(3, seen.Count);
    }

    // a brighter sky, fewer lights and a larger loss only ever turn a verdict towards keep
    [Fact]
    public void ChecksAreMonotone()
    {
        for (int seed = 0; seed < Cases / 2; seed++)
        {
            var given = new RandomStack(50_000 + seed);
            StackDescription stack = given.Stack with
            {
                Lights = 4 * given.Stack.Lights,
                DitherPositions = 1,
                Rejection = Rejection.None,
            };
            (MasterDark master, FreshDarks fresh) = Darks(given, seed);
            MasterVerdict strict = Check(given, stack, master, fresh).Masters[0];
            foreach (
                StackDescription easier in new[]
                {
                    stack with
                    {
                        Sky = SkyRate.Given(3 * stack.Sky!.Rate.Value),
                    },
                    stack with
                    {
                        Lights = given.Stack.Lights,
                    },
                    stack with
                    {
                        Limits = stack.Limits with { NoiseLoss = 1.5 * stack.Limits.NoiseLoss },
                    },
                }
            )
            {
                MasterVerdict easy = Check(given, easier, master, fresh).Masters[0];
                Assert.True(easy.Loss!.Value <= strict.Loss!.Value * (1 + 1e-9), $"seed {seed}");
                Assert.False(
                    strict.Verdict == CheckVerdict.Keep && easy.Verdict == CheckVerdict.Retake,
                    $"seed {seed}: {DarkLibraryDocument.Compose(Check(given, easier, master, fresh)).Reason}"
                );
            }
        }
    }

    private static DarkLibraryAnswer Check(
        RandomStack given,
        StackDescription stack,
        MasterDark master,
        FreshDarks fresh
    )
    {
        var ruler = new StackRuler(
            given.Camera.Of(given.Camera.Gain, "e-/ADU"),
            new DarkLibraryOptions
            {
                ExposureSeconds = stack.ExposureSeconds,
                Lights = stack.Lights,
                DitherPositions = stack.DitherPositions,
                Rejection = stack.Rejection,
                Sky = stack.Sky,
                Limits = stack.Limits,
            }
        );
        return DarkLibraryVerdict.Judge(
            [MasterCheck.Check(master, fresh, null, ruler, given.Profile)],
            ruler,
            [fresh],
            []
        );
    }

    /// <summary>Rates by their ranks in any order; a master of another night, age and number of frames.</summary>
    private static (MasterDark, FreshDarks) Darks(RandomStack given, int seed)
    {
        var random = new Random(seed);
        double t = given.Stack.ExposureSeconds;
        int fresh = 2 * given.Whole(2, 12),
            frames = given.Whole(2, 60);
        double ageing = given.Whole(0, 2) == 0 ? given.Spread(1, 1.6) : 1,
            born = given.Whole(0, 3) == 0 ? 0.004 : 0;
        double[] ranks = [.. Enumerable.Range(0, Width * Height).Select(i => (i + 0.5) / (Width * Height))];
        random.Shuffle(ranks);
        float[] mean = new float[ranks.Length],
            half = new float[ranks.Length],
            values = new float[ranks.Length];
        for (int i = 0; i < ranks.Length; i++)
        {
            double then = given.Camera.RateAt(ranks[i]) * t,
                now = ageing * then + (random.NextDouble() < born ? given.Camera.HotTo * random.NextDouble() * t : 0);
            double Draw(double electrons, double over) =>
                Normal.Sample(random, 0, 1)
                * Math.Sqrt((given.Camera.ReadNoise * given.Camera.ReadNoise + electrons) / over)
                / given.Camera.Gain;
            double odd = now / given.Camera.Gain + Draw(now, fresh / 2.0),
                even = now / given.Camera.Gain + Draw(now, fresh / 2.0);
            mean[i] = (float)(500 + (odd + even) / 2);
            half[i] = (float)((even - odd) / 2);
            values[i] = (float)(500 + then / given.Camera.Gain + Draw(then, frames));
        }
        var settings = new ModeSettings { Gain = 100, Offset = 30 };
        return (
            new MasterDark("master.fits", Width, Height, values, t, given.Celsius, settings, frames, false),
            FreshDarks.Measured(
                Sets.Of(FrameKind.Dark, fresh, t, given.Celsius, width: Width),
                Width,
                mean,
                half,
                fresh
            )
        );
    }

    private static double Number(Match match) => double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"It adds (?:less than )?([0-9.]+) % to the noise")]
    private static partial Regex Adds();

    [GeneratedRegex(@"raises the noise of .* by ([0-9.]+) %")]
    private static partial Regex Raises();
}
