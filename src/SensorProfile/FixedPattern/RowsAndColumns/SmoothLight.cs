using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Pixels;

namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>Response of the pixels to light, with the unevenness of the light removed.</summary>
internal static class SmoothLight
{
    private const int Cells = 24,
        Degree = 4;

    /// <summary>
    /// (flat − level without light), divided by the median of its channel and by a surface of fourth degree: 1 for a
    /// typical pixel anywhere.
    /// </summary>
    /// <remarks>
    /// A lens or telescope darkens the corners, and r² = x² + y² would count as rows and columns. The surface is fitted
    /// by least squares to the medians of 24 × 24 cells.
    /// </remarks>
    /// <param name="flat">Mean of the flats, ADU.</param>
    /// <param name="unlit">Level without light of each pixel, ADU; null to use <paramref name="levels"/>.</param>
    /// <param name="levels">Level without light of each channel, ADU.</param>
    /// <param name="width">px.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    public static float[]? Response(
        float[] flat,
        float[]? unlit,
        IReadOnlyList<double> levels,
        int width,
        ColourMosaic mosaic
    )
    {
        int height = flat.Length / width;
        if (width < 2 * Cells || height < 2 * Cells)
            return null;
        var response = new float[flat.Length];
        for (int i = 0; i < flat.Length; i++)
            response[i] = flat[i] - (unlit is null ? (float)levels[mosaic.Channel(i / width, i % width)] : unlit[i]);
        float[] medians =
        [
            .. Enumerable
                .Range(0, mosaic.Channels)
                .Select(c => (float)Median(response, width, 0, 0, width, height, mosaic, c)),
        ];
        if (medians.Any(m => !(m > 0)))
            return null;
        Parallel.For(0, height, row =>
        {
            for (int x = 0; x < width; x++)
                response[row * width + x] /= medians[mosaic.Channel(row, x)];
        });
        double[] surface = Fit(response, width, height);
        Parallel.For(0, height, row =>
        {
            double v = 2.0 * row / (height - 1) - 1;
            // Within a row, the surface is a polynomial in the column only.
            double[] inRow = new double[Degree + 1];
            for (int term = 0, i = 0; i <= Degree; i++)
            for (int j = 0; j <= Degree - i; j++, term++)
                inRow[i] += surface[term] * Math.Pow(v, j);
            for (int x = 0; x < width; x++)
            {
                double u = 2.0 * x / (width - 1) - 1,
                    at = 0;
                for (int i = Degree; i >= 0; i--)
                    at = at * u + inRow[i];
                response[row * width + x] = (float)(response[row * width + x] / at);
            }
        });
        return response;
    }

    private static double[] Fit(float[] response, int width, int height)
    {
        var all = ColourMosaic.Of(null);
        List<double[]> terms = [];
        double[] u = new double[Cells * Cells],
            v = new double[Cells * Cells],
            y = new double[Cells * Cells];
        for (int cell = 0; cell < y.Length; cell++)
        {
            int left = cell % Cells * width / Cells,
                right = (cell % Cells + 1) * width / Cells,
                top = cell / Cells * height / Cells,
                bottom = (cell / Cells + 1) * height / Cells;
            (u[cell], v[cell]) = (
                (double)(left + right - 1) / (width - 1) - 1,
                (double)(top + bottom - 1) / (height - 1) - 1
            );
            y[cell] = Median(response, width, left, top, right, bottom, all, 0);
        }
        for (int i = 0; i <= Degree; i++)
        for (int j = 0; j <= Degree - i; j++)
            terms.Add([.. u.Select((a, k) => Math.Pow(a, i) * Math.Pow(v[k], j))]);
        return LinearLeastSquares.Fit(terms, y).Parameters;
    }

    /// <summary>Median of the values of a channel in a rectangle, or in evenly spread rows of it.</summary>
    private static double Median(
        float[] map,
        int width,
        int left,
        int top,
        int right,
        int bottom,
        ColourMosaic mosaic,
        int channel
    )
    {
        const int Enough = 100_000;
        int every = Math.Max(1, (int)((long)(right - left) * (bottom - top) / mosaic.Channels / Enough)),
            period = mosaic.Period;
        var values = new List<double>();
        for (int row = top + (channel / period - top % period + period) % period; row < bottom; row += period * every)
        for (int x = left + (channel % period - left % period + period) % period; x < right; x += period)
            values.Add(map[row * width + x]);
        return OrderStatistics.Median([.. values]);
    }
}
