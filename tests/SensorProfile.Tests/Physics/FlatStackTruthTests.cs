using SensorProfile.Decisions.FlatPlan;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Tests.Decisions;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Physics;

/// <summary>
/// What a master flat costs a stack, pixel by pixel: flats and dark flats are drawn and averaged, lights are drawn and
/// calibrated by them and by a perfect flat, shifted by the dither and stacked. Written apart from the library's
/// arithmetic: nothing of it is used but the answer that is judged.
/// </summary>
public sealed class FlatStackTruthTests(ITestOutputHelper output)
{
    // the variance of the difference is known to √(2/100000) = 0.4 %, its cost too; the rise of a variance by r of itself
    // to 2√(r/100000): for the dithered stacks that reject (r = 0.05 and more) to 3 %
    private const int Pixels = 100_000;
    private const double ReadNoise = 1.5,
        DarkRate = 0.006, // e-/px/s at −10 °C
        Well = 50_000,
        Seconds = 300;

    // dark, suburban and narrow-band skies, e-/px/s; 40 lights, 20 flats at half of the full well
    [Theory]
    [InlineData(0.71, 1, Rejection.None, 0.5, 20)]
    [InlineData(0.71, 8, Rejection.None, 0.5, 20)]
    [InlineData(4.5, 1, Rejection.None, 0.5, 20)]
    [InlineData(4.5, 8, Rejection.None, 0.5, 20)]
    [InlineData(0.088, 1, Rejection.None, 0.5, 20)]
    [InlineData(0.088, 8, Rejection.None, 0.5, 20)]
    [InlineData(4.5, 20, Rejection.SigmaClip, 0.05, 20)] // ten times the cost, so that the rise of a variance shows it
    [InlineData(4.5, 8, Rejection.Median, 0.05, 20)]
    [InlineData(4.5, 8, Rejection.Winsorised, 0.05, 20)]
    [InlineData(4.5, 1, Rejection.SigmaClip, 0.5, 20)]
    [InlineData(4.5, 1, Rejection.Median, 0.5, 20)]
    [InlineData(4.5, 1, Rejection.None, 0.002, 20)] // so faint that read noise counts in the flats
    public void TheCostIsThatOfTheStackPixelByPixel(
        double sky,
        int positions,
        Rejection rejection,
        double level,
        int flats
    )
    {
        FlatPlanAnswer answer = Ask(sky, positions, rejection, level);
        double told = answer.Quantities["lossAt20Flats"]!.Value;
        double true_ = 100 * TrueLoss(sky, positions, rejection, level * Well, flats, pattern: 0, seed: 17);
        output.WriteLine(
            $"{sky} e-/px/s, {positions} positions, {rejection}, {100 * level} %: told {told:0.####} %, true {true_:0.####} %"
        );
        Assert.InRange(told / true_, 0.9, 1.1);
    }

    [Fact] // the number advised keeps the loss, one tenth fewer does not
    public void TheAdvisedNumberIsTheSmallest()
    {
        FlatPlanAnswer answer = Ask(4.5, 1, Rejection.None, null);
        Assert.Equal(FlatPlanVerdict.Answered, answer.Verdict);
        double with = TrueLoss(4.5, 1, Rejection.None, answer.Level.Electrons, answer.Flats, 0, 5),
            fewer = TrueLoss(4.5, 1, Rejection.None, answer.Level.Electrons, (int)(0.88 * answer.Flats), 0, 5);
        output.WriteLine($"{answer.Flats} flats: {with:P2}; a few less: {fewer:P2}");
        Assert.InRange(with, 0.043, 0.0515);
        Assert.InRange(fewer, 0.05, 0.06);
    }

    [Theory] // the flat-field residual adds to the noise of the master, 0.1 % of the signal
    [InlineData(1)]
    [InlineData(8)]
    public void WhatFlatsLeaveCountsToo(int positions)
    {
        const double left = 0.001;
        FlatPlanAnswer answer = Ask(4.5, positions, Rejection.None, 0.5, left);
        double told = answer.Quantities["lossAt20Flats"]!.Value,
            true_ = 100 * TrueLoss(4.5, positions, Rejection.None, 0.5 * Well, 20, left, 23);
        output.WriteLine($"{positions} positions: told {told:0.###} %, true {true_:0.###} %");
        Assert.InRange(told / true_, 0.9, 1.1);
    }

    private static FlatPlanAnswer Ask(
        double sky,
        int positions,
        Rejection rejection,
        double? level,
        double patternLeft = 0
    )
    {
        var camera = new Tarn
        {
            HotShare = 0,
            LogSpread = 0,
            ReadNoise = ReadNoise,
            Well = Well,
            Gain = 0.1, // rounding counts for nothing
        };
        return FlatPlanAdvice.Find(
            camera.Profile(),
            camera.Mode() with
            {
                FlatResidual = patternLeft > 0 ? camera.Of(100 * patternLeft, "%") : null,
            },
            new FlatPlanQuestion
            {
                ExposureSeconds = Seconds,
                Lights = 40,
                TemperatureCelsius = -10,
                DitherPositions = positions,
                Rejection = rejection,
                Sky = SkyRate.Given(sky),
                Level = level,
            }
        );
    }

    /// <summary>Rise of the stack's noise by the master flat.</summary>
    private static double TrueLoss(
        double sky,
        int positions,
        Rejection rejection,
        double flatElectrons,
        int flats,
        double pattern,
        int seed
    )
    {
        const int lights = 40;
        var random = new Random(seed);
        double[] master = MasterFlat(flatElectrons, flats, pattern, random);
        double light = sky * Seconds,
            dark = DarkRate * Seconds,
            sumReal = 0,
            sumIdeal = 0,
            sumDifference = 0,
            squaresReal = 0,
            squaresIdeal = 0,
            squaresDifference = 0;
        double[] real = new double[lights],
            ideal = new double[lights];
        for (int place = 0; place < Pixels; place++)
        {
            for (int i = 0; i < lights; i++)
            {
                // a dither far enough that positions share no pixel
                int pixel = (place + i % positions * 977) % Pixels;
                double calibrated = Poisson(light + dark, random) + ReadNoise * Normal(random) - dark;
                ideal[i] = calibrated;
                real[i] = calibrated / master[pixel];
            }
            double one = Stacked(real, rejection),
                other = Stacked(ideal, rejection);
            sumReal += one;
            sumIdeal += other;
            sumDifference += one - other;
            squaresReal += one * one;
            squaresIdeal += other * other;
            squaresDifference += (one - other) * (one - other);
        }
        double noise = squaresIdeal / Pixels - Math.Pow(sumIdeal / Pixels, 2),
            // where the pattern decides what is rejected, the difference goes with the noise
            added = rejection == Rejection.None || positions == 1
                ? squaresDifference / Pixels - Math.Pow(sumDifference / Pixels, 2)
                : squaresReal / Pixels - Math.Pow(sumReal / Pixels, 2) - noise;
        return Math.Sqrt(1 + added / noise) - 1;
    }

    /// <summary>Mean of the flats less the mean of as many dark flats, over its own mean.</summary>
    private static double[] MasterFlat(double electrons, int flats, double pattern, Random random)
    {
        double[] master = new double[Pixels];
        for (int i = 0; i < Pixels; i++)
        {
            double seen = electrons * (1 + pattern * Normal(random));
            for (int n = 0; n < flats; n++)
                master[i] += Poisson(seen, random) + ReadNoise * Normal(random) - ReadNoise * Normal(random);
        }
        double mean = master.Average();
        return [.. master.Select(m => m / mean)];
    }

    private static double Stacked(double[] samples, Rejection rejection)
    {
        if (rejection == Rejection.None)
            return samples.Average();
        double middle = Median(samples);
        if (rejection == Rejection.Median)
            return middle;
        double limit = 3 * 1.482602218505602 * Median([.. samples.Select(s => Math.Abs(s - middle))]);
        return rejection == Rejection.Winsorised
            ? samples.Average(s => Math.Clamp(s, middle - limit, middle + limit))
            : samples.Where(s => Math.Abs(s - middle) <= limit).Average();
    }

    private static double Median(double[] values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    // Knuth's product of uniform numbers where it is short, else the normal limit
    private static double Poisson(double mean, Random random)
    {
        if (mean > 60)
            return mean + Math.Sqrt(mean) * Normal(random);
        double end = Math.Exp(-mean),
            product = random.NextDouble();
        int count = 0;
        for (; product > end; count++)
            product *= random.NextDouble();
        return count;
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
