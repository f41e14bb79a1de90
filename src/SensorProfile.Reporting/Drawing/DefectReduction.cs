using SensorProfile.Fits;

namespace SensorProfile.Reporting.Drawing;

/// <summary>
/// Reduces a defect map to a small picture: each point shows the gravest defect of a square of pixels.
/// </summary>
internal static class DefectReduction
{
    // Gravest first; the bits are those of defects.fits, which are the same in every version.
    private static readonly (string Name, int Bits)[] _kinds =
    [
        ("bad column or row", 128),
        ("dead or cold", 8 | 4),
        ("hot", 2 | 16),
        ("flickering", 64),
        ("not linear", 32),
        ("warm", 1),
    ];

    /// <summary>The picture; null when the map is not one of small numbers.</summary>
    public static MapPicture? Reduce(string path, int mode, string title)
    {
        using FitsFile file = FitsFile.Open(path);
        FitsHdu map = file.RequireFirstImage();
        (int width, int height, float[] values) = Points(map, MapWindow.Whole(map.Width, map.Height));
        return new MapPicture(mode, title, "", width, height, values, 0, _kinds.Length)
        {
            FrameWidth = map.Width,
            FrameHeight = map.Height,
            Classes = [.. _kinds.Select(k => k.Name)],
        };
    }

    /// <summary>A part of the map.</summary>
    /// <param name="path">The file.</param>
    /// <param name="whole">The picture of all of it.</param>
    /// <param name="window">The part; it lies within the map.</param>
    public static MapPicture Part(string path, MapPicture whole, MapWindow window)
    {
        using FitsFile file = FitsFile.Open(path);
        (int width, int height, float[] values) = Points(file.RequireFirstImage(), window);
        return whole with { Width = width, Height = height, Values = values };
    }

    /// <summary>The names of all defects that a value of the map stands for.</summary>
    public static IEnumerable<string> Names(int bits) => _kinds.Where(k => (bits & k.Bits) != 0).Select(k => k.Name);

    private static (int Width, int Height, float[] Values) Points(FitsHdu map, MapWindow window)
    {
        int side = MapReduction.Side(window.Width, window.Height),
            width = (window.Width + side - 1) / side,
            height = (window.Height + side - 1) / side;
        var values = new float[width * height];
        var row = new ushort[map.Width];
        Array.Fill(values, _kinds.Length);
        for (int y = 0; y < window.Height; y++)
        {
            map.ReadRows(window.Top + y, row);
            for (int x = 0; x < window.Width; x++)
            {
                ref float value = ref values[y / side * width + x / side];
                value = Math.Min(value, Gravest(row[window.Left + x]));
            }
        }
        for (int i = 0; i < values.Length; i++)
            values[i] = values[i] < _kinds.Length ? values[i] + 1 : 0;
        return (width, height, values);
    }

    private static int Gravest(int bits)
    {
        for (int k = 0; bits != 0 && k < _kinds.Length; k++)
        {
            if ((bits & _kinds[k].Bits) != 0)
                return k;
        }
        return _kinds.Length;
    }
}
