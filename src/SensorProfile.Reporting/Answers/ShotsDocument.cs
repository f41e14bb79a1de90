using SensorProfile.Decisions.Shots;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Answers;

/// <summary>The answer of <c>shots</c>.</summary>
internal static class ShotsDocument
{
    private const int Shown = 8;

    public static AnswerShape Shape { get; } = new("shots", [EnumWord.Of(Verdict.Answered)], typeof(ShotsFields));

    public static AnswerDocument Compose(ShotListAnswer answer, string? csv = null) =>
        DecisionDocument.Compose(
            "shots",
            answer,
            ShotWords.Phrase(answer),
            new ShotsFields([.. answer.Shots.Select(Member)], [.. answer.Additions.Select(Member)], answer.Expected)
        ) with
        {
            RulesOfThumb = ShotWords.RulesOfThumb,
            Tables = [Shots(answer), Expected(answer), Additions(answer)],
            Lines = csv is null ? [] : [$"The list as a table: {csv}"],
        };

    private static ShotMember Member(PlannedShot shot) =>
        new(
            shot.Kind,
            shot.Exposure,
            shot.Temperature,
            shot.LevelPercent,
            shot.Frames,
            shot.Seconds,
            ShotWords.Purpose(shot)
        );

    private static AdditionMember Member(ShotAddition addition) =>
        new(
            ShotWords.Frames(addition.What),
            addition.Quantity,
            addition.Reduction,
            addition.Seconds,
            addition.Before,
            addition.After,
            addition.Unit
        );

    private static AnswerTable Shots(ShotListAnswer answer) =>
        new(
            "",
            [">step", "kind", ">frames", ">exposure", ">sensor", ">level", ">time", "for"],
            [
                .. answer.Shots.Select(
                    (s, i) =>
                        (IReadOnlyList<string>)
                            [
                                QuantityText.Count(i + 1),
                                EnumWord.Of(s.Kind),
                                QuantityText.Count(s.Frames),
                                s.Exposure is { } seconds ? QuantityText.Number(seconds) + " s" : "",
                                s.Temperature is { } celsius ? QuantityText.Temperature(celsius) : "",
                                s.LevelPercent is { } level ? QuantityText.Number(level, 3) + " %" : "",
                                Duration(s.Seconds),
                                ShotWords.Purpose(s),
                            ]
                ),
            ]
        );

    private static AnswerTable Expected(ShotListAnswer answer) =>
        new(
            "Uncertainties to expect from a typical camera",
            ["quantity", ">now", answer.Shots.Count > 0 ? ">with these frames" : ""],
            [
                .. answer.Expected.Select(e =>
                    (IReadOnlyList<string>)
                        [
                            QuantityLabels.Find(e.Quantity)
                                + (e.Quantity == QuantityNames.ReadNoise ? " of one pixel" : ""),
                            answer.Shots.Count > 0 && answer.Expected.All(x => x.Now is null)
                                ? ""
                                : Cell(e.Now, e.Unit),
                            answer.Shots.Count > 0 ? Cell(e.WithShots, e.Unit) : "",
                        ]
                ),
            ]
        );

    /// <summary>
    /// One row per addition with all its gains; additions with the same gains at other temperatures share a row.
    /// </summary>
    private static AnswerTable Additions(ShotListAnswer answer) =>
        new(
            "What more frames would bring, most useful first",
            ["frames", ">time", "uncertainty"],
            [
                .. answer
                    .Additions.GroupBy(a => a.What)
                    .Select(g =>
                        (
                            What: g.Key,
                            Time: Duration(g.First().Seconds),
                            Brings: string.Join(
                                "; ",
                                g.Select(a =>
                                    $"{QuantityLabels.Find(a.Quantity)} {Cell(a.Before, a.Unit)} → {Cell(a.After, a.Unit)}"
                                )
                            )
                        )
                    )
                    .GroupBy(row => (row.Time, row.Brings))
                    .Take(Shown)
                    .Select(g =>
                        (IReadOnlyList<string>)[OneOf([.. g.Select(row => row.What)]), g.Key.Time, g.Key.Brings]
                    ),
            ]
        );

    /// <summary>"4 darks of 300 s at −20 °C, or at 5 °C".</summary>
    private static string OneOf(AddedFrames[] additions) =>
        additions.Length == 1
            ? ShotWords.Frames(additions[0])
            : $"{ShotWords.Frames(additions[0])}{(additions.Length > 2 ? ", " : "")}{string.Join(", ", additions[1..^1].Select(Place))} "
                + $"or {Place(additions[^1])}";

    private static string Place(AddedFrames added) =>
        added.Temperature is { } celsius ? Plain.Celsius(celsius) : ShotWords.Frames(added);

    private static string Cell(double? uncertainty, string unit) =>
        uncertainty is { } value ? $"±{QuantityText.Number(value, 2)} {QuantityText.Unit(unit)}" : "not measurable";

    private static string Duration(double seconds) =>
        TimeSpan.FromSeconds(seconds) is var time && time.TotalMinutes < 1
            ? FormattableString.Invariant($"{seconds:0} s")
        : time.TotalHours < 1 ? FormattableString.Invariant($"{time.TotalMinutes:0} min")
        : FormattableString.Invariant($"{(int)time.TotalHours} h {time.Minutes:00} min");
}

/// <summary>Fields that only <c>shots</c> adds to the JSON document.</summary>
internal sealed record ShotsFields(
    IReadOnlyList<ShotMember> Shots,
    IReadOnlyList<AdditionMember> Additions,
    IReadOnlyList<ShotExpectation> Expected
);

/// <summary>Frames to take.</summary>
internal sealed record ShotMember(
    FrameKind Kind,
    double? Exposure,
    double? Temperature,
    double? LevelPercent,
    int Frames,
    double Seconds,
    string Reason
);

/// <summary>What more frames would bring.</summary>
internal sealed record AdditionMember(
    string What,
    string Quantity,
    double Reduction,
    double Seconds,
    double? Before,
    double? After,
    string Unit
);
