using SensorProfile.Pixels.Sums;

namespace SensorProfile.Screening;

/// <summary>Adds up the code histograms of flats, channel by channel; thread-safe.</summary>
internal sealed class FlatCodes(int channels)
{
    private const int AllCodes = 1 << 16;
    private readonly long[][] counts = [.. Enumerable.Range(0, channels).Select(_ => new long[AllCodes])];
    private readonly Lock gate = new();
    private bool any;

    /// <summary>Adds a flat.</summary>
    public void Add(FrameStatistics flat)
    {
        lock (gate)
        {
            any = true;
            for (int channel = 0; channel < counts.Length; channel++)
            {
                IntegerHistogram codes = flat.Channels[channel].Codes;
                long[] sums = counts[channel];
                for (int code = codes.Minimum, last = codes.Maximum; code <= last; code++)
                    sums[code] += codes[code];
            }
        }
    }

    /// <summary>The sums; empty without flats.</summary>
    public IReadOnlyList<IntegerHistogram> Histograms() =>
        any ? [.. counts.Select(c => new IntegerHistogram(0, c))] : [];
}
