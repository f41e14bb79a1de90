using System.Globalization;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Reporting.Answers;

/// <summary>The answer of <c>survey</c>.</summary>
internal static class SurveyDocument
{
    private const string Complete = "complete",
        Lacking = "lacking";

    public static AnswerShape Shape { get; } = new("survey", [Complete, Lacking], typeof(SurveyFields));

    public static AnswerDocument Compose(Inventory inventory, string tableLine)
    {
        IReadOnlyList<MeasurementLack> lacks = MissingMeasurements.Find(inventory);
        return new AnswerDocument
        {
            Command = "survey",
            Sentence = Unlabelled(inventory) ?? Sentence(lacks),
            Reason = $"{Usable(inventory)}{LeftOut(inventory)}{PassedOverText(inventory)}.",
            Verdict = lacks.Count == 0 ? Complete : Lacking,
            Tables = [Sets(inventory), AnswerTable.List("What is still missing", lacks.Select(l => l.Sentence))],
            Lines = tableLine.Length > 0 ? [tableLine] : [],
            Fields = new SurveyFields(
                [
                    .. inventory.Sets.Select(s => new SurveySet(
                        EnumWord.Of(s.Kind),
                        s.Settings,
                        s.ExposureSeconds,
                        s.TemperatureCelsius,
                        s.Frames.Count,
                        s.Width,
                        s.Height,
                        s.Label,
                        [.. s.Frames.Select(f => f.Name)]
                    )),
                ],
                [
                    .. lacks.Select(l => new SurveyLack(
                        EnumWord.Of(l.Measurement),
                        l.Settings,
                        EnumWord.Of(l.Kind),
                        l.Frames,
                        l.Sentence
                    )),
                ],
                inventory.Rejected,
                inventory.PassedOver
            ),
            Findings = inventory.Findings,
        };
    }

    private static string Sentence(IReadOnlyList<MeasurementLack> lacks)
    {
        if (lacks.Count == 0)
            return "Ready to characterise: these frames serve every measurement.";
        string[] missing = [.. lacks.Select(l => EnumWord.Spaced(l.Measurement)).Distinct()];
        return $"Shoot more before you rely on every number: {string.Join(", ", missing)} still "
            + $"{(missing.Length == 1 ? "lacks" : "lack")} frames.";
    }

    private static string PassedOverText(Inventory inventory) =>
        inventory.PassedOver.Count == 0 ? "" : $"; passed over: {PassedOver.Describe(inventory.PassedOver)}";

    // Frames without a kind serve no measurement: ask what they are before saying what to shoot.
    private static string? Unlabelled(Inventory inventory)
    {
        int unknown = inventory.Frames.Count(f => f.Kind == FrameKind.Unknown);
        return unknown == 0 || 2 * unknown < inventory.Frames.Count
            ? null
            : $"Say what these frames are: {Unsaid(unknown, inventory.Frames.Count)} "
                + "bias, dark or flat. Fill in the column 'kind' of the capture table and survey again with it, or let the "
                + "names of files and folders say it.";
    }

    private static string Unsaid(int unknown, int all) =>
        all == 1
            ? "the only one does not say whether it is"
            : $"{unknown} of {Counted.Nouns(all, "frame")} {(unknown == 1 ? "does not say whether it is" : "do not say whether they are")}";

    private static string Usable(Inventory inventory)
    {
        int unknown = inventory.Frames.Count(f => f.Kind == FrameKind.Unknown);
        string all =
            $"{Counted.Nouns(inventory.Frames.Count, "frame")} in {Counted.Nouns(inventory.Sets.Count, "set")}";
        return unknown == 0 ? $"{all} can be used"
            : unknown == inventory.Frames.Count ? $"{all}: none can be used until its kind is known"
            : $"{all} can be used, except {unknown} whose kind is not known";
    }

    private static string LeftOut(Inventory inventory) =>
        inventory.Rejected.Count == 0 ? "" : $", {Counted.Nouns(inventory.Rejected.Count, "file")} left out";

    private static AnswerTable Sets(Inventory inventory)
    {
        // sets without a temperature are told apart by their nights
        bool severalNights = inventory
            .Sets.Where(s => s.TemperatureCelsius is null)
            .GroupBy(s => (s.Kind, s.ExposureSeconds, s.Settings, s.Width, s.Height, s.Label))
            .Any(same => same.Count() > 1);
        return new(
            "",
            ["kind", ">frames", ">exposure", ">sensor", "settings"],
            [
                .. inventory.Sets.Select(s =>
                    (IReadOnlyList<string>)
                        [
                            EnumWord.Spaced(s.Kind),
                            QuantityText.Count(s.Frames.Count),
                            s.ExposureSeconds is { } seconds ? QuantityText.Number(seconds) + " s" : "unknown",
                            s.TemperatureCelsius is { } celsius ? QuantityText.Temperature(celsius)
                            : severalNights && s.Frames.Min(f => f.StartUtc) is { } start ? NightOf(start)
                            : "unknown",
                            SettingsText.Of(s.Settings) + (s.Label is null ? "" : $" ({s.Label})"),
                        ]
                ),
            ]
        );
    }

    private static string NightOf(DateTimeOffset start) =>
        start.ToString("'unknown, 'yyyy-MM-dd HH:mm' UTC'", CultureInfo.InvariantCulture);
}

/// <summary>Fields that only <c>survey</c> adds to the JSON document.</summary>
internal sealed record SurveyFields(
    IReadOnlyList<SurveySet> Sets,
    IReadOnlyList<SurveyLack> Lacks,
    IReadOnlyList<RejectedFile> Rejected,
    IReadOnlyList<PassedOver> PassedOver
);

/// <summary>Frames that belong together.</summary>
internal sealed record SurveySet(
    string Kind,
    ModeSettings Settings,
    double? Exposure,
    double? Temperature,
    int Frames,
    int Width,
    int Height,
    string? Label,
    IReadOnlyList<string> Files
);

/// <summary>A measurement that lacks frames.</summary>
internal sealed record SurveyLack(string Measurement, ModeSettings? Settings, string Kind, int Frames, string Sentence);
