using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Tests.Decisions.DarkPlan;

public class DarksPlanTests
{
    [Fact]
    public void OneCooledStackWantsOneMasterOfTheSmallestNumber()
    {
        PlanAnswer plan = Plan(
            new PlannedLights
            {
                ExposureSeconds = 300,
                StartCelsius = -10,
                Lights = 100,
            }
        );
        MasterPlan master = Assert.Single(plan.Masters);
        double dark = 1.8 + 2.25 + 0.64 / 12,
            light = dark + 150;
        Assert.Equal(MinDarks.Smallest(dark / light, 100, 0.05), master.Frames);
        Assert.Equal((300, -10.0), (master.Exposure, master.Temperature));
        Assert.Equal(master.Frames * 302, plan.Quantities["totalTime"]!.Value);
    }

    [Fact]
    public void EveryPlannedLightStaysWithinTheLoss()
    {
        PlannedLights night = Night();
        PlanAnswer plan = DarksPlan.Find(new Tarn().Profile(), Question(night) with { Cooled = false });
        Assert.True(plan.Masters.Count > 1);
        SensorModel sensor = SensorReader.Of(new Tarn().Profile(), new Tarn().Mode()).Best;
        foreach (LightSlice slice in LightSlice.Split(night))
        {
            // the master that serves it, judged by the limits that the plan was asked to keep
            MasterPlan master = Assert.Single(plan.Masters, m =>
                m.ServesFrom - 1e-9 <= slice.Celsius && slice.Celsius <= m.ServesTo + 1e-9
            );
            var stack = new StackConditions
            {
                Sky = SkyRate.Given(0.5).Rate,
                ExposureSeconds = 300,
                TemperatureCelsius = slice.Celsius,
                Lights = night.Lights,
                DitherPositions = night.DitherPositions,
            };
            var mismatch = new DarkMismatch(sensor, stack, 0.5, new LossLimits());
            Assert.True(mismatch.Loads(master.Temperature, 300, scaled: false).Largest <= 1);
            int whole = plan.Masters.Sum(m => m.Frames);
            Assert.True(
                mismatch.Loss(
                    new DarkFrames
                    {
                        ExposureSeconds = 300,
                        TemperatureCelsius = master.Temperature,
                        Frames = whole,
                    }
                ) <= 0.05
            );
        }
    }

    [Fact]
    public void AnUncooledNightEndsWithItsColdestMaster()
    {
        PlanAnswer plan = DarksPlan.Find(new Tarn().Profile(), Question(Night()) with { Cooled = false });
        Assert.Equal(
            plan.Masters.Select(m => m.Temperature).OrderDescending(),
            plan.Masters.Select(m => m.Temperature)
        );
        Assert.Equal(MasterTime.EndOfNight, plan.Masters[^1].When);
    }

    [Fact]
    public void FewestMeansThatNoOtherSplitNeedsFewer()
    {
        // brute force over all splits of the sorted slices into neighbours, with the same cost
        var reader = SensorReader.Of(new Tarn().Profile(), new Tarn().Mode());
        PlannedLights night = Night() with { EndCelsius = -3, StartCelsius = 0 };
        PlanQuestion question = Question(night);
        double best = new MasterGroups(reader.Best, question, 0.5, LightSlice.Split(night)).Fewest().Sum(g => g.Frames);
        LightSlice[] slices = [.. LightSlice.Split(night).OrderBy(s => s.Celsius)];
        double brute = double.PositiveInfinity;
        for (int cuts = 0; cuts < 1 << (slices.Length - 1); cuts++)
        {
            double frames = 0;
            int first = 0;
            for (int i = 1; i <= slices.Length; i++)
            {
                if (i < slices.Length && (cuts >> (i - 1) & 1) == 0)
                    continue;
                IReadOnlyList<MasterGroup> part = new MasterGroups(
                    reader.Best,
                    question,
                    0.5,
                    slices[first..i]
                ).Fewest();
                frames += part.Count == 1 ? part[0].Frames : double.PositiveInfinity;
                first = i;
            }
            brute = Math.Min(brute, frames);
        }
        Assert.Equal(brute, best);
    }

    [Fact] // "5-minute darks are typical" (common practice, no source)
    public void WithoutLightsThePlanIsForFiveMinutes()
    {
        PlanAnswer plan = DarksPlan.Find(new Tarn().Profile(), new PlanQuestion { Sky = SkyRate.Given(0.5) });
        Assert.Equal(300, plan.Masters[0].Exposure);
        Assert.Contains(plan.Findings, f => f.Code == "lights-assumed");
        // and for the temperature that the set point of the same camera and sky says, not for the profile's reference
        double setpoint = SetpointAdvice
            .Find(
                new Tarn().Profile(),
                new Tarn().Mode(),
                new SetpointQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(0.5) }
            )
            .Quantities["setpoint"]!.Value;
        Assert.NotEqual(Tarn.Reference, setpoint);
        Assert.Equal(Math.Clamp(setpoint, -20, 5), plan.Masters[0].Temperature, 1e-9);
    }

    [Fact]
    public void ATemperatureFarOutsideTheProfileIsRefused()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() =>
            Plan(
                new PlannedLights
                {
                    ExposureSeconds = 300,
                    StartCelsius = 25,
                    Lights = 10,
                }
            )
        );
        Assert.Equal(
            "The temperature of the lights of 25 °C is more than 10 °C outside the measured range, −20 °C to 5 "
                + "°C: add darks near 25 °C and characterise again.",
            refused.Message
        );
    }

    private static PlannedLights Night() =>
        new()
        {
            ExposureSeconds = 300,
            StartCelsius = 2,
            EndCelsius = -6,
            Lights = 60,
            DitherPositions = 20,
        };

    private static PlanQuestion Question(PlannedLights lights) => new() { Lights = [lights], Sky = SkyRate.Given(0.5) };

    private static PlanAnswer Plan(PlannedLights lights) => DarksPlan.Find(new Tarn().Profile(), Question(lights));
}
