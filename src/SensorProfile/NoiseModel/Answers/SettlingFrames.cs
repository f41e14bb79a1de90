using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Answers;

/// <summary>Frames that would settle what cannot be told.</summary>
/// <param name="Kind">bias, dark, flat or light.</param>
/// <param name="Exposure">s; null where the light decides or the shortest one is meant.</param>
/// <param name="Temperature">Sensor temperature, °C; null where it does not matter.</param>
/// <param name="Frames">How many more.</param>
/// <param name="Seconds">Clock time with read-out, s.</param>
public sealed record SettlingFrames(string Kind, double? Exposure, double? Temperature, int Frames, double Seconds)
{
    private const double Overhead = 2; // read-out and saving, s
    private const int Named = 3,
        ForDistribution = 8;

    // s: shorter darks show no dark current, however short the lights are
    private const double LeastLongest = 30;

    /// <summary>Darks of one exposure and temperature that are advised, enough to see a hit.</summary>
    internal const int EachDark = 4;

    internal static SettlingFrames Of(string kind, double? exposure, double? celsius, int frames) =>
        new(kind, exposure, celsius, frames, frames * ((exposure ?? (kind == "flat" ? 1 : 0)) + Overhead));

    /// <summary>Darks of one long exposure that show how dark current spreads over the pixels.</summary>
    internal static SettlingFrames OfDistribution(SensorReader reader, double otherwiseSeconds, double? celsius) =>
        Of("dark", reader.LongestExposure > 0 ? reader.LongestExposure : otherwiseSeconds, celsius, ForDistribution);

    /// <summary>
    /// Darks of three exposures at a temperature that the profile does not reach: with them its range does.
    /// </summary>
    internal static IReadOnlyList<SettlingFrames> NewTemperature(double longest, double celsius)
    {
        double most = Math.Max(longest, LeastLongest);
        return
        [
            .. new[] { most / 10, most / 3, most }.Select(t =>
                Of("dark", Math.Round(t, t < 10 ? 1 : 0), Math.Round(celsius), EachDark)
            ),
        ];
    }

    /// <summary>"12 darks of 30, 100 and 300 s at 30 °C and 32 bias frames (30 min)".</summary>
    internal static string Words(IReadOnlyList<SettlingFrames> frames)
    {
        var parts = frames
            .GroupBy(f => f.Kind)
            .Select(kind =>
                kind.Key switch
                {
                    "dark" => Darks([.. kind]),
                    "bias" => $"{Said.Whole(kind.Sum(f => f.Frames))} bias frames",
                    "flat" => $"{Said.Whole(kind.Sum(f => f.Frames) / 2)} flat pairs",
                    _ => $"{Said.Whole(kind.Sum(f => f.Frames))} lights",
                }
            );
        return $"{Joined([.. parts])} ({Said.Duration(frames.Sum(f => f.Seconds))})";
    }

    private static string Darks(SettlingFrames[] darks)
    {
        double[] exposures = [.. darks.Select(d => d.Exposure).OfType<double>().Distinct().Order()],
            temperatures = [.. darks.Select(d => d.Temperature).OfType<double>().Distinct().Order()];
        string of =
            exposures.Length > Named
                ? $"{Said.Number(exposures[0])} s to {Said.Number(exposures[^1])} s"
                : $"{Joined([.. exposures.Select(t => Said.Number(t))])} s";
        string at =
            temperatures.Length > Named
                ? $" at {Said.Whole(temperatures.Length)} temperatures from {Said.Celsius(temperatures[0])} to "
                    + $"{Said.Celsius(temperatures[^1])}"
            : temperatures.Length == 0 ? ""
            : $" at {Joined([.. temperatures.Select(Said.Celsius)])}";
        return $"{Said.Whole(darks.Sum(d => d.Frames))} darks of {of}{at}";
    }

    private static string Joined(string[] parts) =>
        parts.Length < 2 ? string.Concat(parts) : $"{string.Join(", ", parts[..^1])} and {parts[^1]}";
}
