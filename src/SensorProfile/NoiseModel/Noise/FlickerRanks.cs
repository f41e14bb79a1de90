using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// Where flickering pixels matter: the noise of a light over the distribution of the pixels, with and without them.
/// </summary>
/// <remarks>
/// Which pixels flicker is taken as independent of their dark rate: every class of the rates is mixed with every class
/// of the flickering pixels, in their shares.
/// </remarks>
internal static class FlickerRanks
{
    private const double Matters = 1.01; // a rise of 1 % of the noise at a rank is worth a word
    private static readonly double[] shares = [0.5, 0.9, 0.99, 0.999, 0.9999];

    /// <summary>The ranks; empty without flickering pixels or without a distribution.</summary>
    internal static IReadOnlyList<FlickerAtRank> Of(
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
        var plain = new (double Variance, double Weight)[rates.Length];
        for (int i = 0; i < plain.Length; i++)
            plain[i] = (
                PixelNoise.OfLight(sensor, sky * exposureSeconds, Math.Max(rates[i], 0) * exposureSeconds).Random,
                weights[i]
            );
        (double Added, double Share)[] jumps =
        [
            .. sensor.Flicker.Select(f =>
                (FlickerNoise.OfLight(f, growth.Thermal, exposureSeconds), FlickerNoise.Share(f, sensor))
            ),
        ];
        double steady = 1 - jumps.Sum(j => j.Share);
        (double Variance, double Weight)[] mixed =
        [
            .. plain.Select(p => (p.Variance, p.Weight * steady)),
            .. plain.SelectMany(p => jumps.Select(j => (p.Variance + j.Added, p.Weight * j.Share))),
        ];
        double[] without = Quantiles(plain),
            with = Quantiles(mixed);
        return [.. shares.Select((share, i) => new FlickerAtRank(share, Math.Sqrt(without[i]), Math.Sqrt(with[i])))];
    }

    /// <summary>
    /// A sentence where they raise the noise of the 99 % pixel by 1 % or more; another where the profile counts such
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
                    "flicker-unknown",
                    Severity.Note,
                    "The profile counts pixels that jump between levels but does not hold their steps, so their noise "
                        + "is left out: characterise again with this version."
                ),
            ];
        FlickerAtRank? at = Of(reader.Best, sky, exposureSeconds, celsius).FirstOrDefault(r => r.Share == 0.99);
        if (at is null || at.With < Matters * at.Without)
            return [];
        return
        [
            new Finding(
                "flicker-noise",
                Severity.Note,
                "Pixels that jump between levels raise the noise of a light at the 99 % pixel from "
                    + $"{Plain.Number(at.Without)} to {Plain.Number(at.With)} e⁻; colder does not help where the step is "
                    + "made at read-out. Dither and reject outliers."
            ),
        ];
    }

    private static double[] Quantiles((double Variance, double Weight)[] pixels)
    {
        double[] variances = new double[pixels.Length];
        int[] order = new int[pixels.Length];
        for (int i = 0; i < pixels.Length; i++)
            (variances[i], order[i]) = (pixels[i].Variance, i);
        Array.Sort(variances, order);
        // equals in the order of the classes, so that the sum of the weights is the same everywhere
        for (int from = 0, to; from < order.Length; from = to)
        {
            for (to = from + 1; to < order.Length && variances[to] == variances[from]; )
                to++;
            Array.Sort(order, from, to - from);
        }
        double[] found = new double[shares.Length];
        for (int i = 0; i < shares.Length; i++)
        {
            double below = 0;
            int at = 0;
            while (at < order.Length - 1 && below + pixels[order[at]].Weight < shares[i])
                below += pixels[order[at++]].Weight;
            found[i] = variances[at];
        }
        return found;
    }
}
