using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.Thermometer;

/// <summary>Temperatures of single frames from their hot pixels.</summary>
internal static class FrameTemperatures
{
    private const double MaxDoubt = 0.25; // °C: a frame with a larger uncertainty keeps its reading
    private const double GoodDoubt = 0.1; // °C: sets known this well define the zero, if there are any

    /// <summary>
    /// Temperature in °C by frame name, for the sets of one temperature; empty if no set has readings.
    /// </summary>
    /// <remarks>The zero is the median over the sets of mean reading minus mean temperature from the hot
    /// pixels.</remarks>
    /// <param name="series">The darks.</param>
    /// <param name="sets">Temperatures of the sets relative to the longest exposure.</param>
    public static IEnumerable<(string Name, double Celsius)> Compute(
        DarkSeries series,
        IReadOnlyList<ThermometerSet> sets
    )
    {
        var offsets = new List<(double Offset, double Doubt)>();
        for (int g = 0; g < sets.Count; g++)
        {
            double[] readings = [.. series.Exposures[g].Readings.OfType<double>()];
            if (readings.Length > 0 && sets[g].Frames.All(m => double.IsFinite(m.Value)))
                offsets.Add(
                    (
                        readings.Average() - sets[g].Frames.Average(m => m.Value),
                        sets[g].Frames.Average(m => m.StandardUncertainty)
                    )
                );
        }
        if (offsets.Count == 0)
            yield break;
        double[] good = [.. offsets.Where(o => o.Doubt <= GoodDoubt).Select(o => o.Offset)];
        double zero = OrderStatistics.Median(good.Length > 0 ? good : [.. offsets.Select(o => o.Offset)]);
        for (int g = 0; g < sets.Count; g++)
        for (int f = 0; f < sets[g].Frames.Count; f++)
            if (double.IsFinite(sets[g].Frames[f].Value) && sets[g].Frames[f].StandardUncertainty <= MaxDoubt)
                yield return (series.Exposures[g].Frames[f].Name, zero + sets[g].Frames[f].Value);
    }
}
