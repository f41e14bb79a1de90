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
    private const double Share = 0.005; // of the places

    /// <summary>
    /// One physical camera, many stacks: within 15 %, or on the safe side by at most 30 %, beside the profile's own error
    /// and the Monte Carlo's (400 places at the limit: 5 %).
    /// </summary>
    /// <remarks>
    /// Not yet met, so outside the build (SENSORPROFILE_REJECTION=1): sigma clipping at k 8 says 8.76 °C for 2.04 (M 40) and
    /// 1.54 for 1.17 (M 100), the median 5.23 for 2.21 (k 10, M 40) and 4.38 for 2.22 (k 20, M 100); the other eight hold.
    /// </remarks>
    [LongRunFact("SENSORPROFILE_REJECTION")]
    public void ToleranceWithRejectionIsTrue()
    {
        CameraDescription camera = PhysicalCameras.Of(GlowStrength.None);
        using var session = new SimulatedSession(camera, 31);
        CameraProfile profile = session.Characterise().Profile;
        PhysicalJudge judge = PhysicalJudge.Of(camera);
        List<string> far = [];
        foreach (
            (int positions, int lights, Rejection rejection) in ((int, int, Rejection)[])
                [
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
                    (10, 40, Rejection.None),
                ]
        )
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
                    Limits = new LossLimits { HotShare = Share },
                }
            );
            Measurement? hot = answer.Causes.Single(c => c.Cause == BindingCause.HotPixels).Warmer;
            double truth = judge.HotTolerance(
                PopulationTruthTests.Stack(positions, rejection, lights),
                Share,
                3,
                80_000,
                positions
            );
            double told = hot?.Value ?? double.PositiveInfinity;
            output.WriteLine(
                $"k {positions}, M {lights}, {rejection}: {told:0.00} ± {hot?.StandardUncertainty:0.00} °C, truth {truth:0.00}"
            );
            double doubt = 2 * Math.Sqrt(Math.Pow(hot?.StandardUncertainty ?? 0, 2) + Math.Pow(0.05 * truth, 2));
            if (!(told >= 0.7 * truth - doubt && told <= 1.15 * truth + doubt))
                far.Add($"k {positions}, M {lights}, {rejection}: {told:0.00} for {truth:0.00}");
        }
        Assert.Empty(far);
    }
}
