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

    // findings that say that the option was used: then it is no cure
    private static readonly Dictionary<string, string[]> used = new()
    {
        ["kind-missing"] = ["kind-from-name"],
        ["probe-misses-drift"] = ["temperatures-by-hot-pixels", "temperatures-not-replaced"],
        ["probe-offset-between-sets"] = ["temperatures-by-hot-pixels", "temperatures-not-replaced"],
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
