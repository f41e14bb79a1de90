namespace SensorProfile.NoiseModel;

/// <summary>How much loss the user accepts; every threshold of the dark matching is an input.</summary>
public sealed record LossLimits
{
    internal const double MaxSmoothPixels = 10_000; // no sensor is larger

    /// <summary>Accepted rise of the noise, 0.05 = 5 %.</summary>
    public double NoiseLoss { get; init; } = 0.05;

    /// <summary>Accepted share of pixels with a visible residual, 0.001 = one in a thousand.</summary>
    public double HotShare { get; init; } = 0.001;

    /// <summary>A residual is visible beyond this many times the noise of the stack.</summary>
    public double HotFactor { get; init; } = 3;

    /// <summary>Accepted residual of the glow at its peak, in the noise of the stack.</summary>
    public double GlowFactor { get; init; } = 0.5;

    /// <summary>
    /// Scale over which residuals of glow and level are smooth, px: they are then judged against the noise averaged
    /// over a square of that width, as the eye sees them, and <see cref="GlowFactor"/> is not used; null judges them
    /// against the noise of one pixel.
    /// </summary>
    public double? SmoothPixels { get; init; }

    /// <summary>Accepted residual on that scale, in the noise averaged over it.</summary>
    /// <remarks>
    /// An object is seen against noise from about five times the noise averaged over its area (A. Rose, The sensitivity
    /// performance of the human eye on an absolute scale, J. Opt. Soc. Am. 38, 196, 1948; from memory). 0.5 of the noise
    /// of a pixel is that limit for a residual of 10 px.
    /// </remarks>
    public double SmoothFactor { get; init; } = 5;

    /// <summary>Accepted smooth residual, in the noise of one pixel of the stack.</summary>
    internal double SmoothLimit => SmoothPixels is double pixels ? SmoothFactor / pixels : GlowFactor;

    /// <summary>
    /// Fall-off of the flat from the centre to the corner, 0.30 = 30 %: it turns a level residual into a gradient.
    /// </summary>
    public double FlatFallOff { get; init; } = 0.30;

    /// <summary>f in "an added spread of f·N raises the noise N by <see cref="NoiseLoss"/>": √((1+p)² − 1).</summary>
    internal double SpreadFactor => Math.Sqrt((1 + NoiseLoss) * (1 + NoiseLoss) - 1);

    internal void Check()
    {
        Refuse.UnlessShare(NoiseLoss, FindingCodes.LossOutOfRange, "accepted loss");
        Refuse.UnlessShare(HotShare, FindingCodes.HotShareOutOfRange, "accepted share of hot pixels");
        Refuse.UnlessShare(FlatFallOff, FindingCodes.FallOffOutOfRange, "fall-off of the flat");
        Refuse.UnlessPositive(
            HotFactor,
            FindingCodes.HotFactorNotPositive,
            "limit of a visible residual",
            "times the noise"
        );
        Refuse.UnlessPositive(
            GlowFactor,
            FindingCodes.GlowFactorNotPositive,
            "accepted residual of the glow",
            "times the noise"
        );
        Refuse.UnlessPositive(
            SmoothFactor,
            FindingCodes.GlowFactorNotPositive,
            "accepted smooth residual",
            "times the noise"
        );
        if (SmoothPixels is double scale && !(scale is >= 1 and <= MaxSmoothPixels))
            throw Refuse.BadArgument(
                FindingCodes.SmoothScaleOutOfRange,
                $"The scale of smooth residuals must be between 1 and {Plain.Number(MaxSmoothPixels)} px, not "
                    + $"{Plain.Number(scale)} px."
            );
    }
}
