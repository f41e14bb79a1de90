using SensorProfile.Fitting.Statistics;
using SensorProfile.Pixels;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Defects;

/// <summary>Compares the response of each pixel to light with its neighbourhood.</summary>
internal static class DeadPixelSearch
{
    private const int Reach = 2; // pixels of the channel on either side

    /// <summary>Finds cold or dead pixels by their response; the others are sound.</summary>
    /// <param name="flat">Mean of the flats, ADU.</param>
    /// <param name="pedestal">Level without light of each pixel, ADU; null to use <paramref name="level"/>.</param>
    /// <param name="level">Level without light, ADU, if there is no map.</param>
    /// <param name="width">px.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="thresholds">Shares of the neighbourhood's signal below which a pixel counts as cold and as
    /// dead.</param>
    /// <remarks>Response is the signal over the median of the 24 nearest pixels of the same channel; that median
    /// follows vignetting and dust shadows wider than this neighbourhood. A pixel that reaches the limit relative to
    /// half of its neighbours is sound without computing the median; that covers nearly all pixels.</remarks>
    public static DefectClass[] Find(
        float[] flat,
        float[]? pedestal,
        double level,
        int width,
        ColourMosaic mosaic,
        DefectThresholds thresholds
    )
    {
        int height = flat.Length / width,
            period = mosaic.Period;
        double deadResponse = thresholds.DeadResponse;
        var found = new DefectClass[flat.Length];
        double Signal(int i) => flat[i] - (pedestal is null ? level : pedestal[i]);
        Parallel.For(0, height, row =>
        {
            Span<double> around = stackalloc double[(2 * Reach + 1) * (2 * Reach + 1)];
            for (int column = 0; column < width; column++)
            {
                double own = Signal(row * width + column);
                int n = 0,
                    brighter = 0;
                for (int y = row - Reach * period; y <= row + Reach * period; y += period)
                for (int x = column - Reach * period; x <= column + Reach * period; x += period)
                    if (x >= 0 && x < width && y >= 0 && y < height && (x != column || y != row))
                    {
                        double neighbour = around[n++] = Signal(y * width + x);
                        if (own < deadResponse * neighbour)
                            brighter++;
                    }
                if (2 * brighter < n)
                    continue;
                around[..n].Sort();
                double median = OrderStatistics.MedianOfSorted(around[..n]);
                double response = median > 0 ? own / median : double.NaN;
                if (response < deadResponse)
                    found[row * width + column] =
                        response < thresholds.NoResponse ? DefectClass.Dead : DefectClass.Cold;
            }
        });
        return found;
    }
}
