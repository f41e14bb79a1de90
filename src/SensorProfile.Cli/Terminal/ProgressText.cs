namespace SensorProfile.Cli.Terminal;

/// <summary>Words for how fast and how long.</summary>
internal static class ProgressText
{
    public static string Speed(long bytes, TimeSpan elapsed) =>
        elapsed > TimeSpan.Zero ? FormattableString.Invariant($"{bytes / 1e6 / elapsed.TotalSeconds:0} MB/s") : "";

    /// <summary>Time left at the speed so far; nothing until there is something to go by.</summary>
    public static string Left(int done, int total, TimeSpan elapsed)
    {
        if (done < 1 || total <= done || elapsed < TimeSpan.FromSeconds(1)) return "";
        double seconds = elapsed.TotalSeconds * (total - done) / done;
        return seconds < 90 ? FormattableString.Invariant($"{seconds:0} s left") : FormattableString.Invariant($"{seconds / 60:0} min left");
    }
}
