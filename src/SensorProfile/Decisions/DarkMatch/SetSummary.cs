using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>What the matching needs of a frame set.</summary>
/// <param name="Set">The frames.</param>
/// <param name="Exposure">s; null when unknown or not above 0.</param>
/// <param name="Temperature">Temperature of the same mean dark current as the set, °C; null when unknown.</param>
/// <param name="Drift">Warmest minus coldest frame, °C; null when unknown.</param>
internal sealed record SetSummary(FrameSet Set, double? Exposure, double? Temperature, double? Drift)
{
    internal int Frames => Set.Frames.Count;

    internal ModeSettings Settings => Set.Settings;

    /// <summary>Set point of the cooler that all frames share and hold, °C; null when there is none.</summary>
    internal double? SetPoint => SetPoints.HeldBy(Set.Frames);

    /// <remarks>
    /// A set point that was held counts as the temperature: lights and darks of one set point agree, however much their
    /// readings scatter. Dark current is convex: over temperatures with variance v its mean is that at T̄ + v·ln
    /// 2/(2·ΔT₂), to second order.
    /// </remarks>
    internal static SetSummary Summarise(FrameSet set, double? doubling)
    {
        double[] known = [.. set.Frames.Select(f => f.TemperatureCelsius).OfType<double>()];
        double? temperature = SetPoints.HeldBy(set.Frames) ?? set.TemperatureCelsius;
        if (SetPoints.HeldBy(set.Frames) is null && known.Length > 1 && temperature is not null && doubling is double d)
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

    internal MatchedSet Facts() =>
        new(
            Set.Kind == FrameKind.Light ? FrameKind.Light : FrameKind.Dark,
            Frames,
            Exposure,
            Temperature,
            Settings,
            Set.Width,
            Set.Height,
            Set.Label
        );
}
