using MathNet.Numerics.Distributions;

namespace SensorProfile.Decisions;

/// <summary>What a master dark leaves behind in a light, pixel class by pixel class: I_i(T)·t − s·I_i(T_d)·t_d, in e-.</summary>
internal sealed class DarkResidual
{
    private readonly SensorModel sensor;
    private readonly StackConditions lights;
    private readonly double sky;
    private readonly double lightGrowth;
    private readonly double darkGrowth;
    private readonly double darkExposure;
    private readonly double typical;

    /// <param name="sensor">The camera.</param>
    /// <param name="lights">The stack.</param>
    /// <param name="sky">Sky, e-/px/s (a random draw of it when uncertainties are propagated).</param>
    /// <param name="darkCelsius">Temperature of the darks, °C.</param>
    /// <param name="darkExposure">Their exposure, s.</param>
    /// <param name="scaled">Whether the master is scaled by the typical law.</param>
    internal DarkResidual(SensorModel sensor, StackConditions lights, double sky, double darkCelsius, double darkExposure, bool scaled)
    {
        (this.sensor, this.lights, this.sky, this.darkExposure) = (sensor, lights, sky, darkExposure);
        DarkCelsius = darkCelsius;
        lightGrowth = sensor.GrowthAt(lights.TemperatureCelsius);
        darkGrowth = sensor.GrowthAt(darkCelsius);
        Scale = scaled ? lightGrowth * lights.ExposureSeconds / (darkGrowth * darkExposure) : 1;
        typical = sensor.Law.RateAt(lights.TemperatureCelsius) * lights.ExposureSeconds
            - Scale * sensor.Law.RateAt(darkCelsius) * darkExposure;
        TypicalNoise = PixelNoise.OfLight(sensor, sky * lights.ExposureSeconds,
            sensor.Law.RateAt(lights.TemperatureCelsius) * lights.ExposureSeconds);
    }

    internal double DarkCelsius { get; }

    /// <summary>s.</summary>
    internal double Scale { get; }

    /// <summary>Residual of a class, e-, before the stack rejects anything.</summary>
    internal double Of(PixelClass pixel) =>
        pixel.RateAt(lightGrowth) * lights.ExposureSeconds - Scale * pixel.RateAt(darkGrowth) * darkExposure;

    /// <summary>Electrons of a class in one light and in one dark.</summary>
    internal (double Light, double Dark) Electrons(PixelClass pixel) =>
        (pixel.RateAt(lightGrowth) * lights.ExposureSeconds, pixel.RateAt(darkGrowth) * darkExposure);

    /// <summary>What a class contributes to the stack on average, e-, after rejection.</summary>
    /// <remarks>
    /// A sample x ~ N(r, σ²) is kept when it lies within ±L of the samples around it, L = c·σ of the typical pixel; what is left of r is
    /// E[x; kept] = r·(Φ(b) − Φ(a)) − σ·(φ(b) − φ(a)), a = (−L − r)/σ, b = (L − r)/σ. The level that all pixels share is no outlier, so r counts from the
    /// typical residual. With fewer than three positions the stack cannot tell which sample is the wrong one.
    /// </remarks>
    internal double Kept(PixelClass pixel)
    {
        double residual = Of(pixel);
        if (!lights.RejectsOutliers || lights.DitherPositions < 3) return residual;
        double excess = residual - typical, light = pixel.RateAt(lightGrowth) * lights.ExposureSeconds;
        double limit = lights.RejectionSigma * Math.Sqrt(TypicalNoise.Random);
        double own = Math.Sqrt(PixelNoise.OfLight(sensor, sky * lights.ExposureSeconds, Math.Max(light, 0)).Random);
        double a = (-limit - excess) / own, b = (limit - excess) / own;
        return typical + excess * (Normal.CDF(0, 1, b) - Normal.CDF(0, 1, a)) - own * (Normal.PDF(0, 1, b) - Normal.PDF(0, 1, a));
    }

    /// <summary>The random noise of the typical pixel in one light.</summary>
    internal PixelNoise TypicalNoise { get; }

    /// <summary>Noise of the typical pixel of the stack, e-, from what is new in each light.</summary>
    internal double StackNoise => Math.Sqrt(TypicalNoise.Random / lights.Lights);

    /// <summary>Mean and standard deviation over pixels of what is left in the stack before dithering, e-.</summary>
    internal (double Mean, double Spread) Pattern(bool withHotPixels)
    {
        double weight = 0, sum = 0, squares = 0;
        foreach (PixelClass pixel in sensor.Pixels!.Classes)
        {
            if (pixel.Hot && !withHotPixels) continue;
            double kept = Kept(pixel);
            weight += pixel.Weight;
            sum += pixel.Weight * kept;
            squares += pixel.Weight * kept * kept;
        }
        double mean = sum / weight;
        return (mean, Math.Sqrt(Math.Max(squares / weight - mean * mean, 0)));
    }

    /// <summary>Share of the pixels whose residual, from the typical one, exceeds a limit after dithering.</summary>
    internal double ShareBeyond(double limit)
    {
        double share = 0, reduction = Math.Sqrt(lights.DitherPositions);
        foreach (PixelClass pixel in sensor.Pixels!.Classes)
            if (Math.Abs(Kept(pixel) - typical) > limit * reduction) share += pixel.Weight;
        return share;
    }

    /// <summary>Mean residual of all pixels, e-; of the typical pixel when the distribution is not known.</summary>
    internal double Level()
    {
        if (sensor.Pixels is null) return typical;
        double sum = 0;
        foreach (PixelClass pixel in sensor.Pixels.Classes) sum += pixel.Weight * Of(pixel);
        return sum;
    }

    /// <summary>Residual at the peak of the glow, e-; 0 without glow.</summary>
    internal double GlowPeak() => sensor.Glow is not { } glow ? 0
        : glow.ElectronsAt(lights.TemperatureCelsius, lights.ExposureSeconds, sensor) - Scale * glow.ElectronsAt(DarkCelsius, darkExposure, sensor);
}
