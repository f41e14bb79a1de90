using SensorProfile.Characterisation.Maps;
using SensorProfile.Simulation;
using SensorProfile.Tests.Characterisation;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Physics;

/// <summary>Rates of single hot pixels at the reference temperature against their truth.</summary>
public sealed class HotPixelRateTests(ITestOutputHelper output)
{
    /// <summary>
    /// Some 800 pixels between 0.3 and 20 e-/px/s, each known to some per cent: their mean error to 0.1 %. The gain, which
    /// all share, is taken out by the rate of the same pixels over the ratio of the gains.
    /// </summary>
    [Fact]
    public void TheyAreUnbiased()
    {
        CameraDescription camera = PhysicalCameras.Of(GlowStrength.None);
        using var session = new SimulatedSession(camera, 41);
        CharacterisationResult result = session.Characterise();
        double reference = result.Profile.Modes[0].FixedPattern!.ReferenceTemperature!.Value;
        float[] truth = PhysicalJudge.Of(camera).Rates(reference, 300),
            map = result.Maps[0].DarkRate!,
            doubt = result.Maps[0].DarkRateUncertainty!;
        int[] hot =
        [
            .. Enumerable.Range(0, truth.Length).Where(i => truth[i] is > 0.3f and < 20 && float.IsFinite(map[i])),
        ];
        double gain = result.Profile.Modes[0].Gain!.Value / PhysicalCameras.Gain;
        double weight = 0,
            sum = 0;
        foreach (int i in hot)
        {
            double w = Math.Pow(truth[i] / doubt[i], 2);
            (weight, sum) = (weight + w, sum + w * (map[i] / gain / truth[i] - 1));
        }
        double error = sum / weight,
            u = 1 / Math.Sqrt(weight);
        output.WriteLine(
            $"{hot.Length} hot pixels at {reference:0.0} °C: {100 * error:+0.00;-0.00} ± {100 * u:0.00} %, bend "
                + $"{result.Profile.Modes[0].FixedPattern!.HotLawBend}"
        );
        Assert.InRange(error, -0.003 - 2 * u, 0.003 + 2 * u);
    }
}
