using System.Globalization;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames.Headers;

/// <summary>Gain, offset, ISO, binning and read-out mode.</summary>
internal static class SettingsKeywords
{
    /// <summary>
    /// GAIN; OFFSET or BLKLEVEL; ISOSPEED or ISO; XBINNING and YBINNING; READOUTM. Absent values stay null, except that
    /// binning defaults to 1x1.
    /// </summary>
    public static ModeSettings Read(KeywordValues header, List<HeaderIssue> issues) =>
        new()
        {
            Gain = Finite(header.Number(issues, "gain", "GAIN")?.Value),
            Offset = Finite(header.Number(issues, "offset", "OFFSET", "BLKLEVEL")?.Value),
            Iso = Finite(header.Number(issues, "iso", "ISOSPEED", "ISO")?.Value),
            Binning = BinningOf(header, issues),
            Readout = header.Text("READOUTM"),
        };

    /// <summary>Reads "2x2", "2 X 2", "2×2", "2*2", "2" or "2 2"; null for anything else.</summary>
    public static string? ParseBinning(string text)
    {
        string[] parts = text.Split([' ', 'x', 'X', '×', '*', ','], StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length is < 1 or > 2)
            return null;
        int? x = Factor(parts[0]),
            y = Factor(parts[^1]);
        return x is null || y is null ? null : Format(x.Value, y.Value);
    }

    private static string BinningOf(KeywordValues header, List<HeaderIssue> issues)
    {
        double? x = header.Number(issues, "binning", "XBINNING")?.Value,
            y = header.Number(issues, "binning", "YBINNING")?.Value;
        if (x is null && y is null)
            return header.Text("BINNING") is { } text && ParseBinning(text) is { } binning ? binning : "1x1";
        int? columns = Factor(x ?? y!.Value),
            rows = Factor(y ?? x!.Value);
        if (columns is not null && rows is not null)
            return Format(columns.Value, rows.Value);
        issues.Add(
            new HeaderIssue(
                FindingCodes.BinningUnreadable,
                $"XBINNING = {header.Text("XBINNING")}, YBINNING = {header.Text("YBINNING")}",
                "binning"
            )
        );
        return "1x1";
    }

    private static int? Factor(string text) =>
        NumberText.TryParse(text, out double value, out _) ? Factor(value) : null;

    private static int? Factor(double value) =>
        value is >= 1 and <= 64 && value == Math.Floor(value) ? (int)value : null;

    private static string Format(int x, int y) => string.Create(CultureInfo.InvariantCulture, $"{x}x{y}");

    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;
}
