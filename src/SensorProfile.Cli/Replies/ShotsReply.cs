using SensorProfile.Decisions;

namespace SensorProfile.Cli.Replies;

/// <summary>The answer of <c>shots</c>.</summary>
internal static class ShotsReply
{
    public static Reply Of(ShotListAnswer answer, string? csv) =>
        DecisionReply.Of("shots", answer, JsonNodes.Field("shots", answer.Shots), JsonNodes.Field("additions", answer.Additions)) with
        {
            Tables = [Shots(answer), Additions(answer)],
            Lines = csv is null ? [] : [$"The list as a table: {csv}"],
        };

    private static ReplyTable Shots(ShotListAnswer answer) => new(
        "", [">step", "kind", ">frames", ">exposure", ">sensor", ">level", ">time", "for"],
        [.. answer.Shots.Select((s, i) => (IReadOnlyList<string>)
        [
            QuantityText.Count(i + 1), s.Kind, QuantityText.Count(s.Frames), s.Exposure is { } seconds ? QuantityText.Number(seconds) + " s" : "",
            s.Temperature is { } celsius ? QuantityText.Temperature(celsius) : "", s.LevelPercent is { } level ? QuantityText.Number(level, 3) + " %" : "",
            Duration(s.Seconds), s.Reason,
        ])]);

    private static ReplyTable Additions(ShotListAnswer answer) => new(
        "What more frames would bring, most useful first", ["frames", "quantity", ">uncertainty shrinks by", ">time"],
        [.. answer.Additions.Select(a => (IReadOnlyList<string>)[a.What, Labels.Of(a.Quantity), Percent(a.Reduction), Duration(a.Seconds)])]);

    private static string Percent(double share) => FormattableString.Invariant($"{share:0 %}");

    private static string Duration(double seconds) => TimeSpan.FromSeconds(seconds) is var time && time.TotalMinutes < 1
        ? FormattableString.Invariant($"{seconds:0} s")
        : time.TotalHours < 1 ? FormattableString.Invariant($"{time.TotalMinutes:0} min") : FormattableString.Invariant($"{(int)time.TotalHours} h {time.Minutes:00} min");
}
