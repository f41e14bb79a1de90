using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Printing;

/// <summary>The answer of <c>demo</c>: the simulated camera, two decisions, and what to try next.</summary>
internal static class DemoDocument
{
    public static AnswerShape Shape { get; } = ProfileDocument.Shape("demo") with { Fields = [typeof(DemoFields)] };

    public static AnswerDocument Compose(
        CameraProfile profile,
        string folder,
        AnswerDocument cold,
        AnswerDocument darks,
        AnswerDocument dithered
    )
    {
        AnswerDocument camera = ProfileDocument.Compose("demo", profile, folder);
        var measured = (ProfileFields)camera.Fields!;
        string place = Quoted.Of(folder);
        return camera with
        {
            Tables =
            [
                AnswerTable.List(
                    "For 40 lights of 300 s under a sky of 0.5 e⁻/px/s: how cold to run it, and how far off may the darks be?",
                    [
                        cold.Sentence,
                        "Without dithering: " + Lower(darks.Sentence),
                        "Dithered, outliers rejected: " + Lower(dithered.Sentence),
                    ]
                ) with
                {
                    Leading = true,
                },
            ],
            Lines =
            [
                .. camera.Lines,
                "",
                "Try next:",
                $"  sensorprofile survey {place}/frames",
                $"  sensorprofile setpoint {place}/profile.json --exposure 300 --sky 0.5 --ambient 15 --max-delta 35",
                $"  sensorprofile darks plan {place}/profile.json --exposure 300 --lights 40",
                $"  sensorprofile simulate {place}/uncooled-camera.json --out fell-24c-frames",
                "  sensorprofile characterise fell-24c-frames --names-say --out fell-24c",
            ],
            Fields = new DemoFields(
                measured.Folder,
                measured.Camera,
                measured.Modes,
                measured.Rejected,
                Summary(cold),
                Summary(darks),
                Summary(dithered)
            ),
        };
    }

    private static string Lower(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..];

    private static AnswerSummary Summary(AnswerDocument reply) =>
        new(reply.Sentence, reply.Verdict, reply.Quantities.ToDictionary(q => q.Name, q => q.Value));
}

/// <summary>Fields that only <c>demo</c> adds to the JSON document: the camera's numbers and three answers.</summary>
internal sealed record DemoFields(
    string Folder,
    CameraInfo Camera,
    IReadOnlyList<ProfileMember> Modes,
    IReadOnlyList<RejectedFile> Rejected,
    AnswerSummary Setpoint,
    AnswerSummary DarksMatch,
    AnswerSummary DarksMatchDithered
);

/// <summary>An answer in short.</summary>
internal sealed record AnswerSummary(
    string Sentence,
    string Verdict,
    IReadOnlyDictionary<string, Measurement?> Quantities
);
