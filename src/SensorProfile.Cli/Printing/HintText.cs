using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Printing;

/// <summary>The hints of an answer, expressed as command-line options.</summary>
internal static class HintText
{
    /// <summary>"To make it yours: --sky E or --lights PATH; --ambient C."</summary>
    public static string Sentence(IEnumerable<AnswerHint> hints) =>
        $"To make it yours: {string.Join("; ", hints.Select(Option))}.";

    /// <summary>One point for each hint, with the meaning of its option.</summary>
    public static IEnumerable<string> Each(IEnumerable<AnswerHint> hints) =>
        hints.Select(hint => $"{Option(hint)}: {Meaning(hint)}.");

    private static string Option(AnswerHint hint) =>
        hint switch
        {
            AnswerHint.GiveSky => "--sky E or --lights PATH",
            AnswerHint.GiveAmbient => "--ambient C",
            AnswerHint.GiveCoolerReach => "--max-delta C or --uncooled",
            _ => "--self-heating C",
        };

    private static string Meaning(AnswerHint hint) =>
        hint switch
        {
            AnswerHint.GiveSky => "your own sky, as a number or measured on your lights; --three-skies compares three",
            AnswerHint.GiveAmbient => "the air of your nights",
            AnswerHint.GiveCoolerReach => "how far below the air the cooler reaches, or that there is none",
            _ => "how much warmer than the air the sensor runs",
        };
}
