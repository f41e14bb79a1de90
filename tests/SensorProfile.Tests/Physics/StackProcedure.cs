using SensorProfile.NoiseModel;
using SensorProfile.Simulation;

namespace SensorProfile.Tests.Physics;

/// <summary>
/// A stack of lights done sample by sample: k sensor pixels of one neighbourhood meet at a place, M/k lights each, darks
/// of another temperature taken off, outliers rejected.
/// </summary>
/// <remarks>
/// The residual of a place is the stack with these darks minus the stack of the same lights with ideal ones; it counts from
/// the residual of the typical pixel (the median of the map). Masters are free of noise, as where many darks are at hand:
/// the tolerance asks what the mismatch leaves. Samples are normal: at the hundreds of electrons of a light's sky Poisson
/// counts are. Written apart from the library's.
/// </remarks>
internal sealed class StackProcedure(
    StackConditions stack,
    CameraDescription camera,
    float[] lightRates,
    int places,
    int seed
)
{
    private const int Reach = 8; // px that a dither moves

    internal double ShareBeyond(float[] darkRates, double times)
    {
        double t = stack.ExposureSeconds,
            typical = Median([.. lightRates.Select((r, i) => (r - darkRates[i]) * t)]);
        double electronics = camera.ReadNoise * camera.ReadNoise + camera.Gain * camera.Gain / 12,
            usual = Math.Sqrt(stack.Sky.Value * t + Median([.. lightRates.Select(r => (double)r)]) * t + electronics),
            limit = times * usual / Math.Sqrt(stack.Lights);
        var random = new Random(seed);
        int k = stack.DitherPositions,
            beyond = 0;
        int[] pixels = new int[k];
        double[] excess = new double[k],
            ideal = new double[stack.Lights],
            real = new double[stack.Lights];
        for (int place = 0; place < places; place++)
        {
            int centre = random.Next(lightRates.Length);
            for (int j = 0; j < k; j++)
                pixels[j] = j == 0 ? centre : Near(centre, pixels.AsSpan(0, j), random);
            double largest = 0,
                sum = 0;
            for (int j = 0; j < k; j++)
            {
                excess[j] = (lightRates[pixels[j]] - darkRates[pixels[j]]) * t - typical;
                largest = Math.Max(largest, Math.Abs(excess[j]));
                sum += excess[j];
            }
            if (largest <= limit) // a mean of what stays below a limit stays below it
                continue;
            if (stack.Rejection == Rejection.None || k < 2)
            {
                beyond += Math.Abs(sum / k) > limit ? 1 : 0;
                continue;
            }
            for (int i = 0; i < stack.Lights; i++)
            {
                int j = i % k;
                ideal[i] =
                    Math.Sqrt(stack.Sky.Value * t + Math.Max(lightRates[pixels[j]], 0) * t + electronics)
                    * Normal(random);
                real[i] = ideal[i] + excess[j];
            }
            beyond += Math.Abs(Stacked(real) - Stacked(ideal)) > limit ? 1 : 0;
        }
        return beyond / (double)places;
    }

    /// <summary>Another pixel of the neighbourhood: k dither positions are k pixels.</summary>
    private int Near(int centre, Span<int> taken, Random random)
    {
        while (true)
        {
            int x = Math.Clamp(centre % camera.Width + random.Next(-Reach, Reach + 1), 0, camera.Width - 1),
                y = Math.Clamp(centre / camera.Width + random.Next(-Reach, Reach + 1), 0, camera.Height - 1),
                pixel = y * camera.Width + x;
            if (!taken.Contains(pixel))
                return pixel;
        }
    }

    private double Stacked(double[] samples)
    {
        double middle = Median(samples);
        if (stack.Rejection == Rejection.Median)
            return middle;
        double limit =
            stack.RejectionSigma * 1.482602218505602 * Median([.. samples.Select(s => Math.Abs(s - middle))]);
        return stack.Rejection == Rejection.Winsorised
            ? samples.Average(s => Math.Clamp(s, middle - limit, middle + limit))
            : samples.Where(s => Math.Abs(s - middle) <= limit).DefaultIfEmpty(middle).Average();
    }

    private static double Median(double[] values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
