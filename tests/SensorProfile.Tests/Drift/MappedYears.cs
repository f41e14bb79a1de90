using MathNet.Numerics.Distributions;
using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.OverTheYears;

namespace SensorProfile.Tests.Drift;

/// <summary>
/// Sessions of the Tarn-9M with maps in memory. Each session's gain is off by 0.4 % and its temperature by 0.05 °C, as
/// its profile states; both move the whole map.
/// </summary>
internal sealed class MappedYears(int seed)
{
    // as in the maps of the demo
    private static readonly SyntheticMaps Sensor = new()
    {
        Width = 224,
        Height = 160,
        Noise = 0.0014,
    };
    private readonly Random random = new(52000 + seed);
    private readonly List<(ProfileOnDisk Profile, MapRates Maps)> sessions = [];

    /// <summary>Adds a session.</summary>
    /// <param name="year">Of its October.</param>
    /// <param name="growth">Factor on the ordinary pixels since the first.</param>
    /// <param name="probe">Die warmer than read, °C.</param>
    /// <param name="born">Pixels that turned hot.</param>
    /// <param name="tarn">Everything else of that year; its dark rate is set here.</param>
    public MappedYears Add(int year, double growth = 1, double probe = 0, int born = 0, TarnYears? tarn = null)
    {
        double gain = 1 + 0.004 * Normal.Sample(random, 0, 1),
            warmer = probe + 0.05 * Normal.Sample(random, 0, 1);
        Dictionary<int, double> fresh = Enumerable
            .Range(0, born)
            .ToDictionary(
                k => (4111 + 7919 * k) % (Sensor.Width * Sensor.Height),
                k => 0.1 * Math.Pow(100, k / (double)Math.Max(1, born))
            );
        MapRates maps = Sensor.Measure(random.Next(), growth, warmer, fresh, gain: gain);
        double rate = 0.012 * growth * Math.Pow(2, probe / Sensor.TypicalDoubling);
        TarnYears camera = (tarn ?? new TarnYears()) with
        {
            DarkRate = rate,
            Width = Sensor.Width,
            Height = Sensor.Height,
        };
        sessions.Add((camera.Measure(year, random), maps));
        return this;
    }

    public DriftAnswer Compare() =>
        DriftComparison.Run(
            [.. sessions.Select(s => s.Profile)],
            (profile, _) => (sessions.First(s => s.Profile == profile).Maps, null),
            new DriftOptions { Stack = null, Layouts = 99 }
        );
}
