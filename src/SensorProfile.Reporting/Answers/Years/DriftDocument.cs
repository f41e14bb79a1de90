using System.Globalization;
using SensorProfile.Drift.OverTheYears;

namespace SensorProfile.Reporting.Answers.Years;

/// <summary>The answer of <c>drift</c>.</summary>
internal static class DriftDocument
{
    public static AnswerDocument Of(DriftAnswer answer) =>
        DecisionDocument.Of(
            "drift",
            answer,
            DriftWords.Of(answer),
            JsonNodes.Field("advice", RetakeWords.Of(answer)),
            JsonNodes.Field("retake", answer.Retake.Select(RetakeWords.Word)),
            JsonNodes.Field("camera", answer.Camera),
            JsonNodes.Field("compared", answer.Compared),
            JsonNodes.Field("dates", answer.Dates),
            JsonNodes.Field("refused", answer.Refused),
            JsonNodes.Field("changes", answer.Changes),
            // the single pixels stand in hot-pixel-changes.csv
            JsonNodes.Field("hotPixels", answer.HotPixels is { } hot ? hot with { Pixels = [], Unchanged = [] } : null),
            JsonNodes.Field("hotPixelModes", answer.HotPixelModes.Select(h => h with { Pixels = [], Unchanged = [] })),
            JsonNodes.Field("trends", answer.Trends),
            JsonNodes.Field("probes", answer.Probes.Select(Member)),
            JsonNodes.Field("library", answer.Library.Select(Member))
        ) with
        {
            Findings = [.. answer.Findings, .. DriftWords.Findings(answer)],
            RulesOfThumb = DriftWords.RulesOfThumb(answer),
            Tables = [.. Tables(answer)],
            CannotTell = !answer.Answered,
        };

    private static object Member(ProbeOrAgeing probe) =>
        new
        {
            probe.Mode,
            probe.Verdict,
            probe.StepOfTypical,
            probe.StepOfHotPixels,
            probe.HotPixels,
            Sentence = ProbeWords.Of(probe),
        };

    private static object Member(LibraryForecast forecast) =>
        new
        {
            forecast.Mode,
            forecast.DateUtc,
            forecast.EarliestUtc,
            forecast.LatestUtc,
            forecast.Cause,
            Sentence = LibraryWords.Of(forecast),
        };

    private static IEnumerable<AnswerTable> Tables(DriftAnswer answer)
    {
        if (RetakeWords.Of(answer) is { Length: > 0 } advice)
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
            yield return AnswerTable.List("Your dark library", answer.Library.Select(LibraryWords.Of));
    }

    /// <summary>The mode behind a quantity, where there are several.</summary>
    private static string Mode(DriftAnswer answer, string mode) =>
        answer.Changes.Select(c => c.Mode).Distinct().Count() > 1 ? $" ({mode})" : "";

    /// <summary>"darkRate" becomes "dark rate"; what compares two counts of one year is named by both.</summary>
    private static string Words(string quantity) =>
        quantity switch
        {
            "newLessHealed" => "hot pixels: healed, new",
            "growingPatch" => "patch: by chance, found",
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
