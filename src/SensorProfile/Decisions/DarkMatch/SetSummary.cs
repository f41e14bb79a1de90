using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>What the matching needs of a frame set.</summary>
/// <param name="Set">The frames.</param>
/// <param name="Exposure">s; null when unknown or not above 0.</param>
/// <param name="Temperature">Temperature of the same mean dark current as the set, °C; null when unknown.</param>
/// <param name="Drift">Warmest less coldest frame, °C; null when unknown.</param>
internal sealed record SetSummary(FrameSet Set, double? Exposure, double? Temperature, double? Drift)
{
    internal int Frames => Set.Frames.Count;

    internal ModeSettings Settings => Set.Settings;

    /// <remarks>
    /// Dark current is convex: over temperatures with variance v its mean is that at T̄ + v·ln 2/(2·ΔT₂), to second
    /// order.
    /// </remarks>
    internal static SetSummary Of(FrameSet set, double? doubling)
    {
        double[] known = [.. set.Frames.Select(f => f.TemperatureCelsius).OfType<double>()];
        double? temperature = set.TemperatureCelsius;
        if (known.Length > 1 && temperature is not null && doubling is double d)
        {
            double mean = known.Average();
            temperature = mean + known.Sum(t => (t - mean) * (t - mean)) / known.Length * Math.Log(2) / (2 * d);
        }
        return new SetSummary(
            set,
            set.ExposureSeconds is > 0 ? set.ExposureSeconds : null,
            temperature,
            known.Length > 0 ? known.Max() - known.Min() : null
        );
    }

    internal string Words()
    {
        string kind = Set.Kind == FrameKind.Light ? "light" : "dark";
        return $"{Said.Whole(Frames)} {kind}{(Frames == 1 ? "" : "s")} of "
            + $"{(Exposure is double t ? Said.Seconds(t) : "unknown exposure")} at "
            + $"{(Temperature is double c ? Said.Celsius(Math.Round(c, 1)) : "unknown temperature")}, "
            + $"{ModeChoice.Name(Settings)}{(Set.Label is { } label ? $" ({label})" : "")}";
    }
}
