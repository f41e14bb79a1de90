using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Tests.Decisions;

/// <summary>Masters for the single lights of a night, whose temperatures are known.</summary>
public class MasterCoverTests
{
    private static readonly SensorReader reader = SensorReader.Of(new Tarn().Profile(), new Tarn().Mode());

    /// <summary>A night that cools unevenly, with a jump and a late rise; fixed seed.</summary>
    private static double[] Night(int seed, int lights, double widest)
    {
        var random = new Random(seed);
        double celsius = 2;
        double[] night = new double[lights];
        for (int i = 0; i < lights; i++)
        {
            celsius -= widest * (random.NextDouble() - 0.15);
            night[i] = Math.Round(i == lights - 1 ? celsius + 0.4 : celsius, 1);
        }
        return night;
    }

    [Theory]
    [InlineData(1, 9, 1.0)]
    [InlineData(2, 10, 0.6)]
    [InlineData(3, 10, 2.0)]
    [InlineData(4, 8, 3.0)]
    public void NoOtherSplitOfTheLightsNeedsFewerMastersOrFewerFrames(int seed, int lights, double widest)
    {
        // every split of the sorted temperatures into neighbours, each part served by the best single master
        PlannedLights plan = Plan(Night(seed, lights, widest));
        PlanQuestion question = Question(plan);
        LightSlice[] slices = [.. LightSlice.Split(plan).OrderBy(s => s.Celsius)];
        double fewestFrames = double.PositiveInfinity;
        int fewestMasters = int.MaxValue;
        var parts = new Dictionary<(int, int), MasterGroup?>();
        for (int cuts = 0; cuts < 1 << (slices.Length - 1); cuts++)
        {
            (double frames, int masters, int first) = (0, 0, 0);
            for (int i = 1; i <= slices.Length && double.IsFinite(frames); i++)
            {
                if (i < slices.Length && (cuts >> (i - 1) & 1) == 0)
                    continue;
                if (!parts.TryGetValue((first, i), out MasterGroup? part))
                    parts[(first, i)] = part = new MasterGroups(reader.Best, question, 0.5, slices[first..i]).Fewest()
                        is [var only]
                        ? only
                        : null;
                (frames, masters, first) = (
                    part is null ? double.PositiveInfinity : frames + part.Frames,
                    masters + 1,
                    i
                );
            }
            if (!double.IsFinite(frames))
                continue;
            (fewestFrames, fewestMasters) = (Math.Min(fewestFrames, frames), Math.Min(fewestMasters, masters));
        }
        var groups = new MasterGroups(reader.Best, question, 0.5, LightSlice.Split(plan));
        Assert.Equal(fewestFrames, groups.Fewest().Sum(g => g.Frames));
        Assert.Equal(fewestMasters, groups.FewestMasters().Count);
    }

    [Fact]
    public void EveryLightOfTheNightLiesWithinTheLimitsOfItsMaster()
    {
        PlannedLights plan = Plan(Night(5, 40, 0.5));
        PlanAnswer answer = DarksPlan.Find(new Tarn().Profile(), Question(plan));
        foreach (double light in plan.Temperatures)
        {
            MasterPlan master = answer.Masters.Single(m => m.ServesFrom - 1e-9 <= light && light <= m.ServesTo + 1e-9);
            var stack = new StackConditions
            {
                Sky = SkyRate.Given(0.5).Rate,
                ExposureSeconds = 300,
                TemperatureCelsius = light,
                Lights = plan.Lights,
                DitherPositions = plan.DitherPositions,
            };
            Assert.True(
                new DarkMismatch(reader.Best, stack, 0.5, new LossLimits())
                    .Loads(master.Temperature, 300, scaled: false)
                    .Largest <= 1
            );
        }
        Assert.Equal(
            40,
            answer.Masters.Sum(m => plan.Temperatures.Count(t => m.ServesFrom - 1e-9 <= t && t <= m.ServesTo + 1e-9))
        );
    }

    // the lights' own temperatures count, not the line from the first to the last: at −10 °C stay 30 of 31, and one is
    // at 0 °C
    [Fact]
    public void ASteadyNightWithOneWarmLightIsNotAnEvenCourse()
    {
        PlannedLights plan = Plan([0, .. Enumerable.Repeat(-10.0, 30)]);
        PlanAnswer answer = DarksPlan.Find(new Tarn().Profile(), Question(plan));
        Assert.Equal([(-10.0, -10.0), (0.0, 0.0)], answer.Masters.Select(m => (m.ServesFrom, m.ServesTo)));
    }

    [Fact]
    public void LightsBeyondTheProfileAreNamedAndTheOthersPlanned()
    {
        // the profile ends at 5 °C and is trusted to 15 °C
        PlannedLights plan = Plan([18, 17, 4, 3, 3, 2]) with { Lights = 60 };
        PlanAnswer answer = DarksPlan.Find(new Tarn().Profile(), Question(plan) with { Cooled = false });
        Assert.Equal(PlanVerdict.CannotTell, answer.Verdict);
        UnplannedLights unplanned = Assert.Single(answer.Unplanned);
        Assert.Equal((17, 18, 20), (unplanned.From, unplanned.To, unplanned.Lights));
        Assert.Equal(12, unplanned.Settling.Sum(s => s.Frames));
        Assert.All(unplanned.Settling, s => Assert.Equal(18, s.Temperature));
        Assert.All(answer.Masters, m => Assert.InRange(m.Temperature, 2, 4));
        PlanAnswer alone = DarksPlan.Find(
            new Tarn().Profile(),
            Question(Plan([4, 3, 3, 2]) with { Lights = 60 }) with
            {
                Cooled = false,
            }
        );
        Assert.Equal(alone.Masters.Select(m => m.Temperature), answer.Masters.Select(m => m.Temperature));
    }

    [Fact]
    public void AnExposureBeyondTheProfileIsNamedBesideOneThatIsNot()
    {
        PlannedLights usual = PlannedLights.Usual(-10);
        PlanAnswer answer = DarksPlan.Find(
            new Tarn().Profile(),
            new PlanQuestion { Lights = [usual, usual with { ExposureSeconds = 1600 }], Sky = SkyRate.Given(0.5) }
        );
        Assert.Equal(
            (PlanVerdict.CannotTell, 1600, 300),
            (answer.Verdict, Assert.Single(answer.Unplanned).Exposure, Assert.Single(answer.Masters).Exposure)
        );
    }

    // the profile is known to 2 %: the interval holds the number and follows N_d²/N², whose own spread is about 2·2 %
    [Fact]
    public void EveryNumberOfFramesHasItsInterval()
    {
        PlanAnswer answer = DarksPlan.Find(
            new Tarn().Profile(),
            Question(
                new PlannedLights
                {
                    ExposureSeconds = 60,
                    StartCelsius = -10,
                    Lights = 100,
                }
            )
        );
        MasterPlan master = Assert.Single(answer.Masters);
        Assert.True(master.FramesInterval.Low < master.Frames && master.Frames < master.FramesInterval.High);
        Assert.InRange(
            (master.FramesInterval.High!.Value - master.FramesInterval.Low!.Value) / master.Frames,
            0.05,
            0.25
        );
        Assert.Equal(answer.Intervals["totalFrames"], master.FramesInterval);
    }

    [Fact] // k positions divide the variance of the master: what is asked for is then n/k
    public void AnUnditheredPlanSaysWhatDitheringSaves()
    {
        var lights = new PlannedLights
        {
            ExposureSeconds = 60,
            StartCelsius = -10,
            Lights = 100,
        };
        PlanAnswer plain = DarksPlan.Find(new Tarn().Profile(), Question(lights));
        DitherSaving saving = plain.Saving!;
        PlanAnswer dithered = DarksPlan.Find(
            new Tarn().Profile(),
            Question(lights with { DitherPositions = saving.Positions })
        );
        Assert.Equal(dithered.Masters.Sum(m => m.Frames), saving.Frames);
        Assert.InRange(saving.Frames, 1, 50);
        Assert.Equal(Math.Ceiling((double)plain.Masters[0].Frames / saving.Positions), saving.Frames, 1.0);
        double ratio = (0.36 + 2.25 + 0.64 / 12) / (0.36 + 2.25 + 0.64 / 12 + 30);
        Assert.Equal(
            100 * MinDarks.Loss(ratio, 100, 50),
            plain.Stacks.Single().Curve.Single(p => p.Darks == DarksPlan.PracticalFrames).Loss,
            1e-9
        );
        Assert.Null(dithered.Saving);
    }

    [Fact]
    public void WithoutADistributionOneMasterForSeveralTemperaturesCannotBeTold()
    {
        var blind = new Tarn { Distribution = false };
        PlanAnswer answer = DarksPlan.Find(blind.Profile(), Question(Plan([2, 1, 0])));
        Assert.Equal(PlanVerdict.CannotTell, answer.Verdict);
        Assert.Equal((8, 300.0), (answer.SpreadDarks!.Frames, answer.SpreadDarks.Exposure));
        Assert.Equal(PlanVerdict.Answered, DarksPlan.Find(blind.Profile(), Question(PlannedLights.Usual(-10))).Verdict);
    }

    // the profile ends at 5 °C: 16 °C and 30 °C are out of reach, the other nights are answered as if they were alone
    [Fact]
    public void NightsBeyondTheProfileAreNamedAndTheOthersAnswered()
    {
        SetpointAnswer Ask(params double[] nights) =>
            SetpointAdvice.Find(
                new Tarn().Profile(),
                new Tarn().Mode(),
                new SetpointQuestion
                {
                    ExposureSeconds = 300,
                    Sky = SkyRate.Given(0.5),
                    Cooled = false,
                    Ambient = [.. nights.Select(t => new AmbientTemperature("night", t))],
                }
            );
        SetpointAnswer all = Ask(-8, 16, 3, 30),
            reached = Ask(-8, 3);
        Assert.Equal((SetpointVerdict.CannotTell, SetpointVerdict.Uncooled), (all.Verdict, reached.Verdict));
        Assert.Equal([16, 30], all.NightsBeyond.Select(night => night.Celsius));
        Assert.Equal(reached.Ambient, all.Ambient);
        Assert.All(all.Settling, s => Assert.Equal((FrameKind.Dark, 30), (s.Kind, s.Temperature)));
        Assert.Throws<DecisionRefusedException>(() => Ask(16, 30));
    }

    private static PlannedLights Plan(double[] night) =>
        new()
        {
            ExposureSeconds = 300,
            StartCelsius = night[0],
            EndCelsius = night[^1],
            Temperatures = night,
            Lights = Math.Max(night.Length, 40),
            DitherPositions = 20,
        };

    private static PlanQuestion Question(PlannedLights lights) => new() { Lights = [lights], Sky = SkyRate.Given(0.5) };
}
