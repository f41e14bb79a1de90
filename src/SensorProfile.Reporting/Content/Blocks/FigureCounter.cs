namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>Counts the figures of a report.</summary>
internal sealed class FigureCounter
{
    private int _last;

    /// <summary>The next number.</summary>
    public int Next() => ++_last;
}
