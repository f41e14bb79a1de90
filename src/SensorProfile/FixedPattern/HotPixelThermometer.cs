using SensorProfile.Fitting;

namespace SensorProfile.FixedPattern;

/// <summary>Temperature differences between dark frames from the common brightness of the hot pixels.</summary>
/// <remarks>
/// Brightness of a frame: s = Σw(x − b)/t ÷ Σw·r, x a pixel's signal, b its signal without exposure, r its mean rate in the set of the longest exposure at this temperature, w = rt/(rt + σ²): close
/// to the weights of least squares for Poisson light with read noise σ². Temperature: ΔT = ln s·ΔT₂/ln 2, ΔT₂ the doubling temperature of these pixels at this temperature. Uncertainty: the
/// Poisson and read noise of the sum, and the relative doubt of ΔT₂. It is a relative thermometer: what all frames share (an offset of the probe at every temperature) it cannot see.
/// </remarks>
internal sealed class HotPixelThermometer
{
    private const double AssumedDoubt = 1.0;                               // °C, of the doubling temperature where no pixel's law was measured
    private const double MostUnsteady = 4;
    private const int FewestLaws = 5;                                      // of single pixels, for their mean to replace the assumption
    private const double LeastLight = 100;                                 // e- of all hot pixels in the longest exposure: 10 % of Poisson noise

    private readonly PatternInput input;
    private readonly ThermometerPixels pixels;
    private readonly double doubling, doublingDoubt;

    private HotPixelThermometer(PatternInput input, ThermometerPixels pixels, double doubling, double doublingDoubt) =>
        (this.input, this.pixels, this.doubling, this.doublingDoubt) = (input, pixels, doubling, doublingDoubt);

    /// <summary>Prepares the thermometer; null when there are too few hot pixels.</summary>
    public static HotPixelThermometer? Of(PatternInput input, RateMaps maps, DefectMap defects)
    {
        if (ThermometerPixels.Of(input, maps, defects) is not { } pixels) return null;
        (double value, double doubt) = (PhysicalConstants.AssumedDoubling, AssumedDoubt);
        int[] measured = maps.Doubling is null ? [] : [.. pixels.Indices.Where(i => float.IsFinite(maps.Doubling[i]))];
        if (measured.Length >= FewestLaws)
        {
            // The sum's logarithmic slope is the mean of the pixels' slopes weighted by their light.
            double light = measured.Sum(i => (double)maps.Rate[i]), slope = measured.Sum(i => maps.Rate[i] / (double)maps.Doubling![i]) / light;
            double spread = Math.Sqrt(measured.Sum(i => maps.Rate[i] * Math.Pow(1 / (double)maps.Doubling![i] - slope, 2)) / light);
            (value, doubt) = (1 / slope, spread / (slope * slope) / Math.Sqrt(measured.Length));
        }
        return new(input, pixels, value, doubt);
    }

    /// <summary>Temperature of every frame of one temperature's sets, against the mean of its longest exposure, °C.</summary>
    /// <returns>One array per set in the order of the exposures; null when the longest set has no light in its hot pixels.</returns>
    public IReadOnlyList<IReadOnlyList<Measurement>>? Temperatures(DarkSeries series)
    {
        double[][][] signals = [.. series.Exposures.Select(e => e.Frames.AsParallel().AsOrdered().WithDegreeOfParallelism(input.Walk.Threads).WithCancellation(input.Walk.Cancellation).Select(pixels.Signals).ToArray())];
        int longest = Enumerable.Range(0, signals.Length).MaxBy(g => series.Exposures[g].TakenSeconds);
        double[] dark = Unexposed(series, signals), rates = new double[pixels.Count];
        double seconds = series.Exposures[longest].TakenSeconds;
        for (int i = 0; i < rates.Length; i++) rates[i] = Math.Max(0, (signals[longest].Average(f => f[i]) - dark[i]) / seconds);
        if (rates.Sum() * seconds < LeastLight) return null;
        LeaveOutUnsteady(signals, dark, rates, [.. series.Exposures.Select(e => e.TakenSeconds)]);
        double local = doubling * Ratio(series.TemperatureCelsius), toDegrees = local / Math.Log(2);
        return [.. signals.Select((frames, g) => (IReadOnlyList<Measurement>)[.. frames.Select(f => Temperature(f, dark, rates, series.Exposures[g].TakenSeconds, toDegrees))])];
    }

    /// <summary>Temperature rise that doubles the hot pixels, from their brightness in every frame against the probe's readings, °C; null with readings of one value only.</summary>
    /// <remarks>Straight line of ln s = ΔT·ln 2/ΔT₂ on the reading over all frames; its uncertainty holds the change of the slope when one exposure is left out (jackknife), for exposure and temperature
    /// may have moved together.</remarks>
    public Measurement? DoublingByReadings(DarkSeries series)
    {
        if (Temperatures(series) is not { } sets) return null;
        double local = doubling * Ratio(series.TemperatureCelsius);
        var points = sets.SelectMany((set, g) => set.Select((m, f) => (Group: g, Reading: f < series.Exposures[g].Readings.Count ? series.Exposures[g].Readings[f] : null, LogScale: m.Value * Math.Log(2) / local)))
            .Where(p => p.Reading is not null && double.IsFinite(p.LogScale)).ToArray();
        double? Slope(int leftOut)
        {
            var used = points.Where(p => p.Group != leftOut).ToArray();
            return used.Select(p => p.Reading).Distinct().Count() < 2 ? null : StraightLine.Fit([.. used.Select(p => p.Reading!.Value)], [.. used.Select(p => p.LogScale)]).Slope;
        }
        double slope = Slope(-1) ?? 0;
        if (!(slope > 0)) return null;
        double[] without = [.. points.Select(p => p.Group).Distinct().Select(Slope).OfType<double>()];
        double mean = without.Average(), spread = Math.Sqrt(without.Sum(w => (w - mean) * (w - mean)) * (without.Length - 1) / without.Length);
        double value = Math.Log(2) / slope;
        return new(value, value * spread / slope, "°C", points.Length, "brightness of the hot pixels against the probe's readings, frame by frame");
    }

    /// <summary>Sets the rate of pixels to 0, and with it their weight, that do not follow the common brightness: more than 4 times the variance that light and read noise give.</summary>
    private void LeaveOutUnsteady(double[][][] signals, double[] dark, double[] rates, double[] seconds)
    {
        double noise = ReadVariance;
        double[][] scales = [.. signals.Select((set, g) => set.Select(f => Brightness(f, dark, rates, seconds[g]).Scale).ToArray())];
        int frames = signals.Sum(s => s.Length);
        for (int i = 0; i < rates.Length; i++)
        {
            double chiSquared = 0;
            for (int g = 0; g < signals.Length; g++)
                for (int f = 0; f < signals[g].Length; f++)
                {
                    double mean = scales[g][f] * rates[i] * seconds[g];
                    chiSquared += Math.Pow(signals[g][f][i] - dark[i] - mean, 2) / (Math.Max(0, mean) + noise);
                }
            if (chiSquared > MostUnsteady * frames) rates[i] = 0;
        }
    }

    private double ReadVariance => Math.Max(input.UnlitVariance, 1.0 / 12) * Math.Pow(input.Gains.Average(), 2);

    /// <summary>Weighted brightness of a frame over what it should be, with its standard uncertainty.</summary>
    private (double Scale, double Uncertainty) Brightness(double[] signals, double[] dark, double[] rates, double seconds)
    {
        double noise = ReadVariance, sum = 0, expected = 0, variance = 0;
        for (int i = 0; i < rates.Length; i++)
        {
            double mean = rates[i] * seconds, weight = mean / (mean + noise);
            sum += weight * (signals[i] - dark[i]);
            expected += weight * mean;
            variance += weight * weight * (mean + noise);
        }
        return (sum / expected, Math.Sqrt(variance) / expected);
    }

    private Measurement Temperature(double[] signals, double[] dark, double[] rates, double seconds, double toDegrees)
    {
        (double scale, double doubt) = Brightness(signals, dark, rates, seconds);
        double kelvin = scale > 0 ? Math.Log(scale) * toDegrees : double.NaN;
        double own = doubt / Math.Max(scale, 1e-3) * toDegrees, law = Math.Abs(kelvin) * doublingDoubt / doubling;
        return new(kelvin, Math.Sqrt(own * own + law * law), "°C", rates.Length, "common brightness of the hot pixels");
    }

    /// <summary>Signal without exposure: of the bias map, else by the straight line of the means.</summary>
    private double[] Unexposed(DarkSeries series, double[][][] signals)
    {
        if (input.Unlit is { } unlit) return pixels.Signals(unlit.Mean);
        double[] seconds = [.. series.Exposures.Select(e => e.TakenSeconds)];
        if (seconds.Distinct().Count() < 2) return new double[pixels.Count];
        return [.. Enumerable.Range(0, pixels.Count).Select(i => StraightLine.Fit(seconds, [.. signals.Select(g => g.Average(f => f[i]))]).Intercept)];
    }

    /// <summary>Doubling temperature at a temperature over that at the reference, by the shape of the typical law, or Arrhenius' where there is none.</summary>
    private double Ratio(double celsius)
    {
        double reference = input.ReferenceTemperature;
        if (input.ActivationLaw is not { } law) return Math.Pow((celsius + PhysicalConstants.ZeroCelsius) / (reference + PhysicalConstants.ZeroCelsius), 2);
        double Slope(double t) => Math.Log(law(t + 0.05) / law(t - 0.05));
        return Slope(reference) / Slope(celsius);
    }
}
