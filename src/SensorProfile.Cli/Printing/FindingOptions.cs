namespace SensorProfile.Cli.Printing;

/// <summary>
/// Where an option or a command is the cure of a finding: the library names the fault, this its option.
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

    /// <summary>"[kind-missing: --names-say]", or the code alone.</summary>
    public static string Label(Finding finding) =>
        Known.TryGetValue(finding.Code, out string? option) ? $"[{finding.Code}: {option}]" : $"[{finding.Code}]";
}
