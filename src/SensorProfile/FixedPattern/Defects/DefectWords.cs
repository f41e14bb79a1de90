namespace SensorProfile.FixedPattern.Defects;

/// <summary>Words for the defect classes, in headers and tables.</summary>
internal static class DefectWords
{
    /// <summary>Each class with its FITS keyword and its word.</summary>
    public static IReadOnlyList<(DefectClass Class, string Keyword, string Word)> All { get; } =
    [
        (DefectClass.Warm, "DEFWARM", "warm"),
        (DefectClass.Hot, "DEFHOT", "hot"),
        (DefectClass.Cold, "DEFCOLD", "cold"),
        (DefectClass.Dead, "DEFDEAD", "dead"),
        (DefectClass.Saturated, "DEFSATUR", "saturated"),
        (DefectClass.NonLinear, "DEFNONLI", "non-linear"),
        (DefectClass.Flickering, "DEFFLICK", "flickering"),
        (DefectClass.Line, "DEFLINE", "line"),
    ];

    /// <summary>Text such as "hot", or "hot+flickering" for several classes.</summary>
    public static string Text(DefectClass found) =>
        string.Join('+', All.Where(k => found.HasFlag(k.Class)).Select(k => k.Word));
}
