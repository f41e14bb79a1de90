using SensorProfile.Fitting.Statistics;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// What a master dark leaves behind in a light, pixel class by pixel class: I_i(T)·t − s·I_i(T_d)·t_d, in e-.
/// </summary>
internal sealed class DarkResidual
{
    private readonly SensorModel sensor;
    private readonly StackConditions lights;
    private readonly double sky;
    private readonly IReadOnlyList<double>? lightElectrons;
    private readonly Growth darkGrowth;
    private readonly double darkExposure;
    private readonly double typical;
    private readonly ClippedMean? clip;
    private double[]? darkElectrons; // one dark, class by class; worked out when first asked for
    private readonly double centre,
        unit;

    /// <param name="sensor">The camera.</param>
    /// <param name="lights">The stack.</param>
    /// <param name="sky">Sky, e-/px/s (a random draw of it when uncertainties are propagated).</param>
    /// <param name="darkCelsius">Temperature of the darks, °C.</param>
    /// <param name="darkExposure">Their exposure, s.</param>
    /// <param name="scaled">Whether the master is scaled by the typical law.</param>
    /// <param name="lightElectrons">From <see cref="ElectronsInLight"/>, to compute them once for many darks; null
    /// computes them here.</param>
    internal DarkResidual(
        SensorModel sensor,
        StackConditions lights,
        double sky,
        double darkCelsius,
        double darkExposure,
        bool scaled,
        IReadOnlyList<double>? lightElectrons = null
    )
    {
        (this.sensor, this.lights, this.sky, this.darkExposure) = (sensor, lights, sky, darkExposure);
        DarkCelsius = darkCelsius;
        this.lightElectrons = lightElectrons ?? ElectronsInLight(sensor, lights);
        darkGrowth = sensor.GrowthAt(darkCelsius);
        Scale = scaled
            ? sensor.Law.RateAt(lights.TemperatureCelsius)
                * lights.ExposureSeconds
                / (sensor.Law.RateAt(darkCelsius) * darkExposure)
            : 1;
        typical =
            sensor.Law.RateAt(lights.TemperatureCelsius) * lights.ExposureSeconds
            - Scale * sensor.Law.RateAt(darkCelsius) * darkExposure;
        TypicalNoise = PixelNoise.OfLight(
            sensor,
            sky * lights.ExposureSeconds,
            sensor.Law.RateAt(lights.TemperatureCelsius) * lights.ExposureSeconds
        );
        if (lights.Clips && sensor.Pixels is { } pixels)
        {
            clip = ClippedMean.Of(lights.Lights, lights.DitherPositions, lights.RejectionSigma);
            centre = Of(pixels.Middle);
            double spread =
                (Of(pixels.UpperQuartile) - Of(pixels.LowerQuartile)) * OrderStatistics.InterquartileToSigma;
            unit = Math.Sqrt(TypicalNoise.Random + spread * spread);
        }
    }

    internal double DarkCelsius { get; }

    /// <summary>s.</summary>
    internal double Scale { get; }

    /// <summary>Electrons of every class in one light; null without a distribution.</summary>
    internal static IReadOnlyList<double>? ElectronsInLight(SensorModel sensor, StackConditions lights)
    {
        Growth growth = sensor.GrowthAt(lights.TemperatureCelsius);
        return sensor.Pixels is null
            ? null
            : [.. sensor.Pixels.Classes.Select(pixel => pixel.RateAt(growth) * lights.ExposureSeconds)];
    }

    /// <summary>
    /// Residual of a class, e-, before the stack rejects anything; a pixel that is full holds no more than its full
    /// well.
    /// </summary>
    internal double Of(int pixel)
    {
        (double light, double dark) = Electrons(pixel);
        return light - Scale * dark;
    }

    /// <summary>
    /// Dark electrons of a class that one light and one dark show: beside the sky, up to the full well.
    /// </summary>
    internal (double Light, double Dark) Electrons(int pixel) =>
        (
            Math.Min(lightElectrons![pixel], sensor.FullWell - sky * lights.ExposureSeconds),
            (
                darkElectrons ??= [
                    .. sensor.Pixels!.Classes.Select(c =>
                        Math.Min(c.RateAt(darkGrowth) * darkExposure, sensor.FullWell)
                    ),
                ]
            )[pixel]
        );

    /// <summary>Whether sky and dark current fill the pixel: its electrons then no longer vary.</summary>
    internal bool FullInLight(int pixel) => lightElectrons![pixel] + sky * lights.ExposureSeconds >= sensor.FullWell;

    /// <summary>
    /// What is new in each light, and what all lights share, for a class, e-²; the numbers of the darks null for ideal
    /// ones.
    /// </summary>
    internal PixelNoise Noise(int pixel, DarkFrames? darks)
    {
        (double light, double dark) = Electrons(pixel);
        double skyElectrons = sky * lights.ExposureSeconds;
        PixelNoise noise = darks is null
            ? PixelNoise.OfLight(sensor, skyElectrons, Math.Max(light, 0))
            : PixelNoise.Calibrated(
                sensor,
                skyElectrons,
                Math.Max(light, 0),
                dark < sensor.FullWell ? Math.Max(dark, 0) : 0,
                darks,
                Scale
            );
        return FullInLight(pixel) ? noise with { Sky = 0, Dark = 0 } : noise;
    }

    /// <summary>Rise of the variance where there is nothing to reject; 1 without rejection.</summary>
    internal double ClipCost => clip?.Cost ?? 1;

    /// <summary>What a class contributes to the stack on average, e-, after rejection.</summary>
    /// <remarks>
    /// The level that all pixels share is no outlier: the residual counts from that of the middle pixel, in units of
    /// the scatter of the samples of typical pixels, noise and the
    /// spread of their residuals together; see <see cref="ClippedMean"/>.
    /// </remarks>
    internal double Kept(int pixel) => clip is null ? Of(pixel) : centre + Response(pixel).Left * (Of(pixel) - centre);

    /// <summary>
    /// What is new in each light, as it reaches the stack, and the part of the pixel's residual that does.
    /// </summary>
    /// <param name="pixel">The class.</param>
    /// <param name="random">Variance of one sample, e-².</param>
    internal (double Random, double Left) Reaching(int pixel, double random)
    {
        if (clip is null)
            return (random, 1);
        (double left, double noise) = Response(pixel);
        return (noise * unit * unit, left);
    }

    /// <summary>
    /// Variance over the places of the stack from those with two outlying pixels among three or four positions, e-²:
    /// half of the samples or more stand out, and none can be left out.
    /// </summary>
    /// <remarks>
    /// k(k − 1)/2 pairs; the mean of (x + y)² over two pixels drawn from the outliers, weight w(1 − left) each, divided
    /// by k². With five positions or more the median stays with the typical pixels.
    /// </remarks>
    internal double PairsOfOutliers()
    {
        int k = lights.DitherPositions;
        if (clip is null || k is not (3 or 4))
            return 0;
        double weight = 0,
            sum = 0,
            squares = 0;
        for (int i = 0; i < sensor.Pixels!.Classes.Count; i++)
        {
            double excess = Of(i) - centre,
                outlying = sensor.Pixels.Classes[i].Weight * Math.Clamp(1 - Response(i).Left, 0, 1);
            if (!sensor.Pixels.Classes[i].Hot)
                continue;
            (weight, sum, squares) = (weight + outlying, sum + outlying * excess, squares + outlying * excess * excess);
        }
        return (k - 1) / (2.0 * k) * 2 * (weight * squares + sum * sum);
    }

    private (double Left, double Noise) Response(int pixel)
    {
        double random =
            TypicalNoise.Read
            + TypicalNoise.Quantisation
            + (FullInLight(pixel) ? 0 : TypicalNoise.Sky + Math.Max(lightElectrons![pixel], 0));
        return clip!.To((Of(pixel) - centre) / unit, Math.Sqrt(random) / unit);
    }

    /// <summary>The random noise of the typical pixel in one light.</summary>
    internal PixelNoise TypicalNoise { get; }

    /// <summary>Noise of the typical pixel of the stack, e-, from what is new in each light.</summary>
    internal double StackNoise => Math.Sqrt(TypicalNoise.Random / lights.Lights);

    /// <summary>Mean and standard deviation over pixels of what is left in the stack before dithering, e-.</summary>
    internal (double Mean, double Spread) Pattern(bool withHotPixels)
    {
        double weight = 0,
            sum = 0,
            squares = 0;
        for (int i = 0; i < sensor.Pixels!.Classes.Count; i++)
        {
            PixelClass pixel = sensor.Pixels.Classes[i];
            if (pixel.Hot && !withHotPixels)
                continue;
            double kept = Kept(i);
            weight += pixel.Weight;
            sum += pixel.Weight * kept;
            squares += pixel.Weight * kept * kept;
        }
        double mean = sum / weight;
        return (mean, Math.Sqrt(Math.Max(squares / weight - mean * mean, 0)));
    }

    /// <summary>
    /// Share of the pixels whose residual, from the typical one, exceeds a limit in the stack; see
    /// <see cref="DitheredShare"/> for a dithered one.
    /// </summary>
    internal double ShareBeyond(double limit)
    {
        IReadOnlyList<PixelClass> classes = sensor.Pixels!.Classes;
        if (lights.DitherPositions > 1)
            return DitheredShare.Beyond(
                [.. classes.Select((pixel, i) => (pixel.Weight, Kept(i) - typical, pixel.Hot))],
                lights.DitherPositions,
                limit
            );
        double share = 0;
        for (int i = 0; i < classes.Count; i++)
            if (Math.Abs(Kept(i) - typical) > limit)
                share += classes[i].Weight;
        return share;
    }

    /// <summary>Mean residual of all pixels, e-; of the typical pixel when the distribution is not known.</summary>
    internal double Level()
    {
        if (sensor.Pixels is null)
            return typical;
        double sum = 0;
        for (int i = 0; i < sensor.Pixels.Classes.Count; i++)
            sum += sensor.Pixels.Classes[i].Weight * Of(i);
        return sum;
    }

    /// <summary>Residual at the peak of the glow, e-; 0 without glow.</summary>
    internal double GlowPeak() =>
        sensor.Glow is not { } glow
            ? 0
            : glow.ElectronsAt(lights.TemperatureCelsius, lights.ExposureSeconds, sensor)
                - Scale * glow.ElectronsAt(DarkCelsius, darkExposure, sensor);
}
