namespace SensorProfile.Cli.Terminal;

/// <summary>The stage that lengthy work is in: when it began, and how many bytes had been read by then.</summary>
internal sealed class Stage(string name, TimeProvider clock, long bytesBefore)
{
    private readonly long started = clock.GetTimestamp();

    public string Name => name;

    public TimeSpan Elapsed => clock.GetElapsedTime(started);

    /// <summary>"212 MB/s"; empty until bytes are counted.</summary>
    public string Speed(long bytes) =>
        bytes > bytesBefore && Elapsed > TimeSpan.Zero
            ? FormattableString.Invariant($"{(bytes - bytesBefore) / 1e6 / Elapsed.TotalSeconds:0} MB/s")
            : "";

    /// <summary>Time left at the speed so far; empty until there is something to go by.</summary>
    public string Left(int done, int total)
    {
        TimeSpan elapsed = Elapsed;
        if (done < 1 || total <= done || elapsed < TimeSpan.FromSeconds(1))
            return "";
        double seconds = elapsed.TotalSeconds * (total - done) / done;
        return seconds < 90
            ? FormattableString.Invariant($"{seconds:0} s left")
            : FormattableString.Invariant($"{seconds / 60:0} min left");
    }
}
