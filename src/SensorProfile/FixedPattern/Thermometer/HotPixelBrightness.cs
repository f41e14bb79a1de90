using SensorProfile.Fitting.Models;
using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.Thermometer;

/// <summary>How bright the hot pixels are in a frame over what their mean in the longest exposure makes them.</summary>
/// <remarks>
/// s = Σw(x − b)/t ÷ Σw·r, x a pixel's signal, b its signal without exposure, r its mean rate in the longest exposure
/// (T), w = rt/(rt + σ²): close to the weights of least squares for Poisson light
/// with read noise σ². With V = s·rt + dt + σ² (d the dark rate of an ordinary pixel, which a hot one has too) the
/// relative variance of s is Σw²V/(Σw·rt)² of the frame's own; what the frames of a set share
/// adds Σw²((t/T)²·V_T/n_T + (1 − t/T)²·u²(b))/(Σw·rt)²: the noise of the rates and of the signals without exposure.
/// Without bias frames b is that of the ordinary pixels, u(b) the spread of the levels. A frame of the longest exposure
/// is part of its own reference: 1 − 1/n_T of its own.
/// </remarks>
internal sealed class HotPixelBrightness
{
    private const double MaxUnsteady = 4;

    // e- of all hot pixels in the longest exposure: 10 % of Poisson noise
    private const double MinLight = 100;

    private readonly double[][][] signals; // [set][frame][pixel], e-
    private readonly double[] seconds,
        dark,
        rates;
    private readonly int longest;
    private readonly double readVariance,
        ordinaryRate,
        darkVariance;

    private HotPixelBrightness(
        DarkSeries series,
        double[][][] signals,
        double readVariance,
        (double[] Signal, double Variance)? unlit
    )
    {
        (this.signals, this.readVariance) = (signals, readVariance);
        seconds = [.. series.Exposures.Select(e => e.TakenSeconds)];
        longest = Enumerable.Range(0, seconds.Length).MaxBy(g => seconds[g]);
        ordinaryRate = Math.Max(0, series.TypicalRate);
        dark = unlit?.Signal ?? new double[signals[0][0].Length];
        rates = [.. dark.Select((b, i) => Math.Max(0, (Mean(longest, i) - b) / seconds[longest]))];
        darkVariance = unlit?.Variance ?? OffsetVariance();
        LeaveOutUnsteady();
    }

    /// <summary>Prepares; null when there is no light in the hot pixels.</summary>
    /// <param name="series">The darks.</param>
    /// <param name="signals">Signal of every hot pixel in every frame above the ordinary ones, e-:
    /// [set][frame][pixel].</param>
    /// <param name="readVariance">e-².</param>
    /// <param name="unlit">Signal without exposure above the ordinary pixels and its variance, e- and e-²; null to take
    /// it for 0 within what the pixels show.</param>
    public static HotPixelBrightness? Measure(
        DarkSeries series,
        double[][][] signals,
        double readVariance,
        (double[] Signal, double Variance)? unlit
    )
    {
        var brightness = new HotPixelBrightness(series, signals, readVariance, unlit);
        return brightness.rates.Sum() * brightness.seconds[brightness.longest] < MinLight ? null : brightness;
    }

    /// <summary>Number of the longest exposure.</summary>
    public int Longest => longest;

    /// <summary>Brightness of a frame.</summary>
    /// <returns>s, and the relative variance that the frame shares with no other.</returns>
    public (double Scale, double OwnVariance) Frame(int set, int frame)
    {
        (double scale, double light) = Scale(set, frame);
        double own =
            Enumerable
                .Range(0, rates.Length)
                .Sum(i => Math.Pow(Weight(i, set), 2) * Variance(i, set, Math.Max(0, scale))) / (light * light);
        return (scale, set == longest ? own * (1 - 1.0 / signals[set].Length) : own);
    }

    /// <summary>Relative variance of s that all frames of a set share.</summary>
    public double SharedVariance(int set)
    {
        if (set == longest)
            return 0;
        double ratio = seconds[set] / seconds[longest],
            sum = 0,
            light = 0;
        for (int i = 0; i < rates.Length; i++)
        {
            double weight = Weight(i, set);
            light += weight * rates[i] * seconds[set];
            sum +=
                weight
                * weight
                * (
                    ratio * ratio * Variance(i, longest, 1) / signals[longest].Length
                    + (1 - ratio) * (1 - ratio) * darkVariance
                );
        }
        return sum / (light * light);
    }

    private (double Scale, double Light) Scale(int set, int frame)
    {
        double sum = 0,
            light = 0;
        for (int i = 0; i < rates.Length; i++)
        {
            double weight = Weight(i, set);
            sum += weight * (signals[set][frame][i] - dark[i]);
            light += weight * rates[i] * seconds[set];
        }
        return (sum / light, light);
    }

    /// <summary>
    /// Variance of the hot pixels' own levels about the ordinary ones, e-², by the straight lines of their sets.
    /// </summary>
    /// <remarks>
    /// A line's intercept would take a set that was warmer for a level; but a level has nothing to do with a pixel's
    /// brightness, so the part in proportion to it is a temperature and is left out.
    /// </remarks>
    private double OffsetVariance()
    {
        if (seconds.Distinct().Count() < 2)
            return 0;
        double[] shares =
        [
            .. Enumerable
                .Range(0, seconds.Length)
                .Select(k => StraightLine.Fit(seconds, [.. seconds.Select((_, g) => g == k ? 1.0 : 0)]).Intercept),
        ];
        double[] levels = [.. rates.Select((_, i) => shares.Select((c, g) => c * Mean(g, i)).Sum())],
            noise =
            [.. rates.Select((_, i) => shares.Select((c, g) => c * c * Variance(i, g, 1) / signals[g].Length).Sum())];
        double light = 0,
            common = 0,
            weight = 0,
            excess = 0;
        for (int i = 0; i < rates.Length; i++)
        {
            light += rates[i] * rates[i] / noise[i];
            common += levels[i] * rates[i] / noise[i];
        }
        for (int i = 0; i < rates.Length; i++)
        {
            weight += 1 / (noise[i] * noise[i]);
            excess +=
                (Math.Pow(levels[i] - (light > 0 ? common / light : 0) * rates[i], 2) - noise[i])
                / (noise[i] * noise[i]);
        }
        return Math.Max(0, excess / weight);
    }

    private double Weight(int pixel, int set)
    {
        double light = rates[pixel] * seconds[set];
        return light / (light + readVariance);
    }

    private double Variance(int pixel, int set, double scale) =>
        scale * rates[pixel] * seconds[set] + ordinaryRate * seconds[set] + readVariance;

    private double Mean(int set, int pixel) => signals[set].Average(f => f[pixel]);

    /// <summary>
    /// Sets the rate of pixels to 0, and with it their weight, that do not follow the common brightness: more than 4
    /// times the variance that light and read noise give.
    /// </summary>
    private void LeaveOutUnsteady()
    {
        double[][] scales = [.. signals.Select((set, g) => set.Select((_, f) => Scale(g, f).Scale).ToArray())];
        int frames = signals.Sum(s => s.Length);
        for (int i = 0; i < rates.Length; i++)
        {
            double chiSquared = 0;
            for (int g = 0; g < signals.Length; g++)
            for (int f = 0; f < signals[g].Length; f++)
                chiSquared +=
                    Math.Pow(signals[g][f][i] - dark[i] - scales[g][f] * rates[i] * seconds[g], 2)
                    / (Variance(i, g, Math.Max(0, scales[g][f])) + darkVariance);
            if (chiSquared > MaxUnsteady * frames)
                rates[i] = 0;
        }
    }
}
