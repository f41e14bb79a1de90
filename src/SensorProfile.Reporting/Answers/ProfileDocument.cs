using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Reporting.Answers;

/// <summary>
/// The answer of <c>characterise</c> and <c>report</c>: the camera's numbers and where the report is.
/// </summary>
internal static class ProfileDocument
{
    internal const string Measured = "measured",
        Incomplete = "incomplete";

    public static AnswerShape Shape(string command) => new(command, [Measured, Incomplete], typeof(ProfileFields));

    public static AnswerDocument Compose(string command, CameraProfile profile, string folder)
    {
        IReadOnlyList<string>[] missing = [.. profile.Modes.Select(Headline.Missing)];
        bool complete = missing.Any(m => m.Count == 0); // one mode that holds all four answers the question
        return new AnswerDocument
        {
            Command = command,
            Sentence = Headline.Sentence(profile),
            Reason =
                Headline.NotRaw(profile) is { } spoilt ? spoilt.Message
                : complete ? ""
                : Missing(profile, missing),
            Verdict = complete ? Measured : Incomplete,
            Quantities = profile.Modes.Count == 1 ? ModeQuantities.Of(profile.Modes[0]) : [],
            Tables = [.. profile.Modes.SelectMany(mode => Tables(profile, mode))],
            Lines = Places(folder),
            Fields = new ProfileFields(
                folder,
                profile.Camera,
                [
                    .. profile.Modes.Select(m => new ProfileMember(
                        m.Settings,
                        ModeQuantities.Of(m).ToDictionary(q => q.Name, q => q.Value),
                        Headline.Missing(m),
                        m.Channels
                    )),
                ],
                profile.Frames.Rejected
            ),
            Findings = profile.Findings,
            CannotTell = !complete,
        };
    }

    /// <summary>A single mode needs no table: its numbers are already above the tables.</summary>
    private static IEnumerable<AnswerTable> Tables(CameraProfile profile, ModeProfile mode) =>
        [
            .. profile.Modes.Count == 1 ? [] : new[] { ModeQuantities.Table(mode) },
            ModeQuantities.Channels(mode),
            .. mode.DarkNights.Count == 0 ? [] : new[] { ModeQuantities.Nights(mode) },
        ];

    private static string Missing(CameraProfile profile, IReadOnlyList<string>[] missing)
    {
        if (profile.Modes.Count == 0)
            return "No combination of settings had frames to measure; the findings say why.";
        IEnumerable<string> parts =
            profile.Modes.Count == 1
                ? [string.Join(", ", missing[0])]
                : profile.Modes.Zip(missing, (mode, names) =>
                    $"{string.Join(", ", names)} at {ModeLabel.Text(mode.Settings)}"
                );
        return $"Not measured: {string.Join("; ", parts)}. The findings say why, and which frames would help.";
    }

    private static List<string> Places(string folder) =>
        [
            .. new[]
            {
                ("Report", "report.html"),
                ("To print", "report.pdf"),
                ("Card", "card.html"),
                ("Profile", "profile.json"),
                ("Maps", "maps"),
            }
                .Select(p => (p.Item1, Path: Path.Combine(folder, p.Item2)))
                .Where(p => Path.Exists(p.Path))
                .Select(p => $"{p.Item1 + ":", -10}{p.Path}"),
        ];
}

/// <summary>Fields that only <c>characterise</c> and <c>report</c> add to the JSON document.</summary>
internal sealed record ProfileFields(
    string Folder,
    CameraInfo Camera,
    IReadOnlyList<ProfileMember> Modes,
    IReadOnlyList<RejectedFile> Rejected
);

/// <summary>The numbers of one mode.</summary>
internal sealed record ProfileMember(
    ModeSettings Settings,
    IReadOnlyDictionary<string, Measurement?> Quantities,
    IReadOnlyList<string> Missing,
    IReadOnlyList<ChannelProfile> Channels
);
