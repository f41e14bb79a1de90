using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Printing;

/// <summary>The answer of <c>demo</c>: the simulated camera, two decisions, and what to try next.</summary>
internal static class DemoDocument
{
    public static AnswerDocument Of(
        CameraProfile profile,
        string folder,
        AnswerDocument cold,
        AnswerDocument darks,
        AnswerDocument dithered
    )
    {
        AnswerDocument camera = ProfileDocument.Of("demo", profile, folder);
        string place = Quoted.Of(folder);
        return camera with
        {
            Tables =
            [
                AnswerTable.List(
                    "For 40 lights of 300 s under a sky of 0.5 e⁻/px/s: how cold, and how far off may the darks be?",
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
            Fields =
            [
                .. camera.Fields,
                JsonNodes.Field("setpoint", Summary(cold)),
                JsonNodes.Field("darksMatch", Summary(darks)),
                JsonNodes.Field("darksMatchDithered", Summary(dithered)),
            ],
        };
    }

    private static string Lower(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..];

    private static object Summary(AnswerDocument reply) =>
        new
        {
            reply.Sentence,
            reply.Verdict,
            Quantities = reply.Quantities.ToDictionary(q => q.Name, q => q.Value),
        };
}
