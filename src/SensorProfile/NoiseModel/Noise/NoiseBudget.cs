using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>The noise of one calibrated light and of a stack of them.</summary>
/// <remarks>
/// One light, per pixel: N² = (S + I + G)·t + R² + q² + s²·N_d²/n + (1 − s)²·(R² + q²)/n_bias. A stack of M lights over
/// k dither positions:
/// N²/M for what is new in every light, 1/k for what the masters add, because every light carries it on the same sensor
/// pixel; and the spread of the
/// dark residual over the pixels, squared, by 1/k. Pixels that jump between levels: <see cref="FlickerNoise"/>, in the
/// noise of all pixels. The flat's own noise is left out: it belongs to bright targets.
/// </remarks>
public static class NoiseBudget
{
    private static readonly double[] ranks = [0.1, 0.5, 0.9, 0.99, 0.999, 0.9999];

    /// <summary>The budget, with its uncertainties.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="stack">The lights.</param>
    /// <param name="darks">The darks; null for ideal ones (many frames, same temperature and exposure).</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the profile cannot answer it.</exception>
    public static NoiseBudgetAnswer Compute(
        CameraProfile profile,
        ModeProfile mode,
        StackConditions stack,
        DarkFrames? darks = null
    )
    {
        Guard.Conditions(stack);
        if (darks is not null)
            Guard.Darks(darks);
        var reader = SensorReader.Of(profile, mode);
        List<Finding> findings =
        [
            .. reader.Notes,
            .. Guard.Exposure(reader, stack.ExposureSeconds),
            .. Guard.Temperature(reader, stack.TemperatureCelsius, "temperature of the lights"),
        ];
        if (darks is not null)
            findings.AddRange(Guard.Temperature(reader, darks.TemperatureCelsius, "temperature of the darks"));
        StackNoise best = StackNoise.Of(reader.Best, stack, stack.Sky.Value, darks);
        Propagation.Spread[] spreads = Propagation.Through(reader, stack.Sky, (model, sky) =>
            Numbers(StackNoise.Of(model, stack, sky, darks))
        );
        var quantities = new QuantityList();
        double?[] numbers = Numbers(best);
        string[] names = ["subNoise", "stackNoise", "stackNoiseAllPixels", "mismatchSpread"];
        for (int i = 0; i < names.Length; i++)
            quantities.Add(names[i], numbers[i], "e-", "noise budget, uncertainties drawn", spreads[i]);
        if (best.AllPixels is null)
            findings.Add(Missing.Distribution("the noise of all pixels is not known"));
        findings.AddRange(
            FlickerRanks.Findings(reader, stack.Sky.Value, stack.ExposureSeconds, stack.TemperatureCelsius)
        );
        NoiseTerm[] terms = Terms(best, stack, [.. spreads.Skip(names.Length)]);
        return new NoiseBudgetAnswer
        {
            Sentence =
                $"One light has {Said.Number(Math.Sqrt(best.Typical.Sub), 2)} e⁻ of noise in the typical pixel, "
                + $"most of it from the {terms[0].Name}.",
            Reason =
                $"The {terms[0].Name} is {Said.Percent(terms[0].ShareOfSub)} of the variance of one light; the "
                + $"stack of {Said.Whole(stack.Lights)} has {Said.Number(Math.Sqrt(best.TypicalStack), 2)} e⁻.",
            Verdict = "answered",
            Quantities = quantities.Quantities,
            Intervals = quantities.Intervals,
            Findings = findings,
            Terms = terms,
            Pixels = Pixels(reader.Best, stack, darks),
            Flicker = FlickerRanks.Of(reader.Best, stack.Sky.Value, stack.ExposureSeconds, stack.TemperatureCelsius),
        };
    }

    private static double?[] Numbers(StackNoise noise) =>
        [
            Math.Sqrt(noise.Typical.Sub),
            Math.Sqrt(noise.TypicalStack),
            noise.AllPixels is double all ? Math.Sqrt(all) : null,
            noise.ResidualSpread,
            Math.Sqrt(noise.Typical.Sky),
            Math.Sqrt(noise.Typical.Dark),
            Math.Sqrt(noise.GlowVariance),
            Math.Sqrt(noise.Typical.Read),
            Math.Sqrt(noise.Typical.Quantisation),
            Math.Sqrt(noise.Typical.MasterDark),
            Math.Sqrt(noise.Typical.MasterBias),
        ];

    private static NoiseTerm[] Terms(StackNoise noise, StackConditions stack, Propagation.Spread[] spreads)
    {
        PixelNoise pixel = noise.Typical;
        double residual = noise.ResidualSpread is double r ? r * r : 0,
            sub = pixel.Sub + residual;
        double whole = noise.TypicalStack + residual / stack.DitherPositions;
        NoiseTerm Of(string name, double variance, double divisor, double spread) =>
            new(
                name,
                new Measurement(Math.Sqrt(variance), spread, "e-", 1, "noise budget of the typical pixel"),
                variance / sub,
                variance / divisor / whole
            );
        return
        [
            .. new[]
            {
                Of("sky", pixel.Sky, stack.Lights, spreads[0].StandardDeviation),
                Of("dark current", pixel.Dark, stack.Lights, spreads[1].StandardDeviation),
                Of("read noise", pixel.Read, stack.Lights, spreads[3].StandardDeviation),
                Of("quantisation", pixel.Quantisation, stack.Lights, spreads[4].StandardDeviation),
                Of("master dark", pixel.MasterDark, stack.DitherPositions, spreads[5].StandardDeviation),
                Of("master bias", pixel.MasterBias, stack.DitherPositions, spreads[6].StandardDeviation),
                Of("mismatch of the darks", residual, stack.DitherPositions, 0),
            }.OrderByDescending(t => t.ShareOfSub),
        ];
    }

    private static List<NoiseAtRank> Pixels(SensorModel sensor, StackConditions stack, DarkFrames? darks)
    {
        var rows = new List<NoiseAtRank>();
        foreach (double share in ranks)
        {
            if (sensor.RateOfRank(share, stack.TemperatureCelsius, stack.ExposureSeconds) is not double rate)
                continue;
            double inDark = darks is null
                ? 0
                : sensor.RateOfRank(share, darks.TemperatureCelsius, darks.ExposureSeconds)!.Value
                    * darks.ExposureSeconds;
            PixelNoise noise = StackNoise.OfPixel(
                sensor,
                stack,
                stack.Sky.Value,
                rate * stack.ExposureSeconds,
                inDark,
                darks
            );
            rows.Add(new NoiseAtRank(share, rate, Math.Sqrt(noise.Sub), Math.Sqrt(noise.Stack(stack))));
        }
        return rows;
    }
}
