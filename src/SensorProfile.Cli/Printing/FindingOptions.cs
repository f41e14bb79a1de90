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
            ["darks-missing"] = "--darks PATH",
            ["fresh-darks-missing"] = "--against PATH",
            ["gain-from-hot-pixels"] = "--profile P",
            ["gain-unknown"] = "--profile P",
            ["kind-missing"] = "--names-say",
            ["lights-beyond-tolerance"] = "darks plan",
            ["lights-missing"] = "--lights PATH",
            ["map-temperatures-apart"] = "characterise --reference C",
            ["maps-moved-in-temperature"] = "characterise --reference C",
            ["prediction-not-validated"] = "characterise without --quick",
            ["probe-misses-drift"] = "characterise --temperatures hot-pixels",
            ["probe-offset-between-sets"] = "characterise --temperatures hot-pixels",
            ["profile-missing"] = "--profile P",
            ["kind-not-measured"] = "survey --table FILE",
        };

    /// <summary>"[kind-missing: --names-say]", or the code alone.</summary>
    public static string Label(Finding finding) =>
        Known.TryGetValue(finding.Code, out string? option) ? $"[{finding.Code}: {option}]" : $"[{finding.Code}]";
}
