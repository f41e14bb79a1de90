using OxyPlot;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Drawing;

/// <summary>How verdicts and severities are named and coloured; never by colour alone.</summary>
internal static class VerdictLook
{
    /// <summary>The verdict in words.</summary>
    public static string Words(Verdict verdict) =>
        verdict switch
        {
            Verdict.Answered => "Answer",
            Verdict.Keep => "Keep",
            Verdict.KeepWithCare => "Keep, with care",
            Verdict.Unchanged => "No change",
            Verdict.Changed => "Changed",
            Verdict.Retake => "Retake",
            _ => "Cannot tell",
        };

    /// <summary>Its colour.</summary>
    public static OxyColor Colour(Verdict verdict) =>
        verdict switch
        {
            Verdict.Answered => Palette.Blue,
            Verdict.Keep or Verdict.Unchanged => Palette.Green,
            Verdict.KeepWithCare or Verdict.Changed or Verdict.Retake => Palette.Orange,
            _ => Palette.Vermillion,
        };

    /// <summary>The severity in words.</summary>
    public static string Words(Severity severity) =>
        severity switch
        {
            Severity.Note => "Note",
            Severity.Warning => "Warning",
            _ => "Refusal",
        };

    /// <summary>Its colour.</summary>
    public static OxyColor Colour(Severity severity) =>
        severity switch
        {
            Severity.Note => Palette.Blue,
            Severity.Warning => Palette.Orange,
            _ => Palette.Vermillion,
        };
}
