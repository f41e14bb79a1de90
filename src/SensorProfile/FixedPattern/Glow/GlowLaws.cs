using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.Cells;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>How glow grows with exposure and temperature.</summary>
/// <param name="ExposureExponent">p of glow ∝ exposure^p; null if undetermined.</param>
/// <param name="Doubling">Temperature rise that doubles the glow, °C; null if undetermined or if the glow does not rise
/// with temperature.</param>
internal sealed record GlowLaws(Measurement? ExposureExponent, Measurement? Doubling)
{
    /// <summary>Signals of the brightest cell, e-.</summary>
    public IReadOnlyList<GlowSignal> Signals { get; private init; } = [];

    /// <summary>Rates of the brightest cell, e-/px/s.</summary>
    public IReadOnlyList<GlowRate> Rates { get; private init; } = [];

    private const double MinSignal = 4; // standard uncertainties
    private const double MaxExponentDoubt = 0.3;

    // The brightest cell is chosen for being bright, and the glow falls off inside it: 2.6 % too high, with a scatter of 3 %,
    // in physical cameras simulated (CoverageRun).
    private const double ShapeDoubt = 0.04;

    /// <summary>
    /// Amplitude of the glow in every group of frames by its own shape: A = Σw(S − floor)/Σw², w the cells' excess, S
    /// their mean signal, floor the mean of the cells that do not glow. Where the shape fits worse than the cells' noise allows,
    /// the uncertainty is widened by as much (Birge 1932, Phys. Rev. 40, 207).
    /// </summary>
    public static GlowLaws Fit(
        PatternInput input,
        RateMaps maps,
        IReadOnlyList<int> place,
        double[] excess,
        bool[] glows
    )
    {
        CellSignals cells = maps.Cells;
        int[] floor = [.. Enumerable.Range(0, glows.Length).Where(i => !glows[i] && cells.Counts[i] > 0)];
        int[] own = [.. place.Where(i => cells.Counts[i] > 0 && excess[i] > 0)];
        if (floor.Length < 8 || own.Length == 0)
            return new(null, null);
        double weights = own.Sum(i => excess[i] * excess[i]);
        (double A, double U) Amplitude(int t, int g)
        {
            double[] around = [.. floor.Select(i => cells.Sums[t][g][i] / cells.Counts[i])];
            double level = OrderStatistics.Median(around),
                noise = OrderStatistics.MadSigma(around);
            double a = own.Sum(i => excess[i] * (cells.Sums[t][g][i] / cells.Counts[i] - level)) / weights,
                offset = own.Sum(i => excess[i]) / weights,
                misfit = own.Sum(i => Math.Pow(cells.Sums[t][g][i] / cells.Counts[i] - level - a * excess[i], 2)),
                birge = Math.Sqrt(Math.Max(1, misfit / Math.Max(1, own.Length - 1) / (noise * noise)));
            return (a, noise * birge * Math.Sqrt(1 / weights + offset * offset * Math.PI / 2 / around.Length));
        }
        var exponents = new List<(double P, double U)>();
        var rates = new List<(double T, double LogRate, double U)>();
        double peak = own.Max(i => excess[i]); // A is in units of the shape of the cells
        List<GlowSignal> signals = [];
        List<GlowRate> shown = [];
        for (int t = 0; t < maps.Temperatures.Count; t++)
        {
            (DarkSeries series, SeriesLevels levels) = maps.Temperatures[t];
            (double A, double U)[] amplitudes = [.. levels.Slope.Seconds.Select((_, g) => Amplitude(t, g))];
            if (
                GlowExponent.Fit(
                    [.. levels.Slope.Seconds],
                    [.. amplitudes.Select(a => a.A)],
                    [.. amplitudes.Select(a => a.U)]
                ) is
                { } exponent
            )
                exponents.Add(exponent);
            double rate = amplitudes.Select((a, g) => levels.Slope.Factors[g] * a.A).Sum(),
                u = Math.Sqrt(amplitudes.Select((a, g) => Math.Pow(levels.Slope.Factors[g] * a.U, 2)).Sum());
            shown.Add(
                new(
                    series.TemperatureCelsius,
                    new(
                        peak * rate,
                        peak * double.Hypot(u, ShapeDoubt * rate),
                        "e-/px/s",
                        own.Length,
                        "amplitude of the glow shape, line against exposure"
                    )
                )
            );
            signals.AddRange(SignalsOf(series.TemperatureCelsius, levels.Slope.Seconds, amplitudes, peak, own.Length));
            if (rate > MinSignal * u)
                rates.Add((series.TemperatureCelsius, Math.Log(rate), u / rate));
        }
        return new(Exponent(exponents), input.Quick ? null : Double(rates)) { Signals = signals, Rates = shown };
    }

    /// <summary>Signals above the signal of the place at zero exposure, where that is known.</summary>
    private static IEnumerable<GlowSignal> SignalsOf(
        double celsius,
        IReadOnlyList<double> seconds,
        (double A, double U)[] amplitudes,
        double peak,
        int cells
    )
    {
        int unlit = Enumerable.Range(0, seconds.Count).Where(g => seconds[g] <= 0).DefaultIfEmpty(-1).First();
        (double a, double u) = unlit < 0 ? (0, 0) : amplitudes[unlit];
        return Enumerable
            .Range(0, seconds.Count)
            .Where(g => seconds[g] > 0)
            .OrderBy(g => seconds[g])
            .Select(g => new GlowSignal(
                celsius,
                seconds[g],
                new(
                    peak * (amplitudes[g].A - a),
                    peak * Math.Sqrt(amplitudes[g].U * amplitudes[g].U + u * u),
                    "e-",
                    cells,
                    "amplitude of the glow shape"
                )
            ));
    }

    private static Measurement? Exponent(List<(double P, double U)> exponents)
    {
        if (exponents.Count == 0)
            return null;
        WeightedMean mean = WeightedMean.Combine([.. exponents.Select(e => e.P)], [.. exponents.Select(e => e.U)]);
        return mean.BirgeUncertainty > MaxExponentDoubt
            ? null
            : new(
                mean.Value,
                mean.BirgeUncertainty,
                "1",
                exponents.Count,
                "power law of the glow against exposure, weighted mean over temperatures"
            );
    }

    private static Measurement? Double(List<(double T, double LogRate, double U)> rates)
    {
        if (rates.Count < 2)
            return null;
        StraightLine line = StraightLine.Fit(
            [.. rates.Select(r => r.T)],
            [.. rates.Select(r => r.LogRate)],
            [.. rates.Select(r => r.U)]
        );
        double slope = line.Slope,
            doubt = line.SlopeUncertainty * Math.Sqrt(Math.Max(1, line.ReducedChiSquared));
        double doubling = Math.Log(2) / slope;
        return slope > 3 * doubt
            ? new(doubling, doubling * doubt / slope, "°C", rates.Count, "glow against temperature, exponential")
            : null;
    }
}
