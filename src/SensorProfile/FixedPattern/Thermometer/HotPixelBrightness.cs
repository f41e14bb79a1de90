using SensorProfile.Fitting.Models;
using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.Thermometer;

/// <summary>Brightness of the hot pixels in a frame relative to their mean in the longest exposure.</summary>
/// <remarks>
/// s = Σw(x − b)/t ÷ Σw·r, x the signal of a pixel, b its signal at zero exposure, r its mean rate in the longest
/// exposure (T), w = rt/(rt + σ²): close to the least-squares weights for Poisson light with read noise σ². With V =
/// s·rt + dt + σ² (d the dark rate of an ordinary pixel, which a hot one has too), the relative variance of s from the
/// frame itself is Σw²V/(Σw·rt)²; the part shared by the frames of a set adds Σw²((t/T)²·V_T/n_T + (1 −
/// t/T)²·u²(b))/(Σw·rt)²: the noise of the rates and of the signals at zero exposure. Without bias frames, b is that of
/// the ordinary pixels and u(b) the spread of the levels. A frame of the longest exposure is part of its own reference,
/// which leaves 1 − 1/n_T of its own variance.
/// </remarks>
internal sealed class HotPixelBrightness
{
    private const double MaxUnsteady = 4;

    // e- from all hot pixels in the longest exposure: 10 % Poisson noise
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

    /// <summary>Measures the reference and the weights; null when the hot pixels have too little signal.</summary>
    /// <param name="series">The darks.</param>
    /// <param name="signals">Signal of every hot pixel in every frame above the ordinary ones, e-:
    /// [set][frame][pixel].</param>
    /// <param name="readVariance">e-².</param>
    /// <param name="unlit">Signal at zero exposure above the ordinary pixels, e-, and its variance, e-²; null to assume
    /// 0 with an uncertainty estimated from the pixels.</param>
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

    /// <summary>Index of the longest exposure.</summary>
    public int Longest => longest;

    /// <summary>Brightness of a frame.</summary>
    /// <returns>s, and the relative variance that belongs to this frame alone.</returns>
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
    /// Variance of the levels of the hot pixels relative to the ordinary ones, e-², from the straight lines through
    /// their sets.
    /// </summary>
    /// <remarks>
    /// The intercept of a line would take a warmer set for a level. But a level has nothing to do with the brightness
    /// of a pixel, so the part proportional to brightness is temperature and is left out.
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
    /// Sets the rate, and with it the weight, of pixels to 0 that do not follow the common brightness: those with more
    /// than 4 times the variance of shot and read noise.
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
