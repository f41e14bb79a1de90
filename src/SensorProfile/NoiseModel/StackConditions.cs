namespace SensorProfile.NoiseModel;

/// <summary>The lights of one stack: what a noise budget and the darks are judged against.</summary>
public sealed record StackConditions
{
    /// <summary>
    /// Fewest dither positions at which a median or winsorised stack can be judged: where two of three or four samples
    /// stand out together, the stack follows them.
    /// </summary>
    internal const int MinPositions = 5;

    /// <summary>Sky background, e-/px/s, above 0.</summary>
    public required Measurement Sky { get; init; }

    /// <summary>Exposure of one light, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>Sensor temperature of the lights, °C.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>Lights in the stack, M.</summary>
    public int Lights { get; init; } = 1;

    /// <summary>Different dither positions among them, k; 1 when the mount does not dither.</summary>
    public int DitherPositions { get; init; } = 1;

    /// <summary>
    /// How the stack treats samples that stand out (it needs three positions or more to recognise them).
    /// </summary>
    public Rejection Rejection { get; init; }

    /// <summary>Where a stack that clips cuts, in standard deviations of the samples.</summary>
    public double RejectionSigma { get; init; } = 3;

    /// <summary>Whether the stack is anything but a plain mean.</summary>
    internal bool Clips => Rejection != Rejection.None;

    /// <summary>
    /// Factor by which rejection raises the variance that the samples of one position share; 1 without dithering, for
    /// then all samples share it.
    /// </summary>
    /// <param name="cost">Factor for what is new in each sample; 1 without rejection.</param>
    internal double CostOfShared(double cost) => Lights > 1 ? 1 + (cost - 1) * (DitherPositions - 1) / (Lights - 1) : 1;
}
