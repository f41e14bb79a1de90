using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// Where flickering pixels matter: the noise of a light over the distribution of the pixels, with and without them.
/// </summary>
/// <remarks>
/// Flicker is taken as independent of dark rate: every class of the rates is mixed with every class of the flickering
/// pixels, in proportion to their shares.
/// </remarks>
internal static class FlickerRanks
{
    private const double Matters = 1.01; // a rise of 1 % of the noise at a rank is worth a word
    private static readonly double[] shares = [0.5, 0.9, 0.99, 0.999, 0.9999];

    /// <summary>The ranks; empty without flickering pixels or without a distribution.</summary>
    internal static IReadOnlyList<FlickerAtRank> Rank(
        SensorModel sensor,
        double sky,
        double exposureSeconds,
        double celsius
    )
    {
        if (sensor.Pixels is null || sensor.Flicker.Count == 0)
            return [];
        RateFactors growth = sensor.GrowthAt(celsius, exposureSeconds);
        double[] rates = sensor.Pixels.RatesAt(growth);
        ReadOnlySpan<double> weights = sensor.Pixels.Weights;
        double[] variances = new double[rates.Length],
            below = weights.ToArray();
        for (int i = 0; i < rates.Length; i++)
            variances[i] = PixelNoise
                .OfLight(sensor, sky * exposureSeconds, Math.Max(rates[i], 0) * exposureSeconds)
                .Random;
        Array.Sort(variances, below);
        for (int i = 1; i < below.Length; i++)
            below[i] += below[i - 1];
        (double Added, double Share)[] jumps =
        [
            .. sensor.Flicker.Select(f =>
                (FlickerNoise.OfLight(f, growth.Thermal, exposureSeconds), FlickerNoise.Share(f, sensor))
            ),
        ];
        (double, double)[] mixed = [(0, 1 - jumps.Sum(j => j.Share)), .. jumps];
        double[] without = Quantiles(variances, below, [(0, 1)]),
            with = Quantiles(variances, below, mixed);
        return [.. shares.Select((share, i) => new FlickerAtRank(share, Math.Sqrt(without[i]), Math.Sqrt(with[i])))];
    }

    /// <summary>
    /// A finding where they raise the noise of the 99 % pixel by 1 % or more; another where the profile counts such
    /// pixels but does not hold their steps.
    /// </summary>
    internal static IEnumerable<Finding> Findings(
        SensorReader reader,
        double sky,
        double exposureSeconds,
        double celsius
    )
    {
        if (reader.Mode.FixedPattern is { Defects.Telegraph: > 0, Flicker.Count: 0 })
            return
            [
                new Finding(
                    FindingCodes.FlickerUnknown,
                    Severity.Note,
                    "The profile counts pixels that jump between levels but does not hold their steps, so their noise "
                        + "is left out: characterise again with this version."
                ),
            ];
        FlickerAtRank? at = Rank(reader.Best, sky, exposureSeconds, celsius).FirstOrDefault(r => r.Share == 0.99);
        if (at is null || at.With < Matters * at.Without)
            return [];
        return
        [
            new Finding(
                FindingCodes.FlickerNoise,
                Severity.Note,
                "Pixels that jump between levels raise the noise of a light at the 99 % pixel from "
                    + $"{Plain.Number(at.Without)} to {Plain.Number(at.With)} e⁻; cooling does not help where the step "
                    + "arises at read-out. Dither and reject outliers."
            ),
        ];
    }

    /// <summary>
    /// Smallest variances that given shares of the pixels do not exceed, found by bisection. The share of mixed pixels
    /// at or below a variance is a sum over the jumps: plain pixels at or below that variance less what the jump adds.
    /// </summary>
    /// <param name="variances">Variances of the plain pixels, ascending.</param>
    /// <param name="below">Share of the plain pixels at or below each.</param>
    /// <param name="jumps">Variance that a jump adds, and the share of pixels it is added to.</param>
    private static double[] Quantiles(double[] variances, double[] below, (double Added, double Share)[] jumps)
    {
        const int halvings = 60;
        double farthest = variances[^1] + jumps.Max(j => j.Added);
        double Share(double variance)
        {
            double share = 0;
            foreach ((double added, double part) in jumps)
            {
                int at = CountUpTo(variances, variance - added);
                if (at > 0)
                    share += part * below[at - 1];
            }
            return share;
        }
        double[] found = new double[shares.Length];
        for (int i = 0; i < shares.Length; i++)
        {
            (double low, double high) = (0, farthest);
            for (int step = 0; step < halvings; step++)
            {
                double middle = (low + high) / 2;
                if (Share(middle) >= shares[i])
                    high = middle;
                else
                    low = middle;
            }
            found[i] = high;
        }
        return found;
    }

    /// <summary>Number of sorted values that do not exceed a given one.</summary>
    private static int CountUpTo(double[] sorted, double value)
    {
        (int low, int high) = (0, sorted.Length);
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (sorted[middle] <= value)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }
}
