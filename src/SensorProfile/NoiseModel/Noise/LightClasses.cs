using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>What one light of a stack holds, pixel class by pixel class: computed once for all darks.</summary>
internal sealed class LightClasses
{
    private readonly SensorModel sensor;
    private readonly double[] rates = [],
        held = [],
        deviations = [];
    private readonly bool[] full = [];

    /// <param name="sensor">The camera.</param>
    /// <param name="lights">The stack.</param>
    /// <param name="sky">Sky, e-/px/s.</param>
    internal LightClasses(SensorModel sensor, StackConditions lights, double sky)
    {
        this.sensor = sensor;
        (Lights, Sky) = (lights, sky);
        SkyElectrons = sky * lights.ExposureSeconds;
        TypicalRate = sensor.Law.RateAt(lights.TemperatureCelsius);
        TypicalNoise = PixelNoise.OfLight(sensor, SkyElectrons, TypicalRate * lights.ExposureSeconds);
        if (sensor.Pixels is not { } pixels)
            return;
        rates = pixels.RatesAt(sensor.GrowthAt(lights.TemperatureCelsius, lights.ExposureSeconds));
        (held, full) = (new double[rates.Length], new bool[rates.Length]);
        if (lights.Clips)
        {
            Clip = ClippedMean.Find(lights.Lights, lights.DitherPositions, lights.RejectionSigma, lights.Rejection);
            deviations = new double[rates.Length];
        }
        for (int i = 0; i < rates.Length; i++)
        {
            double electrons = rates[i] * lights.ExposureSeconds;
            held[i] = Math.Min(electrons, sensor.FullWell - SkyElectrons);
            full[i] = electrons + SkyElectrons >= sensor.FullWell;
            if (Clip is not null)
                deviations[i] = Math.Sqrt(
                    TypicalNoise.Read
                        + TypicalNoise.Quantisation
                        + (full[i] ? 0 : TypicalNoise.Sky + Math.Max(electrons, 0))
                );
        }
    }

    /// <summary>The stack.</summary>
    internal StackConditions Lights { get; }

    /// <summary>Sky, e-/px/s.</summary>
    internal double Sky { get; }

    /// <summary>Electrons from the sky, S·t, e-.</summary>
    internal double SkyElectrons { get; }

    /// <summary>Rate of the typical pixel at the temperature of the lights, e-/px/s.</summary>
    internal double TypicalRate { get; }

    /// <summary>The random noise of the typical pixel in one light.</summary>
    internal PixelNoise TypicalNoise { get; }

    /// <summary>How the stack rejects outliers; null when it does not, or without a distribution.</summary>
    internal ClippedMean? Clip { get; }

    /// <summary>Dark electrons beside the sky, up to the full well.</summary>
    internal ReadOnlySpan<double> Held => held;

    /// <summary>Whether sky and dark current fill the pixels: their electrons then no longer vary.</summary>
    internal ReadOnlySpan<bool> Full => full;

    /// <summary>Standard deviation of one sample, e-; only for a stack that rejects outliers.</summary>
    internal ReadOnlySpan<double> Deviations => deviations;

    /// <summary>Rates of the classes at another temperature and exposure, e-/px/s.</summary>
    internal double[] RatesAt(double celsius, double exposureSeconds, bool withHotPixels) =>
        celsius == Lights.TemperatureCelsius && exposureSeconds == Lights.ExposureSeconds
            ? rates
            : sensor.Pixels!.RatesAt(sensor.GrowthAt(celsius, exposureSeconds), withHotPixels);

    /// <summary>What the glow adds to one light in a group of the classes, e-.</summary>
    internal double GlowElectrons(PixelGroup group) =>
        group.Glow == 0
            ? 0
            : group.Glow
                * sensor.GrowthAt(Lights.TemperatureCelsius, Lights.ExposureSeconds).Glow
                * Lights.ExposureSeconds;
}
