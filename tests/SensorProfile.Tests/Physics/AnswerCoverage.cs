using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.Exposure;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Simulation;

namespace SensorProfile.Tests.Physics;

/// <summary>The decisions' numbers against what is true of the simulated sensor, from the rates of its pixels.</summary>
internal sealed class AnswerCoverage(CameraDescription camera, PhysicalJudge judge)
{
    private const double Exposure = 300,
        Loss = 0.05,
        LightsCelsius = -10;
    private const int Lights = 40;
    private static readonly SkyRate sky = SkyRate.Given(0.4);

    internal IEnumerable<CoverageRow> Rows(CameraProfile profile, ModeProfile mode)
    {
        var rows = new List<CoverageRow>();
        Try("set point", () => rows.AddRange(Setpoint(profile, mode)));
        Try("exposure", () => rows.AddRange(ShortestExposure(profile)));
        Try("number of darks", () => rows.Add(LossOfTwentyDarks(profile, mode)));
        Try("tolerance", () => rows.AddRange(Tolerance(profile, mode)));
        return rows;
        void Try(string what, Action ask)
        {
            try
            {
                ask();
            }
            catch (DecisionRefusedException)
            {
                rows.Add(new CoverageRow(what + ", refused", null, double.NaN));
            }
        }
    }

    private IEnumerable<CoverageRow> Setpoint(CameraProfile profile, ModeProfile mode)
    {
        SetpointAnswer answer = SetpointAdvice.Find(
            profile,
            mode,
            new SetpointQuestion { ExposureSeconds = Exposure, Sky = sky }
        );
        foreach ((string name, double share) in ((string, double)[])[("setpointTypical", 0.5), ("setpoint99", 0.99)])
        {
            double right = judge.Setpoint(share, Exposure, sky.Rate.Value, Loss);
            // the answer does not look below, and above the law has never been seen
            if (right is > -30 and < 5)
                yield return new($"set point for {100 * share:0} %", answer.Quantities[name], right);
        }
    }

    private IEnumerable<CoverageRow> ShortestExposure(CameraProfile profile)
    {
        GainChoiceAnswer answer = ExposureAdvice.Find(
            profile,
            new ExposureQuestion { Sky = sky, TemperatureCelsius = LightsCelsius }
        );
        double rate = judge.Typical(LightsCelsius, Exposure);
        yield return new(
            "shortest exposure",
            answer.Quantities["shortestExposure"],
            Electronics / ((sky.Rate.Value + rate) * ((1 + Loss) * (1 + Loss) - 1))
        );
    }

    private CoverageRow LossOfTwentyDarks(CameraProfile profile, ModeProfile mode)
    {
        DarkCountAnswer answer = DarkCountAdvice.Find(
            profile,
            mode,
            new DarkCountQuestion
            {
                ExposureSeconds = Exposure,
                Lights = Lights,
                Sky = sky,
                TemperatureCelsius = LightsCelsius,
            }
        );
        double dark = judge.Typical(LightsCelsius, Exposure) * Exposure + Electronics,
            light = dark + sky.Rate.Value * Exposure;
        return new(
            "loss with 20 darks",
            answer.Quantities["lossAt20"],
            100 * (Math.Sqrt(1 + dark / 20 / (light / Lights)) - 1)
        );
    }

    private IEnumerable<CoverageRow> Tolerance(CameraProfile profile, ModeProfile mode)
    {
        ToleranceAnswer answer = DarkTolerance.Find(
            profile,
            mode,
            new ToleranceQuestion { Sky = sky, TemperatureCelsius = LightsCelsius }
        );
        double right = judge.HotTolerance(
            PopulationTruthTests.Stack(1, Rejection.None) with
            {
                Sky = sky.Rate,
            },
            0.001,
            3,
            1_000_000,
            3
        );
        // the Monte Carlo has 1000 places at the limit: 3 % of them, about 3 % of the tolerance
        yield return new(
            "hot-pixel tolerance",
            answer.Causes.Single(c => c.Cause == BindingCause.HotPixels).Warmer,
            right,
            0.02 * right
        );
        if (
            camera.Glow.Count == 1
            && judge.GlowTolerance(LightsCelsius, Exposure, sky.Rate.Value, Lights) is var glow and < 30
        )
            yield return new("glow tolerance", answer.Causes.Single(c => c.Cause == BindingCause.Glow).Warmer, glow);
    }

    private double Electronics => camera.ReadNoise * camera.ReadNoise + camera.Gain * camera.Gain / 12;
}
