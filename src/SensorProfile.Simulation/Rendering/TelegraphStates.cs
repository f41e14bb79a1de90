using SensorProfile.Simulation.Randomness;
using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation.Rendering;

/// <summary>
/// State of every telegraph pixel in every frame of a night: one continuous two-state process per pixel, through the
/// pauses.
/// </summary>
internal sealed class TelegraphStates
{
    private const double CyclesToFollow = 500;
    private readonly int _pixels;
    private readonly float[] _highShare;
    private readonly bool[] _highAtEnd;

    /// <summary>Follows all pixels through the night.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="frames">The frames, ordered by time.</param>
    /// <param name="seed">Seed of the night.</param>
    public TelegraphStates(Sensor sensor, IReadOnlyList<SimulatedFrame> frames, ulong seed)
    {
        _pixels = sensor.Telegraph.All.Length;
        _highShare = new float[frames.Count * _pixels];
        _highAtEnd = new bool[frames.Count * _pixels];
        Parallel.For(0, _pixels, pixel =>
            Follow(sensor.Telegraph.All[pixel], pixel, frames, sensor.Dark.ReferenceTemperature, seed)
        );
    }

    /// <summary>Share of the exposure spent in the high state.</summary>
    public double HighShare(int frame, int pixel) => _highShare[frame * _pixels + pixel];

    /// <summary>Whether the pixel is in its high state at read-out.</summary>
    public bool HighAtEnd(int frame, int pixel) => _highAtEnd[frame * _pixels + pixel];

    private void Follow(
        TelegraphPixel pixel,
        int number,
        IReadOnlyList<SimulatedFrame> frames,
        double reference,
        ulong seed
    )
    {
        var random = RandomStream.For(seed, Purpose.TelegraphStates, pixel.Index);
        bool high = random.NextUniform() < pixel.Duty;
        DateTimeOffset clock = frames.Count > 0 ? frames[0].StartUtc : default;
        TelegraphPixel atReference = pixel;
        foreach (SimulatedFrame frame in frames)
        {
            pixel = atReference.At(frame.DieCelsius, reference);
            high = After((frame.StartUtc - clock).TotalSeconds, pixel, high, ref random);
            double share = high ? 1 : 0;
            if (pixel.Rate > 0 && frame.ExposureSeconds > 0)
            {
                share = Expose(frame.ExposureSeconds, pixel, ref high, ref random);
            }
            else
            {
                high = After(frame.ExposureSeconds, pixel, high, ref random);
            }
            _highShare[frame.Index * _pixels + number] = (float)share;
            _highAtEnd[frame.Index * _pixels + number] = high;
            clock = frame.StartUtc.AddSeconds(frame.ExposureSeconds);
        }
    }

    /// <summary>State after a time t: P(high) = duty + (now − duty)·exp(−t/τ).</summary>
    private static bool After(double seconds, TelegraphPixel pixel, bool high, ref RandomStream random)
    {
        double probability = pixel.Duty + ((high ? 1 : 0) - pixel.Duty) * Math.Exp(-seconds / pixel.Memory);
        return random.NextUniform() < probability;
    }

    /// <summary>
    /// Follows every jump in an exposure; with thousands of jumps the share is drawn as normal with variance 2·duty·(1
    /// − duty)·τ/t.
    /// </summary>
    private static double Expose(double exposure, TelegraphPixel pixel, ref bool high, ref RandomStream random)
    {
        if (exposure > CyclesToFollow * (pixel.DwellHigh + pixel.DwellLow))
        {
            double spread = Math.Sqrt(2 * pixel.Duty * (1 - pixel.Duty) * pixel.Memory / exposure);
            high = After(exposure, pixel, high, ref random);
            return Math.Clamp(pixel.Duty + spread * random.NextNormal(), 0, 1);
        }
        double clock = 0;
        double highSeconds = 0;
        while (true)
        {
            double dwell = random.NextExponential() * (high ? pixel.DwellHigh : pixel.DwellLow);
            double stay = Math.Min(dwell, exposure - clock);
            highSeconds += high ? stay : 0;
            if (clock + dwell >= exposure)
            {
                return highSeconds / exposure;
            }
            clock += dwell;
            high = !high;
        }
    }
}
