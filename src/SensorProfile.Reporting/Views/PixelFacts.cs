using SensorProfile.Fits;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Views;

/// <summary>What the maps say about one pixel.</summary>
internal static class PixelFacts
{
    private static readonly (string Map, string Doubt, string Label, string Unit)[] _maps =
    [
        ("dark-rate", "dark-rate-uncertainty", "dark current", "e-/px/s"),
        ("dark-rate-adu", "dark-rate-adu-uncertainty", "dark current", "ADU/px/s"),
        ("doubling", "doubling-uncertainty", "it doubles every", "°C"),
        ("glow", "", "glow", "e-/px/s"),
        ("read-noise", "", "read noise", "e-"),
        ("pedestal", "pedestal-uncertainty", "black level", "ADU"),
    ];

    /// <summary>A table with a row for each map available.</summary>
    /// <param name="result">The results.</param>
    /// <param name="mode">Index of the mode.</param>
    /// <param name="x">Column, from 0.</param>
    /// <param name="y">Row of the file, from 0.</param>
    public static AnswerTable At(StoredResult result, int mode, int x, int y)
    {
        CameraProfile profile = result.Profile;
        string folder = Path.Combine(
            result.Folder,
            "maps",
            profile.Modes.Count > 1 ? ModeLabel.Folders(profile.Modes)[mode] : ""
        );
        List<IReadOnlyList<string>> rows = [];
        foreach ((string map, string doubt, string label, string unit) in _maps)
        {
            if (Value(folder, map, x, y) is not float value)
                continue;
            float? uncertainty = doubt.Length > 0 ? Value(folder, doubt, x, y) : null;
            string text =
                !float.IsFinite(value) ? QuantityText.NotMeasured
                : uncertainty is float u && float.IsFinite(u)
                    ? QuantityText.Of(new Measurement(value, Math.Abs(u), unit, 1, "map"))
                : $"{QuantityText.Number(value)} {QuantityText.Unit(unit)}";
            rows.Add([label, text]);
        }
        if (Value(folder, "defects", x, y) is float bits)
        {
            string[] names = [.. DefectReduction.Names((int)bits)];
            rows.Add(["counts as", names.Length > 0 ? string.Join(", ", names) : "an ordinary pixel"]);
        }
        return new AnswerTable($"Pixel {x + 1}, {y + 1}", ["", ""], rows);
    }

    private static float? Value(string folder, string map, int x, int y)
    {
        string path = Path.Combine(folder, map + ".fits");
        if (!File.Exists(path))
            return null;
        using FitsFile file = FitsFile.Open(path);
        FitsHdu image = file.RequireFirstImage();
        if (x < 0 || y < 0 || x >= image.Width || y >= image.Height)
            return null;
        if (map == "defects")
        {
            var bits = new ushort[image.Width];
            image.ReadRows(y, bits);
            return bits[x];
        }
        var row = new float[image.Width];
        image.ReadRows(y, row);
        return row[x];
    }
}
