using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>Finds periods in the means of columns (or rows).</summary>
/// <remarks>Power spectrum |F|² of the means minus their average; in noise without a pattern, every |F|² is
/// exponentially distributed about a smooth level, here the median of the 33 closest frequencies over ln 2. The
/// strongest of n frequencies exceeds x times its level by chance with probability 1 − (1 − e^−x)ⁿ. Amplitude
/// 2|F|/N.</remarks>
internal static class LineSpectrum
{
    private const int Reach = 16;
    private const double MaxChance = 1e-6;
    private const int MaxPeriods = 5;
    private const int MaxPoints = 512;

    /// <summary>Periods that stand out, strongest first.</summary>
    /// <param name="means">Mean of each line, ADU; at least 64 lines.</param>
    /// <param name="direction">Whether the lines are columns or rows.</param>
    /// <param name="step">Distance between lines, px.</param>
    public static IReadOnlyList<PatternPeriod> Periods(
        IReadOnlyList<double> means,
        PatternDirection direction,
        int step = 1
    )
    {
        var found = new List<(double Power, PatternPeriod Period)>();
        (double[] power, double[] levels) = Spectrum(means);
        for (int k = 0; k < power.Length; k++)
        {
            if (!(levels[k] > 0))
                continue;
            double chance = -double.ExpM1(power.Length * double.LogP1(-Math.Exp(-power[k] / levels[k])));
            bool peak = (k == 0 || power[k] >= power[k - 1]) && (k == power.Length - 1 || power[k] > power[k + 1]);
            if (peak && k > 0 && chance < MaxChance)
                found.Add(
                    (
                        power[k],
                        new(direction, (double)means.Count / (k + 1) * step, Amplitude(power[k], means.Count), chance)
                    )
                );
        }
        return [.. found.OrderByDescending(f => f.Power).Take(MaxPeriods).Select(f => f.Period)];
    }

    /// <summary>The means and their spectrum, reduced for plots; null with fewer than 64 lines.</summary>
    public static LineProfile? Profile(IReadOnlyList<double> means, PatternDirection direction)
    {
        (double[] power, double[] levels) = Spectrum(means);
        if (power.Length == 0)
            return null;
        // x with 1 − (1 − e^−x)ⁿ = 1e-6
        double mean = means.Average(),
            factor = -Math.Log(-double.ExpM1(double.LogP1(-MaxChance) / power.Length));
        int lines = (means.Count + MaxPoints - 1) / MaxPoints,
            joined = (power.Length + MaxPoints - 1) / MaxPoints;
        int[] strongest = [.. Enumerable.Range(0, power.Length).Chunk(joined).Select(c => c.MaxBy(k => power[k]))];
        return new LineProfile
        {
            Direction = direction,
            LinesPerPoint = lines,
            Deviations = [.. means.Chunk(lines).Select(c => Math.Round(c.Average() - mean, 5))],
            Periods = [.. strongest.Select(k => Math.Round((double)means.Count / (k + 1), 4))],
            Amplitudes = [.. strongest.Select(k => Math.Round(Amplitude(power[k], means.Count), 6))],
            Limits = [.. strongest.Select(k => Math.Round(Amplitude(factor * levels[k], means.Count), 6))],
        };
    }

    /// <summary>Power at k = 1 … N/2 and the smooth level around each; empty with fewer than 64 lines.</summary>
    private static (double[] Power, double[] Levels) Spectrum(IReadOnlyList<double> means)
    {
        if (means.Count < 64)
            return ([], []);
        double mean = means.Average();
        Complex[] spectrum = [.. means.Select(m => new Complex(m - mean, 0))];
        Fourier.Forward(spectrum, FourierOptions.NoScaling);
        double[] power =
        [
            .. spectrum.Skip(1).Take(means.Count / 2).Select(f => f.Real * f.Real + f.Imaginary * f.Imaginary),
        ];
        return (
            power,
            [
                .. Enumerable
                    .Range(0, power.Length)
                    .Select(k =>
                    {
                        int from = Math.Max(0, Math.Min(k - Reach, power.Length - 2 * Reach - 1)),
                            to = Math.Min(power.Length, from + 2 * Reach + 1);
                        return OrderStatistics.Median(power.AsSpan(from, to - from)) / Math.Log(2);
                    }),
            ]
        );
    }

    private static double Amplitude(double power, int lines) => 2 * Math.Sqrt(power) / lines;
}
