using SensorProfile.Decisions;

namespace SensorProfile.Cli.Replies;

/// <summary>The answer of <c>setpoint</c>.</summary>
internal static class SetpointReply
{
    private const double CurveStepShown = 5;

    public static Reply Of(SetpointAnswer answer)
    {
        SetpointAnswer[] all = [answer, .. answer.OtherSkies];
        Reply reply = DecisionReply.Of(
            "setpoint", answer,
            JsonNodes.Field("sky", answer.Sky),
            JsonNodes.Field("skies", all.Select(a => SkyFields.Member(a.Sky, a))),
            JsonNodes.Field("curve", answer.Curve),
            JsonNodes.Field("ambient", answer.Ambient));
        return reply with
        {
            Tables =
            [
                .. all.Length > 1 ? [SkyFields.SideBySide([.. all.Select(a => (a.Sky, (Answer)a))],
                    [("setpoint", "run at"), ("setpointTypical", "typical pixel"), ("setpoint99", "99 % of pixels")], "cannot tell")] : Array.Empty<ReplyTable>(),
                Curve(answer),
                Ambient(answer),
                SkyFields.Assumptions(all.Select(a => a.Sky)),
            ],
        };
    }

    private static ReplyTable Curve(SetpointAnswer answer) => new(
        $"Noise that dark current adds to one light ({answer.Sky.Name})", [">sensor", ">typical pixel", ">95 %", ">pixel at 99 %", ""],
        [.. answer.Curve.Where(p => p.Temperature % CurveStepShown == 0).Select(p => (IReadOnlyList<string>)
        [
            QuantityText.Temperature(p.Temperature), Percent(p.ExtraTypical), p is { Low: { } low, High: { } high } ? $"{Percent(low)} … {Percent(high)}" : "",
            p.ExtraAtShare is { } extra ? Percent(extra) : "", p.Extrapolated ? "outside the measured range" : "",
        ])]);

    private static ReplyTable Ambient(SetpointAnswer answer) => new(
        "What each ambient temperature allows", ["night", ">ambient", ">sensor", ">typical pixel", ">pixel at 99 %", ""],
        [.. answer.Ambient.Select(a => (IReadOnlyList<string>)
        [
            a.Label, QuantityText.Temperature(a.Ambient), QuantityText.Temperature(a.Sensor), Percent(a.ExtraTypical), a.ExtraAtShare is { } extra ? Percent(extra) : "",
            (a.WithinLoss ? "within your loss" : "beyond your loss") + (a.Extrapolated ? ", outside the measured range" : ""),
        ])]);

    private static string Percent(double percent) => QuantityText.Number(percent, 2) + " %";
}
