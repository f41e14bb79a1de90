using SensorProfile.Profiles;

namespace SensorProfile.Cli.Replies;

/// <summary>The answer of <c>demo</c>: the simulated camera, two decisions, and what to try next.</summary>
internal static class DemoReply
{
    public static Reply Of(CameraProfile profile, string folder, Reply cold, Reply darks)
    {
        Reply camera = ProfileReply.Of("demo", profile, folder);
        string place = Quoted.Of(folder);
        return camera with
        {
            Tables = [ReplyTable.List("For 40 lights of 300 s: how cold should it run, and how far off may their darks be?", [cold.Sentence, darks.Sentence])],
            Lines =
            [
                .. camera.Lines,
                "",
                "Try next:",
                $"  sensorprofile survey {place}/frames",
                $"  sensorprofile setpoint {place}/profile.json --exposure 300 --sky 2 --ambient 15 --max-delta 35",
                $"  sensorprofile darks plan {place}/profile.json --exposure 300 --lights 40",
            ],
            Fields = [.. camera.Fields, JsonNodes.Field("setpoint", Summary(cold)), JsonNodes.Field("darksMatch", Summary(darks))],
        };
    }

    private static object Summary(Reply reply) => new { reply.Sentence, reply.Verdict, Quantities = reply.Quantities.ToDictionary(q => q.Name, q => q.Value) };
}
