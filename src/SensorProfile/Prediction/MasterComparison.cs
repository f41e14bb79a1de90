using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Prediction;

/// <summary>A computed master against a taken one, pixel by pixel and class by class.</summary>
/// <param name="Level">Level of the taken master above the computed one, mean over the channels, e-.</param>
/// <param name="Classes">One per <see cref="BrightnessClass"/>.</param>
internal sealed record MasterComparison(double Level, IReadOnlyList<ClassTally> Classes)
{
    /// <summary>Signal of the typical pixel in the master, e-.</summary>
    public double TypicalSignal { get; init; }

    /// <summary>Compares them; the median over ordinary pixels of each channel is removed as common level.</summary>
    /// <param name="camera">The camera.</param>
    /// <param name="kinds">Kind of every pixel.</param>
    /// <param name="taken">The taken master.</param>
    /// <param name="computed">The computed master at a pixel.</param>
    /// <param name="noise">Noise of an ordinary pixel in one such frame, e-.</param>
    public static MasterComparison Compare(
        PatternInput camera,
        PixelKind[] kinds,
        TakenMaster taken,
        Func<int, ComputedPixel> computed,
        double noise
    )
    {
        int channels = camera.Mosaic.Channels;
        double[] residuals = new double[kinds.Length];
        float[] variances = new float[kinds.Length],
            signals = new float[kinds.Length];
        List<double>[] ordinary = [.. Enumerable.Range(0, channels).Select(_ => new List<double>())];
        for (int i = 0; i < kinds.Length; i++)
        {
            if (kinds[i] == PixelKind.Unknown)
                continue;
            int channel = Channel(camera, i);
            ComputedPixel pixel = computed(i);
            residuals[i] = taken.Mean[i] * camera.Gains[channel] - pixel.Value;
            (variances[i], signals[i]) = ((float)pixel.Variance, (float)pixel.Signal);
            if (kinds[i] == PixelKind.Typical && double.IsFinite(residuals[i]))
                ordinary[channel].Add(residuals[i]);
        }
        double[] levels = [.. ordinary.Select(o => o.Count == 0 ? 0 : OrderStatistics.Median([.. o]))];
        ClassTally[] tallies = [.. Enumerable.Range(0, BrightnessClass.Count).Select(_ => new ClassTally())];
        for (int i = 0; i < kinds.Length; i++)
        {
            if (kinds[i] == PixelKind.Unknown || !double.IsFinite(residuals[i]) || !float.IsFinite(variances[i]))
                continue;
            int channel = Channel(camera, i);
            tallies[BrightnessClass.Classify(kinds[i], signals[i] / noise)]
                .Add(
                    residuals[i] - levels[channel],
                    taken.Variance[i] * camera.Gains[channel] * camera.Gains[channel],
                    variances[i],
                    signals[i]
                );
        }
        return new(levels.Average(), tallies);
    }

    /// <summary>Figures of a kind with the uncertainty from noise and laws alone; null without a pixel of it.</summary>
    public PredictionFigures? Figures(PixelKind kind)
    {
        var all = new ClassTally();
        foreach (int number in BrightnessClass.OfKind(kind))
            all.Add(Classes[number]);
        return all.Figures(ClassDoubt.None);
    }

    private static int Channel(PatternInput camera, int pixel) =>
        camera.Mosaic.Channel(pixel / camera.Width, pixel % camera.Width);
}

/// <summary>A pixel of a computed master.</summary>
/// <param name="Value">Level with pedestal, e-.</param>
/// <param name="Variance">e-².</param>
/// <param name="Signal">Signal above the typical pixel's, e-; 0 where brightness does not matter.</param>
internal readonly record struct ComputedPixel(double Value, double Variance, double Signal);
