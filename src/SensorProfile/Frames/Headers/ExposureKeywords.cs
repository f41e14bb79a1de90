using static SensorProfile.Frames.NumberText;

namespace SensorProfile.Frames.Headers;

/// <summary>Exposure from EXPTIME and EXPOSURE, seconds.</summary>
internal static class ExposureKeywords
{
    private const double LongestSeconds = 1e6; // 11.6 days: beyond any single frame
    private const string Column = "exposure_s";

    /// <summary>
    /// EXPTIME, or else EXPOSURE; null with an issue when absent, negative, infinite or not a number.
    /// </summary>
    /// <remarks>
    /// When the two differ, EXPOINUS (microseconds) decides which is right; without it EXPTIME wins. EXPOINUS alone
    /// gives no exposure.
    /// </remarks>
    public static double? Read(KeywordValues header, List<HeaderIssue> issues)
    {
        (string Keyword, double Value)? time = header.Number(issues, Column, "EXPTIME"),
            exposure = null;
        if (header.Text("EXPOSURE") is { } text && text != header.Text("EXPTIME"))
            exposure = header.Number(issues, Column, "EXPOSURE");
        if ((time ?? exposure) is not { } chosen)
        {
            if (header.First("EXPTIME", "EXPOSURE") is null)
                issues.Add(new HeaderIssue(FindingCodes.ExposureMissing, "", Column));
            return null;
        }
        if (time is { } a && exposure is { } b && !SameExposure.Test(a.Value, b.Value))
            chosen = Decide(header, a, b, issues);
        if (!double.IsFinite(chosen.Value) || chosen.Value is < 0 or > LongestSeconds)
        {
            issues.Add(new HeaderIssue(FindingCodes.ExposureInvalid, $"{chosen.Keyword} = {Of(chosen.Value)}", Column));
            return null;
        }
        return chosen.Value;
    }

    private static (string Keyword, double Value) Decide(
        KeywordValues header,
        (string Keyword, double Value) a,
        (string Keyword, double Value) b,
        List<HeaderIssue> issues
    )
    {
        bool valid = a.Value >= 0,
            otherValid = b.Value >= 0;
        double? microseconds = header.Number(issues, Column, "EXPOINUS")?.Value;
        bool other =
            valid != otherValid
                ? otherValid
                : microseconds is { } m
                    && SameExposure.Test(b.Value, m * 1e-6)
                    && !SameExposure.Test(a.Value, m * 1e-6);
        (string Keyword, double Value) chosen = other ? b : a;
        issues.Add(
            new HeaderIssue(
                FindingCodes.ExposureContradicts,
                $"{a.Keyword} = {Of(a.Value)}, {b.Keyword} = {Of(b.Value)}; {chosen.Keyword} was used",
                Column
            )
        );
        return chosen;
    }
}
