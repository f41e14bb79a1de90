namespace SensorProfile.Cli.Printing;

/// <summary>
/// Names the option or command that cures a finding; the library names only the fault.
/// </summary>
internal static class FindingOptions
{
    /// <summary>Option or command by the code of the finding.</summary>
    public static IReadOnlyDictionary<string, string> Known { get; } =
        new Dictionary<string, string>
        {
            [FindingCodes.DarksMissing] = "--darks PATH",
            [FindingCodes.FreshDarksMissing] = "--against PATH",
            [FindingCodes.GainFromHotPixels] = "--profile P",
            [FindingCodes.GainUnknown] = "--profile P",
            [FindingCodes.KindMissing] = "--names-say",
            [FindingCodes.LightsBeyondTolerance] = "darks plan",
            [FindingCodes.LightsMissing] = "--lights PATH",
            [FindingCodes.MapTemperaturesApart] = "characterise --reference C",
            [FindingCodes.MapsMovedInTemperature] = "characterise --reference C",
            [FindingCodes.PredictionNotValidated] = "characterise without --quick",
            [FindingCodes.ProbeMissesDrift] = "characterise --temperatures hot-pixels",
            [FindingCodes.ProbeOffsetBetweenSets] = "characterise --temperatures hot-pixels",
            [FindingCodes.ProfileMissing] = "--profile P",
            [FindingCodes.KindNotMeasured] = "survey --table FILE",
        };

    // findings that say that the option was used: then it is no cure
    private static readonly Dictionary<string, string[]> used = new()
    {
        [FindingCodes.KindMissing] = [FindingCodes.KindFromName],
        [FindingCodes.ProbeMissesDrift] = [FindingCodes.TemperaturesByHotPixels, FindingCodes.TemperaturesNotReplaced],
        [FindingCodes.ProbeOffsetBetweenSets] =
        [
            FindingCodes.TemperaturesByHotPixels,
            FindingCodes.TemperaturesNotReplaced,
        ],
    };

    /// <summary>"[kind-missing: --names-say]", or the code alone.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="beside">All findings of the answer: they tell which options were used.</param>
    public static string Label(Finding finding, IReadOnlyList<Finding> beside) =>
        Known.TryGetValue(finding.Code, out string? option) && !WasUsed(finding.Code, beside)
            ? $"[{finding.Code}: {option}]"
            : $"[{finding.Code}]";

    private static bool WasUsed(string code, IReadOnlyList<Finding> beside) =>
        used.TryGetValue(code, out string[]? signs) && beside.Any(f => signs.Contains(f.Code));
}
