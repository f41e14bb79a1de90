namespace SensorProfile.NoiseModel.Sky;

/// <summary>
/// A stack of lights as its owner describes it: what every question about darks is judged against, so that the same
/// stack gets the same answer from each of them.
/// </summary>
/// <remarks>
/// A winsorised mean and a median are judged as a plain mean, which is the strict side. Take a place of the stack at
/// which a share ε ≤ ½ of the samples comes from one pixel that stands out by x &gt; 0, all with the same symmetric,
/// unimodal noise of distribution function Φ, and write Ψ = Φ − ½. The plain mean shifts by εx. The median m solves
/// (1 − ε)Ψ(m) = εΨ(x − m); Ψ is concave above 0, so that Ψ(εx)/(εx) ≥ Ψ((1 − ε)x)/((1 − ε)x), the left side is the
/// larger one at m = εx, and therefore m ≤ εx. The winsorised mean is m − (1 − ε)h(m) + εh(x − m) with h(u) the mean of
/// a sample at u that is cut at the limits: h is concave above 0 and h(u) ≤ u, so that it is at most
/// m + (εx − m)·h(x − m)/(x − m) ≤ εx. The noise of either is above that of the mean, against which residuals are
/// judged. Where two of three or four samples stand out together the median follows them: both need
/// <see cref="StackConditions.FewestPositions"/> positions, or none, when every sample shares the residual.
/// </remarks>
public record StackDescription
{
    /// <summary>Exposure of one light, s.</summary>
    public double ExposureSeconds { get; init; } = 300;

    /// <summary>Lights in the stack.</summary>
    public int Lights { get; init; } = 40;

    /// <summary>Dither positions; null when it was not said, judged as 1: no dithering, the strict side.</summary>
    public int? DitherPositions { get; init; }

    /// <summary>What the stack does with samples that stand out.</summary>
    public Rejection Rejection { get; init; }

    /// <summary>The sky; null when it was not said.</summary>
    public SkyRate? Sky { get; init; }

    /// <summary>The accepted losses.</summary>
    public LossLimits Limits { get; init; } = new();

    /// <summary>Dither positions, 1 when they were not said.</summary>
    internal int Positions => DitherPositions ?? 1;

    /// <summary>Lights per dither position: the master's noise falls with the positions only.</summary>
    internal double LightsPerPosition => (double)Lights / Positions;

    /// <summary>What an answer must say of the way the stack is judged.</summary>
    internal IEnumerable<Finding> Notes()
    {
        if (Rejection is Rejection.Median or Rejection.Winsorised && Positions > 1)
            yield return new Finding(
                "rejection-judged-as-mean",
                Severity.Note,
                $"A {(Rejection == Rejection.Median ? "median" : "winsorised mean")} is judged as a plain mean, the strict "
                    + "side: it leaves no more of a hot pixel than a mean does, but how much less is not modelled."
            );
    }

    /// <summary>The lights at one temperature, under the sky that was found for them.</summary>
    /// <param name="celsius">Sensor temperature, °C.</param>
    /// <param name="sky">e-/px/s.</param>
    internal StackConditions At(double celsius, SkyRate sky) =>
        new()
        {
            Sky = sky.Rate,
            ExposureSeconds = ExposureSeconds,
            TemperatureCelsius = celsius,
            Lights = Lights,
            DitherPositions = Positions,
            Rejection = Rejection,
        };
}
