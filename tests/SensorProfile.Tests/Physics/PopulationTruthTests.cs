using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Simulation;
using SensorProfile.Tests.Characterisation;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Physics;

/// <summary>The answers of a characterised physical camera against the truth of its pixels.</summary>
public sealed class PopulationTruthTests(ITestOutputHelper output)
{
    private const double Exposure = 300;
    private static readonly SkyRate sky = SkyRate.Given(0.3);

    [Theory, InlineData(GlowStrength.None), InlineData(GlowStrength.Weak), InlineData(GlowStrength.Strong)]
    public void SetPointAndHotToleranceAreTrue(GlowStrength glow)
    {
        CameraDescription camera = PhysicalCameras.Of(glow);
        using var session = new SimulatedSession(camera, 21);
        CameraProfile profile = session.Characterise(quick: false).Profile;
        ModeProfile mode = profile.Modes[0];
        PhysicalJudge judge = PhysicalJudge.Of(camera);

        foreach (double loss in (double[])[0.05, 0.3])
        {
            SetpointAnswer setpoint = SetpointAdvice.Find(
                profile,
                mode,
                new SetpointQuestion
                {
                    ExposureSeconds = Exposure,
                    Sky = sky,
                    Loss = loss,
                }
            );
            double truth = judge.Setpoint(0.99, Exposure, sky.Rate.Value, loss);
            Measurement? told = setpoint.Quantities["setpoint99"];
            output.WriteLine(
                $"99 % set point, {loss:P0}: {told?.Value:0.00} ± {told?.StandardUncertainty:0.00}, truth {truth:0.00}; "
                    + $"{setpoint.Verdict} {setpoint.Limit}, glow {setpoint.GlowExtra:0.0} %; at "
                    + $"{setpoint.At.Temperature:0} °C {setpoint.At.ExtraAtShare:0.0} %, truth "
                    + $"{100 * judge.ExtraAtShare(0.99, setpoint.At.Temperature, Exposure, sky.Rate.Value):0.0} %"
            );
            if (truth > -35)
                Assert.InRange(told!.Value, truth - 2 * told.StandardUncertainty, truth + 2 * told.StandardUncertainty);
            else
                Assert.Equal(SetpointLimit.Glow, setpoint.Limit);
        }

        ToleranceAnswer tolerance = DarkTolerance.Find(
            profile,
            mode,
            new ToleranceQuestion
            {
                ExposureSeconds = Exposure,
                Sky = sky,
                Lights = 40,
                TemperatureCelsius = -10,
            }
        );
        Measurement hot = tolerance.Causes.Single(c => c.Cause == BindingCause.HotPixels).Warmer!;
        double real = judge.HotTolerance(Stack(1, Rejection.None), 0.001, 3, 600_000, 3);
        output.WriteLine($"hot tolerance {hot.Value:0.00} ± {hot.StandardUncertainty:0.00} °C, truth {real:0.00}");
        // the Monte Carlo has 600 places at the limit: 4 % of them, about 4 % of the tolerance
        double error = Math.Sqrt(hot.StandardUncertainty * hot.StandardUncertainty + 0.03 * real * (0.03 * real));
        Assert.InRange(hot.Value, real - 2 * error, real + 2 * error);
    }

    /// <summary>A quick characterisation says the same, within its errors, or that it cannot tell.</summary>
    [Fact]
    public void AQuickCharacterisationDoesNotPromiseMore()
    {
        CameraDescription camera = PhysicalCameras.Of(GlowStrength.Strong);
        using var session = new SimulatedSession(camera, 22);
        CameraProfile profile = session.Characterise().Profile;
        SetpointAnswer answer = SetpointAdvice.Find(
            profile,
            profile.Modes[0],
            new SetpointQuestion { ExposureSeconds = Exposure, Sky = sky }
        );
        double truth =
            100 * PhysicalJudge.Of(camera).ExtraAtShare(0.99, answer.At.Temperature, Exposure, sky.Rate.Value);
        output.WriteLine(
            $"{answer.Verdict}: {answer.At.Temperature:0} °C, {answer.At.ExtraAtShare:0.0} %, truth {truth:0.0} %"
        );
        if (answer.Verdict != SetpointVerdict.CannotTell)
            Assert.InRange(answer.At.ExtraAtShare!.Value, 0.9 * truth, 1.15 * truth);
    }

    internal static StackConditions Stack(int positions, Rejection rejection, int lights = 40) =>
        new()
        {
            Sky = sky.Rate,
            ExposureSeconds = Exposure,
            TemperatureCelsius = -10,
            Lights = lights,
            DitherPositions = positions,
            Rejection = rejection,
        };
}
