using SensorProfile.Frames;

namespace SensorProfile.Decisions.Shots;

/// <summary>The darks of one temperature.</summary>
/// <param name="Celsius">Sensor temperature, °C.</param>
/// <param name="Exposures">Exposures, s, and frames of each.</param>
internal sealed record DarkDesign(double Celsius, IReadOnlyList<(double Seconds, int Frames)> Exposures)
{
    private const double PedestalElectrons = 0.3;

    /// <summary>Variance of the dark rate, (e-/px/s)²; infinite with one exposure.</summary>
    internal double SlopeVariance
    {
        get
        {
            double frames = Exposures.Sum(e => e.Frames),
                mean = Exposures.Sum(e => e.Frames * e.Seconds) / frames;
            return PedestalElectrons
                * PedestalElectrons
                / Exposures.Sum(e => e.Frames * (e.Seconds - mean) * (e.Seconds - mean));
        }
    }

    /// <summary>Darks grouped by temperature; a group spans less than what counts as one temperature.</summary>
    internal static IEnumerable<DarkDesign> Read(IEnumerable<FrameSet> sets)
    {
        var groups = new List<List<FrameSet>>();
        foreach (
            FrameSet set in sets.Where(s =>
                    s.Kind == FrameKind.Dark && s.TemperatureCelsius is not null && s.ExposureSeconds is > 0
                )
                .OrderBy(s => s.TemperatureCelsius)
        )
            if (
                groups.Count > 0
                && set.TemperatureCelsius!.Value - groups[^1][0].TemperatureCelsius!.Value < ShotList.SameTemperature
            )
                groups[^1].Add(set);
            else
                groups.Add([set]);
        return groups.Select(g => new DarkDesign(
            g.Average(s => s.TemperatureCelsius!.Value),
            [.. g.Select(s => (s.ExposureSeconds!.Value, s.Frames.Count))]
        ));
    }
}
