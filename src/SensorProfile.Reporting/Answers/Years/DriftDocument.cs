using System.Globalization;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Reporting.Answers.Years;

/// <summary>The answer of <c>drift</c>.</summary>
internal static class DriftDocument
{
    public static AnswerShape Shape { get; } = AnswerShape.Of<DriftVerdict>("drift", typeof(DriftFields));

    public static AnswerDocument Compose(DriftAnswer answer) =>
        DecisionDocument.Compose(
            "drift",
            answer,
            DriftWords.Phrase(answer),
            new DriftFields(
                RetakeWords.Phrase(answer),
                [.. answer.Retake.Select(RetakeWords.Word)],
                answer.Camera,
                answer.Compared,
                answer.Dates,
                answer.Refused,
                answer.Changes,
                answer.HotPixels is { } hot ? Summary(hot) : null,
                [.. answer.HotPixelModes.Select(Summary)],
                answer.Trends,
                [.. answer.Probes.Select(Member)],
                [.. answer.Library.Select(Member)]
            )
        ) with
        {
            Findings = [.. answer.Findings, .. DriftWords.Findings(answer)],
            RulesOfThumb = DriftWords.RulesOfThumb(answer),
            Tables = [.. Tables(answer)],
            CannotTell = !answer.Answered,
        };

    /// <summary>Leaves out the single pixels: they are in hot-pixel-changes.csv.</summary>
    private static HotPixelDrift Summary(HotPixelDrift all) => all with { Pixels = [], Unchanged = [] };

    private static ProbeMember Member(ProbeOrAgeing probe) =>
        new(
            probe.Mode,
            probe.Verdict,
            probe.StepOfTypical,
            probe.StepOfHotPixels,
            probe.HotPixels,
            ProbeWords.Phrase(probe)
        );

    private static LibraryMember Member(LibraryForecast forecast) =>
        new(
            forecast.Mode,
            forecast.DateUtc,
            forecast.EarliestUtc,
            forecast.LatestUtc,
            forecast.Cause,
            LibraryWords.Phrase(forecast)
        );

    private static IEnumerable<AnswerTable> Tables(DriftAnswer answer)
    {
        if (RetakeWords.Phrase(answer) is { Length: > 0 } advice)
            yield return AnswerTable.List("What to do", [advice]);
        if (answer.Changes.Count > 0)
            yield return new AnswerTable(
                "First against last",
                ["quantity", ">then", ">now", ">z", ">p (all)", "changed"],
                [
                    .. answer.Changes.Select(c =>
                        (IReadOnlyList<string>)
                            [
                                Words(c.Quantity) + Mode(answer, c.Mode),
                                QuantityText.Of(c.From),
                                QuantityText.Of(c.To),
                                Fixed(c.Z, "0.0"),
                                c.AdjustedP < 0.0005 ? "< 0.001" : Fixed(c.AdjustedP, "0.###"),
                                c.Changed ? "yes" : "no",
                            ]
                    ),
                ]
            );
        if (answer.Trends.Count > 0)
            yield return new AnswerTable(
                "Per year",
                ["quantity", ">slope", ">z", "changed"],
                [
                    .. answer.Trends.Select(t =>
                        (IReadOnlyList<string>)
                            [
                                Words(t.Quantity) + Mode(answer, t.Mode),
                                QuantityText.Of(t.PerYear),
                                Fixed(t.Z, "0.0"),
                                t.Changed ? "yes" : "no",
                            ]
                    ),
                ]
            );
        if (answer.HotPixelModes.Count > 0)
            yield return new AnswerTable(
                "Hot pixels",
                ["settings", ">kept", ">new", ">healed", ">brighter", ">fainter", ">new per year and million"],
                [
                    .. answer.HotPixelModes.Select(h =>
                        (IReadOnlyList<string>)
                            [
                                h.Mode,
                                QuantityText.Count(h.Kept),
                                QuantityText.Count(h.New),
                                QuantityText.Count(h.Healed),
                                QuantityText.Count(h.Brighter),
                                QuantityText.Count(h.Fainter),
                                h.NewPerYear is { } n
                                    ? QuantityText.Number(n.Value, n.StandardUncertainty)
                                    : QuantityText.NotMeasured,
                            ]
                    ),
                ]
            );
        if (answer.Library.Count > 0)
            yield return AnswerTable.List("Your dark library", answer.Library.Select(LibraryWords.Phrase));
    }

    /// <summary>The mode behind a quantity, where there are several.</summary>
    private static string Mode(DriftAnswer answer, string mode) =>
        answer.Changes.Select(c => c.Mode).Distinct().Count() > 1 ? $" ({mode})" : "";

    /// <summary>"darkRate" becomes "dark rate"; a comparison of two counts within one year is named after both.</summary>
    private static string Words(string quantity) =>
        quantity switch
        {
            QuantityNames.NewLessHealed => "hot pixels: healed, new",
            QuantityNames.GrowingPatch => "patch: by chance, found",
            _ => Split(quantity),
        };

    private static string Split(string quantity) =>
        string.Concat(
            quantity.Select(
                (c, i) =>
                    char.IsUpper(c)
                    || (char.IsAsciiDigit(c) && !char.IsAsciiDigit(quantity[i - 1]) && quantity[i - 1] != '.')
                        ? " " + char.ToLowerInvariant(c)
                        : c.ToString()
            )
        );

    private static string Fixed(double value, string format) =>
        value.ToString(format, CultureInfo.InvariantCulture).Replace('-', '−');
}

/// <summary>Fields that only <c>drift</c> adds to the JSON document.</summary>
internal sealed record DriftFields(
    string Advice,
    IReadOnlyList<string> Retake,
    string Camera,
    IReadOnlyList<string> Compared,
    IReadOnlyList<DateTimeOffset> Dates,
    IReadOnlyList<RejectedFile> Refused,
    IReadOnlyList<DriftChange> Changes,
    HotPixelDrift? HotPixels,
    IReadOnlyList<HotPixelDrift> HotPixelModes,
    IReadOnlyList<DriftTrend> Trends,
    IReadOnlyList<ProbeMember> Probes,
    IReadOnlyList<LibraryMember> Library
);

/// <summary>Whether the probe moved or the sensor aged.</summary>
internal sealed record ProbeMember(
    string Mode,
    ProbeVerdict Verdict,
    Measurement? StepOfTypical,
    Measurement? StepOfHotPixels,
    int HotPixels,
    string Sentence
);

/// <summary>How long the dark library holds.</summary>
internal sealed record LibraryMember(
    string Mode,
    DateTimeOffset? DateUtc,
    DateTimeOffset? EarliestUtc,
    DateTimeOffset? LatestUtc,
    LibraryLimit? Cause,
    string Sentence
);
