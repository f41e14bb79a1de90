using SensorProfile.Fitting;
using SensorProfile.Pixels;

namespace SensorProfile.FixedPattern;

/// <summary>Response of each pixel to light against its neighbourhood.</summary>
internal static class DeadPixels
{
    /// <summary>Below this share of the neighbourhood's signal a pixel does not respond at all.</summary>
    public const double NoResponse = 0.1;

    private const int Reach = 2;                         // pixels of the channel on either side

    /// <summary>Cold or dead pixels by their response; the others are sound.</summary>
    /// <param name="flat">Mean of the flats, ADU.</param> <param name="pedestal">Level without light of each pixel, ADU; null to use <paramref name="level"/>.</param>
    /// <param name="level">Level without light, ADU, where there is no map.</param> <param name="width">px.</param> <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="deadResponse">Share of the neighbourhood's signal below which a pixel counts.</param>
    public static DefectClass[] Find(float[] flat, float[]? pedestal, double level, int width, ColourMosaic mosaic, double deadResponse) =>
        Array.ConvertAll(Response(flat, pedestal, level, width, mosaic), r => !(r < deadResponse) ? DefectClass.None : r < NoResponse ? DefectClass.Dead : DefectClass.Cold);

    /// <summary>Signal over the median of the 24 nearest pixels of the same channel; follows vignetting and dust shadows wider than those.</summary>
    /// <param name="flat">Mean of the flats, ADU.</param> <param name="pedestal">Level without light of each pixel, ADU; null to use <paramref name="level"/>.</param>
    /// <param name="level">Level without light, ADU, where there is no map.</param> <param name="width">px.</param> <param name="mosaic">Which pixels share a channel.</param>
    public static float[] Response(float[] flat, float[]? pedestal, double level, int width, ColourMosaic mosaic)
    {
        int height = flat.Length / width, period = mosaic.Period;
        var response = new float[flat.Length];
        double Signal(int i) => flat[i] - (pedestal is null ? level : pedestal[i]);
        Parallel.For(0, height, row =>
        {
            Span<double> around = stackalloc double[(2 * Reach + 1) * (2 * Reach + 1)];
            for (int column = 0; column < width; column++)
            {
                int n = 0;
                for (int y = row - Reach * period; y <= row + Reach * period; y += period)
                    for (int x = column - Reach * period; x <= column + Reach * period; x += period)
                        if (x >= 0 && x < width && y >= 0 && y < height && (x != column || y != row)) around[n++] = Signal(y * width + x);
                around[..n].Sort();
                double median = OrderStatistics.MedianOfSorted(around[..n]);
                response[row * width + column] = (float)(median > 0 ? Signal(row * width + column) / median : double.NaN);
            }
        });
        return response;
    }
}
