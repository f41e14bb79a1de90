using System.Globalization;
using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Frames;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Reporting.Answers.Years;

/// <summary>The answer of <c>fleet</c>: every camera of an archive in one line.</summary>
/// <remarks>
/// Profiles with the same camera name, frame size and colour filter form a camera. Cameras with several sessions are
/// compared over the years, which also tells apart two sensors under one name.
/// </remarks>
internal static class FleetDocument
{
    private const string Measured = "measured",
        Incomplete = "incomplete",
        InOrder = "in-order",
        Look = "look";

    public static AnswerShape Shape { get; } = new("fleet", [InOrder, Look], typeof(FleetFields));

    public static AnswerDocument Compose(FoundProfiles found, DriftOptions options)
    {
        (FleetCamera Line, bool InOrder)[] cameras =
        [
            .. found
                .Profiles.GroupBy(p =>
                    (
                        Name: p.Profile.Camera.Name.Trim().ToUpperInvariant(),
                        p.Profile.Camera.Width,
                        p.Profile.Camera.Height,
                        p.Profile.Camera.ColourFilter
                    )
                )
                .OrderBy(camera => camera.Key.Name, StringComparer.Ordinal)
                .Select(camera => LineOf([.. camera], options)),
        ];
        FleetCamera[] lines = [.. cameras.Select(c => c.Line)];
        string[] minded = [.. cameras.Where(c => !c.InOrder).Select(c => c.Line.Camera)];
        return new AnswerDocument
        {
            Command = "fleet",
            Sentence = Sentence(lines, minded),
            Reason =
                $"{Counted.Nouns(found.Profiles.Count, "profile")} of {Counted.Nouns(lines.Length, "camera")}"
                + (found.Refused.Count > 0 ? $", {Counted.Nouns(found.Refused.Count, "file")} left out" : "")
                + ".",
            Verdict = minded.Length > 0 ? Look : InOrder,
            Tables =
            [
                new AnswerTable(
                    "",
                    ["camera", "last measured", ">sessions", "verdict", "in short"],
                    [
                        .. lines.Select(l =>
                            (IReadOnlyList<string>)
                                [l.Camera, Day(l.LastUtc), QuantityText.Count(l.Sessions), Word(l.Verdict), l.Sentence]
                        ),
                    ]
                )
                {
                    Leading = true,
                },
                AnswerTable.List("Left out", found.Refused.Select(r => $"{r.File}: {r.Reason}")),
            ],
            Fields = new FleetFields(lines, found.Refused),
            CannotTell = lines.Length == 0,
        };
    }

    private static (FleetCamera Line, bool InOrder) LineOf(IReadOnlyList<ProfileOnDisk> sessions, DriftOptions options)
    {
        ProfileOnDisk last = sessions[^1];
        bool inOrder = last.Profile.Modes.Any(mode => Headline.Missing(mode).Count == 0);
        string verdict = inOrder ? Measured : Incomplete,
            sentence = Headline.Sentence(last.Profile);
        if (sessions.Count > 1)
        {
            AnswerWords drift = DriftWords.Phrase(DriftComparison.Run(sessions, options, []));
            (verdict, sentence, inOrder) = (drift.Word, drift.Sentence, drift.Verdict is DriftVerdict.Unchanged);
        }
        var line = new FleetCamera(
            last.Profile.Camera.Name,
            last.Profile.Camera.Width,
            last.Profile.Camera.Height,
            sessions.Count,
            sessions[0].DateUtc,
            last.DateUtc,
            verdict,
            sentence,
            last.File
        );
        return (line, inOrder);
    }

    private static string Sentence(FleetCamera[] lines, string[] minded) =>
        lines.Length == 0 ? "No profile could be read here."
        : minded.Length == 0
            ? lines.Length == 1 ? $"{lines[0].Camera} is in order."
                : $"All {QuantityText.Count(lines.Length)} cameras are in order."
        : $"Look at {string.Join(", ", minded)}: "
            + (minded.Length == 1 ? "its verdict says why." : "their verdicts say why.");

    private static string Word(string verdict) => verdict.Replace('-', ' ');

    private static string Day(DateTimeOffset date) =>
        date.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

/// <summary>Fields that only <c>fleet</c> adds to the JSON document.</summary>
internal sealed record FleetFields(IReadOnlyList<FleetCamera> Cameras, IReadOnlyList<RejectedFile> Refused);

/// <summary>A camera of an archive.</summary>
internal sealed record FleetCamera(
    string Camera,
    int Width,
    int Height,
    int Sessions,
    DateTimeOffset FirstUtc,
    DateTimeOffset LastUtc,
    string Verdict,
    string Sentence,
    string Profile
);
