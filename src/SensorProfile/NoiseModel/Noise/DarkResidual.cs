using SensorProfile.Fitting.Statistics;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// What a master dark leaves behind in a light, pixel class by pixel class: I_i(T)·t − s·I_i(T_d)·t_d, in e-.
/// </summary>
internal sealed partial class DarkResidual
{
    private readonly SensorModel sensor;
    private readonly StackConditions lights;
    private readonly LightClasses light;
    private readonly double darkExposure;
    private readonly double typical;
    private double[]? darkElectrons; // one dark, class by class; worked out when first asked for
    private bool hotPixelsKnown; // whether those of hot pixels are among them
    private double[]? centres, // of the groups: the middle pixel's residual, the scatter of the typical samples, e-
        units;

    /// <param name="sensor">The camera.</param>
    /// <param name="lights">The stack.</param>
    /// <param name="sky">Sky, e-/px/s (a random draw of it when uncertainties are propagated).</param>
    /// <param name="darkCelsius">Temperature of the darks, °C.</param>
    /// <param name="darkExposure">Exposure of the darks, s.</param>
    /// <param name="scaled">Whether the master is scaled by the typical law.</param>
    internal DarkResidual(
        SensorModel sensor,
        StackConditions lights,
        double sky,
        double darkCelsius,
        double darkExposure,
        bool scaled
    )
        : this(sensor, new LightClasses(sensor, lights, sky), darkCelsius, darkExposure, scaled) { }

    /// <summary>The same, with the contents of the lights computed beforehand, once for many darks.</summary>
    internal DarkResidual(SensorModel sensor, LightClasses light, double darkCelsius, double darkExposure, bool scaled)
    {
        (this.sensor, this.light, this.darkExposure) = (sensor, light, darkExposure);
        lights = light.Lights;
        DarkCelsius = darkCelsius;
        double lightRate = light.TypicalRate,
            darkRate = sensor.Law.RateAt(darkCelsius);
        Scale = scaled ? lightRate * lights.ExposureSeconds / (darkRate * darkExposure) : 1;
        typical = lightRate * lights.ExposureSeconds - Scale * darkRate * darkExposure;
    }

    internal double DarkCelsius { get; }

    /// <summary>Scale factor s of the master; 1 when it is not scaled.</summary>
    internal double Scale { get; }

    /// <summary>
    /// Residual of a class, e-, before the stack rejects anything; a pixel that is full holds no more than its full
    /// well.
    /// </summary>
    internal double Of(int pixel)
    {
        (double inLight, double inDark) = Electrons(pixel);
        return inLight - Scale * inDark;
    }

    /// <summary>
    /// Dark electrons of a class in one light (what fits beside the sky) and in one dark, each up to the full well.
    /// </summary>
    internal (double Light, double Dark) Electrons(int pixel) =>
        (light.Held[pixel], DarkElectrons(withHotPixels: true)[pixel]);

    private double[] DarkElectrons(bool withHotPixels)
    {
        if (darkElectrons is { } known && (hotPixelsKnown || !withHotPixels))
            return known;
        double[] rates = light.RatesAt(DarkCelsius, darkExposure, withHotPixels),
            electrons = GC.AllocateUninitializedArray<double>(rates.Length);
        for (int i = 0; i < rates.Length; i++)
            electrons[i] = Math.Min(rates[i] * darkExposure, sensor.FullWell);
        hotPixelsKnown = withHotPixels;
        return darkElectrons = electrons;
    }

    /// <summary>Whether sky and dark current fill the pixel: its electrons then no longer vary.</summary>
    internal bool FullInLight(int pixel) => light.Full[pixel];

    /// <summary>
    /// For a class, the variance new in each light and the variance that all lights share, e-²; null darks stand for an
    /// ideal master.
    /// </summary>
    internal PixelNoise Noise(int pixel, DarkFrames? darks)
    {
        (double inLight, double inDark) = Electrons(pixel);
        PixelNoise noise = darks is null
            ? PixelNoise.OfLight(sensor, light.SkyElectrons, Math.Max(inLight, 0))
            : PixelNoise.Calibrated(
                sensor,
                light.SkyElectrons,
                Math.Max(inLight, 0),
                inDark < sensor.FullWell ? Math.Max(inDark, 0) : 0,
                darks,
                Scale
            );
        return FullInLight(pixel) ? noise with { Sky = 0, Dark = 0 } : noise;
    }

    /// <summary>Rise of the variance where there is nothing to reject; 1 without rejection.</summary>
    internal double ClipCost => light.Clip?.Cost ?? 1;

    /// <summary>Mean contribution of the classes to the stack, e-, after rejection.</summary>
    /// <remarks>
    /// The level common to all pixels is no outlier: residuals are measured from that of the middle pixel, in units of
    /// the scatter of typical pixels' samples, which combines their noise and the spread of their residuals; see
    /// <see cref="ClippedMean"/>.
    /// </remarks>
    /// <param name="withHotPixels">False leaves hot pixels out: their numbers are then undefined.</param>
    internal double[] Kept(bool withHotPixels = true)
    {
        double[] dark = DarkElectrons(withHotPixels),
            kept = GC.AllocateUninitializedArray<double>(dark.Length);
        ReadOnlySpan<double> held = light.Held,
            deviations = light.Deviations;
        ReadOnlySpan<bool> hot = sensor.Pixels!.Hot;
        for (int i = 0; i < kept.Length; i++)
            kept[i] = held[i] - Scale * dark[i];
        if (light.Clip is not { } clip)
            return kept;
        ReadOnlySpan<int> groups = sensor.Pixels.GroupOf;
        for (int i = 0; i < kept.Length; i++)
            if (withHotPixels || !hot[i])
            {
                (double centre, double unit) = UnitOf(groups[i]);
                double excess = kept[i] - centre;
                kept[i] = centre + clip.LeftOf(excess / unit, deviations[i] / unit) * excess;
            }
        return kept;
    }

    /// <summary>
    /// The residual of a group's middle pixel, and the scatter of the samples of its typical pixels, e-; all samples at
    /// one place have the same glow.
    /// </summary>
    private (double Centre, double Unit) UnitOf(int group)
    {
        if (centres is null || units is null)
            FindUnits();
        return (centres![group], units![group]);
    }

    private void FindUnits()
    {
        IReadOnlyList<PixelGroup> groups = sensor.Pixels!.Groups;
        double Scatter(PixelGroup group)
        {
            double spread = SpreadOf(group);
            return Math.Sqrt(TypicalNoise.Random + light.GlowElectrons(group) + spread * spread);
        }
        units = [.. groups.Select(Scatter)];
        centres = [.. groups.Select(g => OfTypical(g.Middle))];
    }

    /// <summary>Scatter of the residuals of a group's typical pixels, from their quartiles, e-.</summary>
    private double SpreadOf(PixelGroup group) =>
        Math.Abs(OfTypical(group.UpperQuartile) - OfTypical(group.LowerQuartile))
        * OrderStatistics.InterquartileToSigma;

    private double OfTypical(int pixel) => light.Held[pixel] - Scale * DarkElectrons(withHotPixels: false)[pixel];

    /// <summary>
    /// The part of each light's new variance that reaches the stack, and the part of the pixel's residual that does.
    /// </summary>
    /// <param name="pixel">The class.</param>
    /// <param name="random">Variance of one sample, e-².</param>
    internal (double Random, double Left) Reaching(int pixel, double random)
    {
        if (light.Clip is null)
            return (random, 1);
        double unit = UnitOf(sensor.Pixels!.GroupOf[pixel]).Unit;
        (double left, double noise) = Response(pixel);
        return (noise * unit * unit, left);
    }

    /// <summary>
    /// Variance over the places of the stack caused by those with two outlying pixels among three or four positions,
    /// e-²: half of the samples or more stand out, so none can be rejected.
    /// </summary>
    /// <remarks>
    /// k(k − 1)/2 pairs; the mean of (x + y)² over two pixels drawn from the outliers, weight w(1 − left) each, divided
    /// by k². With five positions or more the median stays with the typical pixels.
    /// </remarks>
    internal double PairsOfOutliers()
    {
        int k = lights.DitherPositions;
        if (light.Clip is null || k is not (3 or 4))
            return 0;
        ReadOnlySpan<double> weights = sensor.Pixels!.Weights;
        ReadOnlySpan<bool> hot = sensor.Pixels.Hot;
        ReadOnlySpan<int> groups = sensor.Pixels.GroupOf;
        double weight = 0,
            sum = 0,
            squares = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            if (!hot[i])
                continue;
            double excess = Of(i) - UnitOf(groups[i]).Centre,
                outlying = weights[i] * Math.Clamp(1 - Response(i).Left, 0, 1);
            (weight, sum, squares) = (weight + outlying, sum + outlying * excess, squares + outlying * excess * excess);
        }
        return (k - 1) / (2.0 * k) * 2 * (weight * squares + sum * sum);
    }

    private (double Left, double Noise) Response(int pixel)
    {
        (double centre, double unit) = UnitOf(sensor.Pixels!.GroupOf[pixel]);
        return light.Clip!.To((Of(pixel) - centre) / unit, light.Deviations[pixel] / unit);
    }

    /// <summary>The random noise of the typical pixel in one light.</summary>
    internal PixelNoise TypicalNoise => light.TypicalNoise;

    /// <summary>Noise of the typical pixel of the stack, e-, from what is new in each light.</summary>
    internal double StackNoise => Math.Sqrt(TypicalNoise.Random / lights.Lights);

    /// <summary>
    /// Standard deviation over pixels of what is left in the stack before dithering, e-: within the groups that glow
    /// alike, which dithering reduces, and between them, which it does not.
    /// </summary>
    internal ResidualPattern Pattern(bool withHotPixels)
    {
        double[] kept = Kept(withHotPixels);
        ReadOnlySpan<double> weights = sensor.Pixels!.Weights;
        ReadOnlySpan<bool> outlying = sensor.Pixels.Outlying;
        double whole = 0,
            sum = 0,
            ofMeans = 0,
            within = 0;
        foreach (PixelGroup group in sensor.Pixels.Groups)
        {
            double weight = 0,
                first = 0,
                second = 0;
            for (int i = group.First; i < group.First + group.Count; i++)
            {
                if (outlying[i] && !withHotPixels)
                    continue;
                weight += weights[i];
                first += weights[i] * kept[i];
                second += weights[i] * kept[i] * kept[i];
            }
            if (!(weight > 0))
                continue;
            whole += weight;
            sum += first;
            ofMeans += first * first / weight;
            within += second - first * first / weight;
        }
        double mean = sum / whole;
        return new(Math.Sqrt(Math.Max(within / whole, 0)), Math.Sqrt(Math.Max(ofMeans / whole - mean * mean, 0)));
    }

    /// <summary>Mean residual of all pixels, e-; of the typical pixel when the distribution is not known.</summary>
    internal double Level()
    {
        if (sensor.Pixels is null)
            return typical;
        double sum = 0;
        double[] dark = DarkElectrons(withHotPixels: true);
        ReadOnlySpan<double> held = light.Held,
            weights = sensor.Pixels.Weights;
        for (int i = 0; i < dark.Length; i++)
            sum += weights[i] * (held[i] - Scale * dark[i]);
        return sum;
    }

    /// <summary>Residual at the peak of the glow, e-; 0 without glow.</summary>
    internal double GlowPeak() =>
        sensor.Glow is not { } glow
            ? 0
            : glow.ElectronsAt(lights.TemperatureCelsius, lights.ExposureSeconds, sensor)
                - Scale * glow.ElectronsAt(DarkCelsius, darkExposure, sensor);
}
