using MathNet.Numerics.Distributions;

namespace SensorProfile.Decisions;

/// <summary>What a master dark leaves behind in a light, pixel class by pixel class: I_i(T)·t − s·I_i(T_d)·t_d, in e-.</summary>
internal sealed class DarkResidual
{
    private readonly SensorModel sensor;
    private readonly StackConditions lights;
    private readonly double sky;
    private readonly IReadOnlyList<double>? lightElectrons;
    private readonly Growth darkGrowth;
    private readonly double darkExposure;
    private readonly double typical;

    /// <param name="sensor">The camera.</param>
    /// <param name="lights">The stack.</param>
    /// <param name="sky">Sky, e-/px/s (a random draw of it when uncertainties are propagated).</param>
    /// <param name="darkCelsius">Temperature of the darks, °C.</param>
    /// <param name="darkExposure">Their exposure, s.</param>
    /// <param name="scaled">Whether the master is scaled by the typical law.</param>
    /// <param name="lightElectrons">From <see cref="ElectronsInLight"/>, to compute them once for many darks; null computes them here.</param>
    internal DarkResidual(SensorModel sensor, StackConditions lights, double sky, double darkCelsius, double darkExposure, bool scaled, IReadOnlyList<double>? lightElectrons = null)
    {
        (this.sensor, this.lights, this.sky, this.darkExposure) = (sensor, lights, sky, darkExposure);
        DarkCelsius = darkCelsius;
        this.lightElectrons = lightElectrons ?? ElectronsInLight(sensor, lights);
        darkGrowth = sensor.GrowthAt(darkCelsius);
        Scale = scaled ? sensor.Law.RateAt(lights.TemperatureCelsius) * lights.ExposureSeconds / (sensor.Law.RateAt(darkCelsius) * darkExposure) : 1;
        typical = sensor.Law.RateAt(lights.TemperatureCelsius) * lights.ExposureSeconds
            - Scale * sensor.Law.RateAt(darkCelsius) * darkExposure;
        TypicalNoise = PixelNoise.OfLight(sensor, sky * lights.ExposureSeconds,
            sensor.Law.RateAt(lights.TemperatureCelsius) * lights.ExposureSeconds);
    }

    internal double DarkCelsius { get; }

    /// <summary>s.</summary>
    internal double Scale { get; }

    /// <summary>Electrons of every class in one light; null without a distribution.</summary>
    internal static IReadOnlyList<double>? ElectronsInLight(SensorModel sensor, StackConditions lights)
    {
        Growth growth = sensor.GrowthAt(lights.TemperatureCelsius);
        return sensor.Pixels is null ? null : [.. sensor.Pixels.Classes.Select(pixel => pixel.RateAt(growth) * lights.ExposureSeconds)];
    }

    /// <summary>Residual of a class, e-, before the stack rejects anything.</summary>
    internal double Of(int pixel) => lightElectrons![pixel] - Scale * sensor.Pixels!.Classes[pixel].RateAt(darkGrowth) * darkExposure;

    /// <summary>Electrons of a class in one light and in one dark.</summary>
    internal (double Light, double Dark) Electrons(int pixel) => (lightElectrons![pixel], sensor.Pixels!.Classes[pixel].RateAt(darkGrowth) * darkExposure);

    /// <summary>What a class contributes to the stack on average, e-, after rejection.</summary>
    /// <remarks>
    /// A sample x ~ N(r, σ²) is kept when it lies within ±L of the samples around it, L = c·σ of the typical pixel; what is left of r is
    /// E[x; kept] = r·(Φ(b) − Φ(a)) − σ·(φ(b) − φ(a)), a = (−L − r)/σ, b = (L − r)/σ. The level that all pixels share is no outlier, so r counts from the
    /// typical residual. With fewer than three positions the stack cannot tell which sample is the wrong one.
    /// </remarks>
    internal double Kept(int pixel)
    {
        double residual = Of(pixel);
        if (!lights.RejectsOutliers || lights.DitherPositions < 3) return residual;
        double excess = residual - typical, light = lightElectrons![pixel];
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
        for (int i = 0; i < sensor.Pixels!.Classes.Count; i++)
        {
            PixelClass pixel = sensor.Pixels.Classes[i];
            if (pixel.Hot && !withHotPixels) continue;
            double kept = Kept(i);
            weight += pixel.Weight;
            sum += pixel.Weight * kept;
            squares += pixel.Weight * kept * kept;
        }
        double mean = sum / weight;
        return (mean, Math.Sqrt(Math.Max(squares / weight - mean * mean, 0)));
    }

    /// <summary>Share of the pixels whose residual, from the typical one, exceeds a limit in the stack; see <see cref="DitheredShare"/> for a dithered one.</summary>
    internal double ShareBeyond(double limit)
    {
        IReadOnlyList<PixelClass> classes = sensor.Pixels!.Classes;
        if (lights.DitherPositions > 1)
            return DitheredShare.Beyond([.. classes.Select((pixel, i) => (pixel.Weight, Kept(i) - typical, pixel.Hot))], lights.DitherPositions, limit);
        double share = 0;
        for (int i = 0; i < classes.Count; i++)
            if (Math.Abs(Kept(i) - typical) > limit) share += classes[i].Weight;
        return share;
    }

    /// <summary>Mean residual of all pixels, e-; of the typical pixel when the distribution is not known.</summary>
    internal double Level()
    {
        if (sensor.Pixels is null) return typical;
        double sum = 0;
        for (int i = 0; i < sensor.Pixels.Classes.Count; i++) sum += sensor.Pixels.Classes[i].Weight * Of(i);
        return sum;
    }

    /// <summary>Residual at the peak of the glow, e-; 0 without glow.</summary>
    internal double GlowPeak() => sensor.Glow is not { } glow ? 0
        : glow.ElectronsAt(lights.TemperatureCelsius, lights.ExposureSeconds, sensor) - Scale * glow.ElectronsAt(DarkCelsius, darkExposure, sensor);
}
