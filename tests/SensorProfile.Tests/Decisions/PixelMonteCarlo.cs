using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.Tests.Decisions;

/// <summary>
/// The real procedure, pixel by pixel: lights and darks of a camera with its own rate in every pixel, calibrated,
/// shifted, stacked.
/// </summary>
/// <remarks>
/// Electrons are Poisson, the read noise normal, the codes rounded to whole ADU. Dithering over k positions: the
/// samples of one place of the sky come from k sensor
/// pixels, M/k each; sensor pixels being independent, the k pixels of a place are drawn at random. With rejection,
/// samples beyond c·1.4826·MAD from the median of a place are left out.
/// </remarks>
internal sealed class PixelMonteCarlo(Tarn camera, StackConditions stack, DarkFrames darks, int places, int seed)
{
    private const double Pedestal = 500; // e-
    private readonly Random random = new(seed);

    /// <summary>Standard deviation over the sky of the stack, e-; over all places.</summary>
    internal double StackNoise() => Deviation(Places());

    /// <summary>Robust standard deviation, e-: half the 68 % range, which the few hot places do not reach.</summary>
    internal double TypicalStackNoise()
    {
        double[] sorted = [.. Places().Order()];
        return (sorted[(int)(0.84134 * places)] - sorted[(int)(0.15866 * places)]) / 2;
    }

    /// <summary>
    /// The stack without the noise of the lights: the residual of the (ideal) darks alone, e-, one value per sensor
    /// pixel.
    /// </summary>
    internal double[] Residuals() =>
        [
            .. Enumerable
                .Range(0, places)
                .Select(i =>
                {
                    (double light, double dark) = Rates((i + 0.5) / places);
                    return light * stack.ExposureSeconds - dark * darks.ExposureSeconds;
                }),
        ];

    private double[] Places()
    {
        double[] values = new double[places];
        double[] samples = new double[stack.Lights];
        for (int place = 0; place < places; place++)
        {
            for (int position = 0; position < stack.DitherPositions; position++)
            {
                // ranks in a stratified order for the first position, random for the others: less scatter, same
                // expectation
                (double light, double dark) = Rates(
                    position == 0 ? (place + random.NextDouble()) / places : random.NextDouble()
                );
                double master = Mean(darks.Frames, dark * darks.ExposureSeconds);
                double bias = darks.Scaled ? Mean(darks.BiasFrames, 0) : 0;
                for (int i = position; i < stack.Lights; i += stack.DitherPositions)
                {
                    double value = Read((stack.Sky.Value + light) * stack.ExposureSeconds);
                    samples[i] = darks.Scaled ? value - bias - Scale() * (master - bias) : value - master;
                }
            }
            values[place] = stack.Clips ? Clipped(samples) : samples.Average();
        }
        return values;
    }

    private (double Light, double Dark) Rates(double rank)
    {
        double rate = camera.RateAt(rank),
            doubling = rank > 1 - camera.HotShare ? camera.HotDoubling : camera.Doubling;
        return (
            rate * Math.Pow(2, (stack.TemperatureCelsius - Tarn.Reference) / doubling),
            rate * Math.Pow(2, (darks.TemperatureCelsius - Tarn.Reference) / doubling)
        );
    }

    private double Scale() =>
        Math.Pow(2, (stack.TemperatureCelsius - darks.TemperatureCelsius) / camera.Doubling)
        * stack.ExposureSeconds
        / darks.ExposureSeconds;

    private double Mean(int frames, double electrons)
    {
        double sum = 0;
        for (int i = 0; i < frames; i++)
            sum += Read(electrons);
        return sum / frames;
    }

    private double Read(double electrons) =>
        camera.Gain
            * Math.Round(
                (Pedestal + Poisson(electrons) + camera.ReadNoise * SensorReader.Deviate(random)) / camera.Gain
            )
        - Pedestal;

    private double Poisson(double mean)
    {
        if (mean > 60)
            return Math.Max(Math.Round(mean + Math.Sqrt(mean) * SensorReader.Deviate(random)), 0);
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

    private double Clipped(double[] samples)
    {
        double[] sorted = [.. samples.Order()];
        double median = Middle(sorted),
            mad = Middle([.. samples.Select(x => Math.Abs(x - median)).Order()]);
        return samples.Where(x => Math.Abs(x - median) <= stack.RejectionSigma * 1.4826 * mad).Average();
    }

    private static double Middle(double[] sorted) => (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;

    private static double Deviation(double[] values)
    {
        double mean = values.Average();
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1));
    }
}
