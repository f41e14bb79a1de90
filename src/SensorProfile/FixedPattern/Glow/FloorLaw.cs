using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Cells;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>
/// By what factor a map, which joins the temperatures by the law of the typical pixel, shows pixels that do not glow too
/// bright.
/// </summary>
/// <remarks>
/// A map is Σ w·f·I(T), w the weights of the temperatures, f = typical rate at the reference over that at T. Where the typical
/// pixel glows, its law is a mixture, and a pixel without glow grows faster than it: cameras whose typical pixel owes a
/// quarter to glow show the others 3 to 5 % too bright. The factor is the same sum over the rates of the floor, divided by the
/// floor's rate at the reference temperature (straight line in the logarithm between the neighbouring temperatures). The glow
/// of pixels that do not stand out comes out a few per cent too faint by the same cause; that is left to its doubt.
/// </remarks>
internal static class FloorLaw
{
    private const int MinTemperatures = 3,
        MinCells = 8;
    private const double Largest = 1.25; // beyond it the laws are too uncertain to correct by

    /// <summary>The factor; 1 where the frames do not tell it.</summary>
    /// <param name="input">The mode.</param> <param name="maps">Its maps and the signals of the cells.</param>
    /// <param name="glows">Cells that glow.</param>
    public static double Factor(PatternInput input, RateMaps maps, bool[] glows)
    {
        CellSignals cells = maps.Cells;
        int[] floor = [.. Enumerable.Range(0, glows.Length).Where(i => !glows[i] && cells.Counts[i] > 0)];
        int count = maps.Temperatures.Count;
        if (floor.Length < MinCells || count < MinTemperatures)
            return 1;
        ReferenceScale scale = ReferenceScale.Measure(input, maps.Temperatures);
        double[] celsius = new double[count],
            rates = new double[count];
        for (int t = 0; t < count; t++)
        {
            (DarkSeries series, SeriesLevels levels) = maps.Temperatures[t];
            double above = 0;
            for (int g = 0; g < levels.Slope.Seconds.Count; g++)
                above +=
                    levels.Slope.Factors[g]
                    * OrderStatistics.Median([.. floor.Select(i => cells.Sums[t][g][i] / cells.Counts[i])]);
            (celsius[t], rates[t]) = (series.TemperatureCelsius, series.TypicalRate + levels.MedianShift + above);
        }
        double factor =
            rates.Select((r, t) => scale.Weights[t] * scale.Factors[t] * r).Sum()
            / At(celsius, rates, input.ReferenceTemperature);
        return factor is >= 1 / Largest and <= Largest ? factor : 1;
    }

    private static double At(double[] celsius, double[] rates, double reference)
    {
        int[] known =
        [
            .. Enumerable
                .Range(0, rates.Length)
                .Where(t => rates[t] > 0)
                .OrderBy(t => Math.Abs(celsius[t] - reference)),
        ];
        if (known.Length < 2)
            return double.NaN;
        int a = known[0],
            b = known.Skip(1).Where(t => (celsius[t] > reference) != (celsius[a] > reference)).Append(known[1]).First();
        double part = (reference - celsius[a]) / (celsius[b] - celsius[a]);
        return rates[a] * Math.Pow(rates[b] / rates[a], part);
    }
}
