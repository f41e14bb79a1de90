using System.Runtime.ExceptionServices;

namespace SensorProfile.Fuzz.Pixels;

/// <summary>Where a fault of the program came from: commands keep their stack traces to themselves.</summary>
internal static class FirstThrown
{
    private static Exception? last;

    static FirstThrown() => AppDomain.CurrentDomain.FirstChanceException += Note;

    public static void Forget() => last = null;

    /// <summary>Type and place of the last exception that no command expects; null for none.</summary>
    public static string? Place() =>
        last is null
            ? null
            : $"{last.GetType().Name}: {last.Message.Split('\n')[0]} | "
                + string.Join(
                    " < ",
                    (last.StackTrace ?? "")
                        .Split('\n')
                        .Where(line => line.Contains("SensorProfile", StringComparison.Ordinal))
                        .Select(line =>
                            line.Trim().Split('(')[0].Replace("at SensorProfile.", "", StringComparison.Ordinal)
                        )
                        .Take(3)
                );

    private static void Note(object? sender, FirstChanceExceptionEventArgs thrown)
    {
        if (
            thrown.Exception
            is not (IOException or UnauthorizedAccessException or OperationCanceledException or AggregateException)
        )
            last = thrown.Exception;
    }
}
