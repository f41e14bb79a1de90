using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.Simulation;
using SensorProfile.Tests.Physics;

namespace SensorProfile.Tests.NoiseModel.Noise;

public class RejectedShareTests
{
    private const int Width = 400; // px of a square sensor

    /// <summary>
    /// 94 % of the pixels without residual, 4 % with three times the noise of a sample, 2 % with twelve: against stacks done
    /// sample by sample.
    /// </summary>
    /// <remarks>
    /// 60 000 places, whose chance is taken three times. Beside it 30 % of the share: outliers of one place are taken to be
    /// alike, and a share that goes with the third to fourth power of the mismatch moves a tolerance by 10 % then. With the
    /// response to a single outlier the share is wrong by factors.
    /// </remarks>
    [Theory]
    [InlineData(5, 40, Rejection.SigmaClip)]
    [InlineData(8, 40, Rejection.SigmaClip)]
    [InlineData(20, 100, Rejection.SigmaClip)]
    [InlineData(10, 40, Rejection.Winsorised)]
    [InlineData(10, 40, Rejection.Median)]
    public void AgreesWithStacksDoneSampleBySample(int positions, int lights, Rejection rejection)
    {
        const int places = 60_000;
        StackConditions stack = PopulationTruthTests.Stack(positions, rejection, lights);
        CameraDescription camera = PhysicalCameras.Of(GlowStrength.None) with { Width = Width, Height = Width };
        double t = stack.ExposureSeconds,
            empty = stack.Sky.Value * t + camera.ReadNoise * camera.ReadNoise + camera.Gain * camera.Gain / 12,
            unit = Math.Sqrt(empty);
        (double Weight, double Excess)[] classes = [(0.94, 0), (0.04, 3 * unit), (0.02, 12 * unit)];

        var random = new Random(17);
        float[] light =
        [
            .. Enumerable
                .Range(0, Width * Width)
                .Select(_ =>
                    random.NextDouble() switch
                    {
                        < 0.94 => 0f,
                        < 0.98 => (float)(classes[1].Excess / t),
                        _ => (float)(classes[2].Excess / t),
                    }
                ),
        ];
        double truth = new StackProcedure(stack, camera, light, places, seed: 3).ShareBeyond(
            new float[light.Length],
            3
        );

        double told = new RejectedShare(
            ClippedMean.Find(lights, positions, stack.RejectionSigma, rejection),
            positions,
            3 * unit / Math.Sqrt(lights)
        ).Beyond(
            [.. classes.Select(c => new RejectedShare.Member(c.Weight, c.Excess, Math.Sqrt(empty + c.Excess)))],
            unit,
            spread: 0,
            shift: 0
        );
        double doubt = 0.3 * truth + 3 * Math.Sqrt(truth / places);
        Assert.InRange(told, truth - doubt, truth + doubt);
    }

    [Fact] // nothing stands out, so nothing is left
    public void PixelsAlikeLeaveNothing() =>
        Assert.Equal(
            0,
            new RejectedShare(ClippedMean.Find(40, 5, 3, Rejection.SigmaClip), 5, 1).Beyond(
                [new RejectedShare.Member(1, 0, 1)],
                unit: 1,
                spread: 0,
                shift: 0
            ),
            12
        );

    [Fact] // a night of zeros and noise gave such a camera: characterise ended in exit code 70
    public void PixelsWhoseResidualIsNoNumberDoNotCount() =>
        Assert.InRange(
            new RejectedShare(ClippedMean.Find(40, 5, 3, Rejection.SigmaClip), 5, 1).Beyond(
                [new RejectedShare.Member(1, double.NaN, 1)],
                unit: 1,
                spread: 0,
                shift: 0
            ),
            0,
            1
        );
}
