using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Defaults;

/// <summary>What a command took from the user's setup.</summary>
/// <param name="File">The setup; null when there is none.</param>
/// <param name="Options">The options that it supplied, in order, each with its words.</param>
internal sealed record RememberedOptions(string? File, IReadOnlyList<KeyValuePair<string, string>> Options)
{
    public static readonly RememberedOptions Nothing = new(null, []);

    private static readonly Dictionary<string, string[]> OptionsOf = new()
    {
        ["sky"] = ["--sky", "--sky-brightness", "--lights"],
        ["acceptedLoss"] = ["--loss"],
        ["ditherPositions"] = ["--dithers"],
        ["rejection"] = ["--rejection"],
        ["smoothScale"] = ["--smooth"],
        ["coolerReach"] = ["--max-delta"],
        ["exposure"] = ["--exposure"],
        ["lights"] = ["--lights"],
    };

    /// <summary>The answer with a line that says what the setup supplied, and with the source of every assumption.</summary>
    public AnswerDocument Mark(AnswerDocument reply)
    {
        if (File is null || Options.Count == 0)
            return reply;
        return reply with
        {
            Assumptions = [.. reply.Assumptions.Select(Marked)],
            Lines =
            [
                $"From your setup ({File}): {string.Join(", ", Options.Select(o => o.Value).Where(w => w.Length > 0))}.",
                .. reply.Lines,
            ],
        };
    }

    private AnswerAssumption Marked(AnswerAssumption assumption) =>
        assumption.Source is AssumptionSource.Option or AssumptionSource.Default
        && OptionsOf.TryGetValue(assumption.Name, out string[]? from)
        && Options.Any(o => from.Contains(o.Key))
            ? assumption with
            {
                Source = AssumptionSource.Setup,
            }
            : assumption;
}
