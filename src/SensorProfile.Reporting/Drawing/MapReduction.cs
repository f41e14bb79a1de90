using SensorProfile.Fits;

namespace SensorProfile.Reporting.Drawing;

/// <summary>
/// Reduces a large map to a small picture: each point is the mean of the measured pixels of a square, or
/// their brightest where that stands out.
/// </summary>
internal static class MapReduction
{
    /// <summary>Most columns or rows of a picture.</summary>
    public const int LongestSide = 400;

    // shares of the points that lie below black and white; scaled to the brightest point, the rest would be black
    private const double LowShare = 0.01,
        HighShare = 0.995;
    private const double LowShareOfRatios = 0.25,
        MaxDecades = 3;

    /// <summary>The picture of the first image in a FITS file; null when nothing in it was measured.</summary>
    /// <param name="path">The file.</param>
    /// <param name="mode">Index of the mode.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="unit">Unit of the values.</param>
    /// <param name="outstanding">A pixel above this value is shown, whatever the others of its square are.</param>
    /// <param name="logarithmic">Whether equal steps of grey show equal ratios.</param>
    public static MapPicture? Reduce(
        string path,
        int mode,
        string title,
        string unit,
        double outstanding = double.PositiveInfinity,
        bool logarithmic = false
    )
    {
        using FitsFile file = FitsFile.Open(path);
        FitsHdu map = file.RequireFirstImage();
        (int width, int height, float[] values) = Points(map, MapWindow.Whole(map.Width, map.Height), outstanding);
        float[] measured = [.. values.Where(float.IsFinite).Order()];
        if (measured.Length == 0)
            return null;
        (double low, double high) = logarithmic
            ? Ratios(measured, outstanding)
            : (measured[(int)(LowShare * (measured.Length - 1))], measured[(int)(HighShare * (measured.Length - 1))]);
        return new MapPicture(mode, title, unit, width, height, values, low, high)
        {
            FrameWidth = map.Width,
            FrameHeight = map.Height,
            Logarithmic = logarithmic && low > 0,
        };
    }

    /// <summary>A part of a map in the shades of the whole picture.</summary>
    /// <param name="path">The file.</param>
    /// <param name="whole">The picture of all of it.</param>
    /// <param name="window">The part; it lies within the map.</param>
    /// <param name="outstanding">As for the whole picture.</param>
    public static MapPicture Part(string path, MapPicture whole, MapWindow window, double outstanding)
    {
        using FitsFile file = FitsFile.Open(path);
        (int width, int height, float[] values) = Points(file.RequireFirstImage(), window, outstanding);
        return whole with { Width = width, Height = height, Values = values };
    }

    private static (int Width, int Height, float[] Values) Points(FitsHdu map, MapWindow window, double outstanding)
    {
        int side = Side(window.Width, window.Height);
        int width = (window.Width + side - 1) / side,
            height = (window.Height + side - 1) / side;
        var values = new float[width * height];
        var rows = new float[side * map.Width];
        for (int y = 0; y < height; y++)
        {
            int count = Math.Min(side, window.Height - y * side);
            map.ReadRows(window.Top + y * side, rows.AsSpan(0, count * map.Width));
            for (int x = 0; x < width; x++)
                values[y * width + x] = Shown(
                    rows,
                    window.Left + x * side,
                    Math.Min(side, window.Width - x * side),
                    count,
                    map.Width,
                    outstanding
                );
        }
        return (width, height, values);
    }

    /// <summary>Side, in pixels, of the square that becomes a point.</summary>
    public static int Side(int width, int height) => (Math.Max(width, height) + LongestSide - 1) / LongestSide;

    // The range runs from below the typical pixel, so that glow shows, to well above the threshold of hot pixels.
    private static (double Low, double High) Ratios(float[] measured, double outstanding)
    {
        double high = Math.Max(
            measured[(int)(HighShare * (measured.Length - 1))],
            double.IsFinite(outstanding) ? 5 * outstanding : 0
        );
        double low = measured[(int)(LowShareOfRatios * (measured.Length - 1))] / 2;
        return high > 0 ? (Math.Max(low, high * Math.Pow(10, -MaxDecades)), high) : (measured[0], measured[^1]);
    }

    private static float Shown(float[] rows, int left, int columns, int count, int stride, double outstanding)
    {
        double sum = 0;
        int measured = 0;
        float brightest = float.NegativeInfinity;
        for (int row = 0; row < count; row++)
        {
            foreach (float value in rows.AsSpan(row * stride + left, columns))
            {
                if (!float.IsFinite(value))
                    continue;
                sum += value;
                measured++;
                brightest = Math.Max(brightest, value);
            }
        }
        return measured == 0 ? float.NaN
            : brightest > outstanding ? brightest
            : (float)(sum / measured);
    }
}
