using SensorProfile.Profiles;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Keep, keep with care, or cannot tell, and why.</summary>
internal static class ProfileAnswer
{
    /// <summary>The answer of a whole profile.</summary>
    public static AnswerBlock Of(CameraProfile profile)
    {
        string missing = Missing(profile.Modes);
        Finding[] refusals = Of(profile.Findings, Severity.Refusal),
            warnings = Of(profile.Findings, Severity.Warning);
        string sentence = Headline.Sentence(profile);
        if (profile.Modes.Count == 0 || missing.Length > 0)
        {
            string what = missing.Length > 0 ? missing : "anything";
            string why = refusals.Length > 0 ? refusals[0].Message : "The findings below say which frames would help.";
            return new AnswerBlock(Verdict.CannotTell, sentence, $"Cannot tell {what}. {why}");
        }
        Finding[] minded = [.. refusals, .. warnings];
        if (minded.Length == 0)
            return new AnswerBlock(
                Verdict.Keep,
                sentence,
                "Keep these numbers: everything that was asked for was measured, and nothing speaks against it."
            );
        string count = minded.Length == 1 ? "the warning" : $"the {minded.Length} warnings";
        return new AnswerBlock(
            Verdict.KeepWithCare,
            sentence,
            $"Keep these numbers, and mind {count} among the findings below."
        );
    }

    /// <summary>
    /// What is missing, for each mode where there are several: "gain at ISO 800; gain and read noise at ISO 1600".
    /// </summary>
    private static string Missing(IReadOnlyList<ModeProfile> modes)
    {
        IEnumerable<(ModeProfile Mode, IReadOnlyList<string> Names)> lacking = modes
            .Select(mode => (mode, Headline.Missing(mode)))
            .Where(pair => pair.Item2.Count > 0);
        return string.Join(
            "; ",
            lacking.Select(pair =>
                List(pair.Names) + (modes.Count > 1 ? $" at {ModeLabel.Text(pair.Mode.Settings)}" : "")
            )
        );
    }

    /// <summary>"gain, dark current and doubling temperature".</summary>
    public static string List(IReadOnlyList<string> items) =>
        items.Count < 2 ? string.Concat(items) : $"{string.Join(", ", items.SkipLast(1))} and {items[^1]}";

    private static Finding[] Of(IReadOnlyList<Finding> findings, Severity severity) =>
        [.. findings.Where(finding => finding.Severity == severity)];
}
