using System.Collections.Concurrent;
using MathNet.Numerics.Distributions;
using SensorProfile.Drift.Archive;

namespace SensorProfile.Tests.Drift;

/// <summary>Dark-rate maps of an invented sensor whose every change is known.</summary>
internal sealed record SyntheticMaps
{
    private static readonly ConcurrentDictionary<SyntheticMaps, (double, double, double, double)[]> Patterns = new();

    public int Width { get; init; } = 320;
    public int Height { get; init; } = 240;
    public double Typical { get; init; } = 0.012;
    public double HotShare { get; init; } = 0.004;
    public double TypicalDoubling { get; init; } = 6.1;
    public double Noise { get; init; } = 0.004; // standard uncertainty of an ordinary pixel's rate, e-/px/s
    public int Sensor { get; init; } = 310;
    public double EdgeGlow { get; init; } // at the first column, falling to 1/e in 12 px

    /// <summary>One year's maps.</summary>
    /// <param name="night">Seed of the measurement noise.</param>
    /// <param name="growth">Factor on ordinary pixels.</param>
    /// <param name="probeCelsius">Die warmer than read by this.</param>
    /// <param name="born">Pixels that turned hot, with their rates.</param>
    /// <param name="healed">Hot pixels (by their number) that healed.</param>
    /// <param name="gain">Error of the session's gain, a factor.</param>
    public MapRates Measure(
        int night,
        double growth = 1,
        double probeCelsius = 0,
        IReadOnlyDictionary<int, double>? born = null,
        int healed = 0,
        double gain = 1
    )
    {
        var noise = new Random(night);
        int n = Width * Height;
        float[] rate = new float[n],
            uncertainty = new float[n],
            doubling = new float[n];
        (double Ordinary, double Draw, double Excess, double Own)[] pixels = Patterns.GetOrAdd(this, Pattern);
        int hotSeen = 0;
        for (int i = 0; i < n; i++)
        {
            (double bornWith, double draw, double excess, double own) = pixels[i];
            double ordinary = bornWith * growth * Math.Pow(2, probeCelsius / TypicalDoubling);
            double hot = draw < HotShare && ++hotSeen > healed ? excess : 0;
            if (born is not null && born.TryGetValue(i, out double fresh))
                hot += fresh;
            double glow = EdgeGlow * Math.Exp(-(i % Width) / 12.0);
            double truth = gain * (ordinary + glow + hot * Math.Pow(2, probeCelsius / own)),
                u = double.Hypot(Noise, Math.Sqrt(truth / 6000));
            (rate[i], uncertainty[i]) = ((float)(truth + u * Normal.Sample(noise, 0, 1)), (float)u);
            doubling[i] = hot > 0 ? (float)(own + 0.1 * Normal.Sample(noise, 0, 1)) : float.NaN;
        }
        return MapRates.Of(Width, Height, -10, rate, uncertainty, doubling);
    }

    /// <summary>What the sensor was born with, pixel by pixel: the same in all its nights.</summary>
    private static (double, double, double, double)[] Pattern(SyntheticMaps sensor)
    {
        var random = new Random(sensor.Sensor);
        var pixels = new (double, double, double, double)[sensor.Width * sensor.Height];
        for (int i = 0; i < pixels.Length; i++)
            pixels[i] = (
                sensor.Typical * Math.Exp(0.25 * Normal.Sample(random, 0, 1)),
                random.NextDouble(),
                0.05 * Math.Pow(400, random.NextDouble()),
                Math.Clamp(6.6 + 0.5 * Normal.Sample(random, 0, 1), 4, 10)
            );
        return pixels;
    }

    /// <summary>Positions of the hot pixels this sensor was born with.</summary>
    public IReadOnlyList<int> BornHot() => [.. Measure(1, 1).Above(Typical + 0.2)];
}
