using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.Tests.Decisions;

/// <summary>
/// The real procedure on many places of the sky at once, with the darks asked about and with ideal ones: the loss is
/// the difference.
/// </summary>
/// <remarks>
/// Every place of the sky gets k sensor pixels, M/k lights each; every pixel its own master of n darks. Electrons are
/// Poisson, the read noise normal, the full well cuts. The k pixels of a place are drawn
/// from all ranks of the camera's pixels by a Latin hypercube (each position of the dither uses every rank once, in
/// random order): the expectation of independent pixels with less scatter. Ideal darks take the
/// true dark signal from the same lights. Where nothing is rejected the lights' noise and the darks' error are
/// independent by construction, so the sample covariance of the two, which is chance alone, is left out.
/// Rejection: <see cref="Clipped"/>, written apart from the library's.
/// </remarks>
internal sealed class StackMonteCarlo(Tarn camera, StackConditions stack, DarkFrames darks, int places, int seed)
{
    private readonly Random random = new(seed);
    private readonly double[] sorted = new double[stack.Lights];

    /// <summary>
    /// Relative rise of the noise of the stack, its standard error, and the noise with ideal darks and with these, e-.
    /// </summary>
    /// <remarks>
    /// Error: the loss is √(V′/V) − 1, and its variance over the places that of its derivative (delta method). Without
    /// rejection V′ = V + var(error); the variance of the error is the sum over the k positions, in
    /// which every rank of the pixels stands once and whose scatter is that of the masters only (a residual r with the
    /// noise v of its master: var((r + m)²) = 2v² + 4r²v), plus the products of different positions, whose mean
    /// is 0: their scatter over the places is the error.
    /// </remarks>
    internal (double Loss, double Error, double Ideal, double Real) Run()
    {
        Sample sample = Places();
        double before = Variance(sample.Ideal);
        if (stack.Clips)
        {
            double after = Variance(sample.Real),
                ratio = Math.Sqrt(after / before),
                m = sample.Ideal.Average(),
                n = sample.Real.Average();
            double[] influence =
            [
                .. sample.Ideal.Select(
                    (v, i) =>
                        ratio / 2 * ((sample.Real[i] - n) * (sample.Real[i] - n) / after - (v - m) * (v - m) / before)
                ),
            ];
            return (ratio - 1, Math.Sqrt(Variance(influence) / places), Math.Sqrt(before), Math.Sqrt(after));
        }
        double[] errors = [.. sample.Real.Select((r, i) => r - sample.Ideal[i])];
        double mean = errors.Average(),
            error = Variance(errors),
            rise = Math.Sqrt(1 + error / before),
            part = mean / stack.DitherPositions;
        // Σ(e_j − ē/k)² taken off
        double[] products =
        [
            .. errors.Select((e, i) => (e - mean) * (e - mean) - (sample.Squares[i] - 2 * part * e + part * mean)),
        ];
        double chance = Math.Sqrt((Variance(products) + sample.MasterChance) / places) / before;
        return (rise - 1, chance / (2 * rise), Math.Sqrt(before), Math.Sqrt(before + error));
    }

    /// <param name="Ideal">Places of the stack with ideal darks, e-.</param>
    /// <param name="Real">With these darks, e-.</param>
    /// <param name="Squares">Sum over the positions of what each adds to the error of the place, squared, e-².</param>
    /// <param name="MasterChance">Variance that the masters' noise gives these sums, e-⁴.</param>
    private sealed record Sample(double[] Ideal, double[] Real, double[] Squares, double MasterChance);

    private Sample Places()
    {
        (double Light, double Dark)[] ranks =
        [
            .. Enumerable.Range(0, places).Select(i => camera.Electrons((i + 0.5) / places, stack, darks)),
        ];
        int k = stack.DitherPositions;
        int[][] orders = [.. Enumerable.Range(0, k).Select(_ => Order())];
        double[] ideal = new double[places],
            real = new double[places],
            squares = new double[places],
            one = new double[stack.Lights],
            two = new double[stack.Lights];
        double chance = 0,
            usual = ranks.Average(r => Shown(r.Light) - Math.Min(r.Dark, camera.Well));
        for (int place = 0; place < places; place++)
        {
            double a = 0,
                b = 0;
            for (int j = 0; j < k; j++)
            {
                (double light, double dark) = ranks[orders[j][place]];
                double master = Sum(dark, darks.Frames, 0) / darks.Frames;
                if (!stack.Clips)
                {
                    int frames = (stack.Lights - j + k - 1) / k;
                    double sum = Sum(light, frames, stack.Sky.Value * stack.ExposureSeconds);
                    double weight = (double)frames / stack.Lights,
                        excess = Shown(light) - dark - usual,
                        noise =
                            weight
                            * weight
                            * (dark + camera.ReadNoise * camera.ReadNoise + camera.Gain * camera.Gain / 12)
                            / darks.Frames;
                    (a, b) = (a + sum - frames * Shown(light), b + sum - frames * master);
                    squares[place] += Math.Pow(weight * (Shown(light) - master), 2);
                    chance += 2 * noise * noise + 4 * weight * weight * excess * excess * noise;
                    continue;
                }
                for (int i = j; i < stack.Lights; i += k)
                {
                    double value = Sum(light, 1, stack.Sky.Value * stack.ExposureSeconds);
                    (one[i], two[i]) = (value - Shown(light), value - master);
                }
            }
            (ideal[place], real[place]) = stack.Clips
                ? (Clipped(one), Clipped(two))
                : (a / stack.Lights, b / stack.Lights);
        }
        return new Sample(ideal, real, squares, chance / places);
    }

    /// <summary>Dark electrons of a light that its full well leaves room for beside the sky.</summary>
    private double Shown(double light) => Math.Min(light, camera.Well - stack.Sky.Value * stack.ExposureSeconds);

    /// <summary>
    /// Sum of n reads of a pixel, e-: the codes' rounding enters with its variance of a twelfth of a step.
    /// </summary>
    private double Sum(double electrons, int frames, double sky) =>
        Math.Min(Poisson((electrons + sky) * frames), camera.Well * frames)
        + Math.Sqrt(frames * (camera.ReadNoise * camera.ReadNoise + camera.Gain * camera.Gain / 12))
            * SensorReader.Deviate(random);

    private double Poisson(double mean)
    {
        if (mean > 40)
            return Math.Max(mean + Math.Sqrt(mean) * SensorReader.Deviate(random), 0);
        double limit = Math.Exp(-mean),
            product = random.NextDouble();
        int count = 0;
        while (product > limit)
        {
            product *= random.NextDouble();
            count++;
        }
        return count;
    }

    private int[] Order()
    {
        int[] order = [.. Enumerable.Range(0, places)];
        random.Shuffle(order);
        return order;
    }

    private double Clipped(double[] samples)
    {
        samples.CopyTo(sorted, 0);
        Array.Sort(sorted);
        double median = Middle(sorted),
            sum = 0;
        for (int i = 0; i < samples.Length; i++)
            sorted[i] = Math.Abs(samples[i] - median);
        Array.Sort(sorted);
        double limit = stack.RejectionSigma * 1.482602218505602 * Middle(sorted);
        int kept = 0;
        foreach (double x in samples)
            if (Math.Abs(x - median) <= limit)
                (sum, kept) = (sum + x, kept + 1);
        return sum / kept;
    }

    private static double Middle(double[] sorted) => (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;

    private static double Variance(double[] values)
    {
        double mean = values.Average();
        return values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1);
    }
}
