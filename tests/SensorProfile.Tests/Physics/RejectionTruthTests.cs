using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Simulation;
using SensorProfile.Tests.Characterisation;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Physics;

/// <summary>The hot-pixel tolerance of stacks that reject outliers, against doing it sample by sample.</summary>
public sealed class RejectionTruthTests(ITestOutputHelper output)
{
    /// <summary>
    /// One physical camera, many stacks: within 15 %, or on the safe side by at most 30 %, beside the profile's own error
    /// and the Monte Carlo's (200 places at the limit: 7 % of the share, 2 % of the tolerance).
    /// </summary>
    [Fact]
    public void ToleranceWithRejectionIsTrue() =>
        Check(
            share: 0.005,
            places: 40_000,
            (5, 20, Rejection.SigmaClip),
            (8, 40, Rejection.SigmaClip),
            (10, 40, Rejection.Winsorised),
            (10, 40, Rejection.Median)
        );

    /// <summary>The same at one place in a thousand, as by default, for twelve stacks: some minutes.</summary>
    [LongRunFact("SENSORPROFILE_LONG")]
    public void ToleranceWithRejectionIsTrueAtOneInAThousand() =>
        Check(
            share: 0.001,
            places: 300_000,
            (3, 40, Rejection.SigmaClip),
            (5, 20, Rejection.SigmaClip),
            (5, 40, Rejection.SigmaClip),
            (8, 40, Rejection.SigmaClip),
            (8, 100, Rejection.SigmaClip),
            (20, 100, Rejection.SigmaClip),
            (5, 40, Rejection.Winsorised),
            (10, 40, Rejection.Winsorised),
            (5, 40, Rejection.Median),
            (10, 40, Rejection.Median),
            (20, 100, Rejection.Median),
            (10, 40, Rejection.None)
        );

    private void Check(double share, int places, params (int Positions, int Lights, Rejection Method)[] stacks)
    {
        CameraDescription camera = PhysicalCameras.Of(GlowStrength.None);
        using var session = new SimulatedSession(camera, 31);
        CameraProfile profile = session.Characterise().Profile;
        PhysicalJudge judge = PhysicalJudge.Of(camera);
        double[] truths = new double[stacks.Length];
        Parallel.For(0, stacks.Length, i =>
            truths[i] = judge.HotTolerance(
                PopulationTruthTests.Stack(stacks[i].Positions, stacks[i].Method, stacks[i].Lights),
                share,
                3,
                places,
                seed: stacks[i].Positions
            )
        );
        List<string> far = [];
        foreach (((int positions, int lights, Rejection rejection), double truth) in stacks.Zip(truths))
        {
            ToleranceAnswer answer = DarkTolerance.Find(
                profile,
                profile.Modes[0],
                new ToleranceQuestion
                {
                    ExposureSeconds = 300,
                    Sky = SkyRate.Given(0.3),
                    Lights = lights,
                    DitherPositions = positions,
                    Rejection = rejection,
                    TemperatureCelsius = -10,
                    Limits = new LossLimits { HotShare = share },
                }
            );
            Measurement? hot = answer.Causes.Single(c => c.Cause == BindingCause.HotPixels).Warmer;
            double told = hot?.Value ?? double.PositiveInfinity;
            string line =
                $"k {positions}, M {lights}, {rejection}: {told:0.00} ± {hot?.StandardUncertainty:0.00} °C, truth {truth:0.00}";
            output.WriteLine(line);
            double doubt = 2 * Math.Sqrt(Math.Pow(hot?.StandardUncertainty ?? 0, 2) + Math.Pow(0.02 * truth, 2));
            if (!(told >= 0.7 * truth - doubt && told <= 1.15 * truth + doubt))
                far.Add(line);
        }
        Assert.Empty(far);
    }
}
