using SensorProfile.Fits;

namespace SensorProfile.Reporting.Drawing;

/// <summary>Makes a small picture of a large map: each of its points is the mean of a square of pixels that were measured.</summary>
internal static class MapReduction
{
    private const int LongestSide = 400;
    private const double LowShare = 0.01, HighShare = 0.995;     // of the points; the brightest would leave the rest black

    /// <summary>The picture of the first image in a FITS file; null when nothing in it was measured.</summary>
    public static MapPicture? Of(string path, int mode, string title, string unit)
    {
        using FitsFile file = FitsFile.Open(path);
        FitsHdu map = file.RequireFirstImage();
        int side = (Math.Max(map.Width, map.Height) + LongestSide - 1) / LongestSide;
        int width = (map.Width + side - 1) / side, height = (map.Height + side - 1) / side;
        var values = new float[width * height];
        var rows = new float[side * map.Width];
        for (int y = 0; y < height; y++)
        {
            int count = Math.Min(side, map.Height - y * side);
            map.ReadRows(y * side, rows.AsSpan(0, count * map.Width));
            for (int x = 0; x < width; x++)
                values[y * width + x] = Mean(rows, x * side, Math.Min(side, map.Width - x * side), count, map.Width);
        }
        float[] measured = [.. values.Where(float.IsFinite).Order()];
        return measured.Length == 0 ? null
            : new MapPicture(mode, title, unit, width, height, values, measured[(int)(LowShare * (measured.Length - 1))], measured[(int)(HighShare * (measured.Length - 1))]);
    }

    private static float Mean(float[] rows, int left, int columns, int count, int stride)
    {
        double sum = 0;
        int measured = 0;
        for (int row = 0; row < count; row++)
        {
            foreach (float value in rows.AsSpan(row * stride + left, columns))
            {
                if (float.IsFinite(value))
                {
                    sum += value;
                    measured++;
                }
            }
        }
        return measured == 0 ? float.NaN : (float)(sum / measured);
    }
}
