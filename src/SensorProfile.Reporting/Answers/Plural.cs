namespace SensorProfile.Reporting.Answers;

/// <summary>Counted nouns.</summary>
internal static class Plural
{
    public static string Of(long count, string noun) =>
        FormattableString.Invariant($"{count} {noun}{(count == 1 ? "" : "s")}");
}
