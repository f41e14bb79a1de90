using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Prediction;

/// <summary>A computed master against a taken one, pixel by pixel and kind by kind.</summary>
/// <param name="Level">Level of the taken master above the computed one, mean over the channels, e-.</param>
/// <param name="Figures">One per <see cref="PixelKind"/> that is judged; null without a pixel of it.</param>
internal sealed record MasterComparison(double Level, IReadOnlyList<PredictionFigures?> Figures)
{
    private const int KindsJudged = 3;

    /// <summary>Signal of the typical pixel in the master, e-.</summary>
    public double TypicalSignal { get; init; }

    /// <summary>Compares; the median over ordinary pixels of each channel is taken out as common level.</summary>
    /// <param name="camera">The camera.</param>
    /// <param name="kinds">Kind of every pixel.</param>
    /// <param name="taken">The taken master.</param>
    /// <param name="computed">Value and variance of the computed master at a pixel, e- and e-².</param>
    public static MasterComparison Compare(
        PatternInput camera,
        PixelKind[] kinds,
        TakenMaster taken,
        Func<int, (double Value, double Variance)> computed
    )
    {
        int channels = camera.Mosaic.Channels;
        double[] residuals = new double[kinds.Length];
        float[] variances = new float[kinds.Length];
        List<double>[] ordinary = [.. Enumerable.Range(0, channels).Select(_ => new List<double>())];
        for (int i = 0; i < kinds.Length; i++)
        {
            if (kinds[i] == PixelKind.Unknown)
                continue;
            int channel = Channel(camera, i);
            (double value, double variance) = computed(i);
            residuals[i] = taken.Mean[i] * camera.Gains[channel] - value;
            variances[i] = (float)variance;
            if (kinds[i] == PixelKind.Typical && double.IsFinite(residuals[i]))
                ordinary[channel].Add(residuals[i]);
        }
        double[] levels = [.. ordinary.Select(o => o.Count == 0 ? 0 : OrderStatistics.Median([.. o]))];
        KindTally[] tallies = [.. Enumerable.Range(0, KindsJudged).Select(_ => new KindTally())];
        for (int i = 0; i < kinds.Length; i++)
        {
            if (kinds[i] == PixelKind.Unknown || !double.IsFinite(residuals[i]) || !float.IsFinite(variances[i]))
                continue;
            int channel = Channel(camera, i);
            tallies[(int)kinds[i]]
                .Add(
                    residuals[i] - levels[channel],
                    taken.Variance[i] * camera.Gains[channel] * camera.Gains[channel],
                    variances[i]
                );
        }
        return new(levels.Average(), [.. tallies.Select(t => t.Figures())]);
    }

    private static int Channel(PatternInput camera, int pixel) =>
        camera.Mosaic.Channel(pixel / camera.Width, pixel % camera.Width);
}
