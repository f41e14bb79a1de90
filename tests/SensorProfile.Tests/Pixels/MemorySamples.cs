using SensorProfile.Pixels.Strips;

namespace SensorProfile.Tests.Pixels;

/// <summary>A frame in memory.</summary>
internal sealed class MemorySamples(string name, int width, int height, ushort[] samples) : IFrameSamples
{
    public string Name => name;

    public int Width => width;

    public int Height => height;

    public ushort[] All => samples;

    public void ReadRows(int firstRow, Span<ushort> destination) =>
        samples.AsSpan(firstRow * width, destination.Length).CopyTo(destination);

    /// <summary>
    /// A frame from a function of row and column, rounded to the nearest code and held within 0 … 65535.
    /// </summary>
    public static MemorySamples Of(string name, int width, int height, Func<int, int, double> value)
    {
        var samples = new ushort[width * height];
        for (int i = 0; i < samples.Length; i++)
            samples[i] = (ushort)Math.Clamp(Math.Round(value(i / width, i % width)), 0, ushort.MaxValue);
        return new MemorySamples(name, width, height, samples);
    }
}
