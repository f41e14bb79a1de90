namespace SensorProfile.NoiseModel.Sky;

/// <summary>
/// A stack of lights as its owner describes it. Every question about darks is judged against it, so that the same stack
/// gets consistent answers.
/// </summary>
public record StackDescription
{
    /// <summary>Exposure of one light, s.</summary>
    public double ExposureSeconds { get; init; } = 300;

    /// <summary>Lights in the stack.</summary>
    public int Lights { get; init; } = 40;

    /// <summary>Dither positions; null when not stated, then judged as 1: no dithering, the strict side.</summary>
    public int? DitherPositions { get; init; }

    /// <summary>How the stack treats samples that stand out.</summary>
    public Rejection Rejection { get; init; }

    /// <summary>The sky; null when not stated.</summary>
    public SkyRate? Sky { get; init; }

    /// <summary>The accepted losses.</summary>
    public LossLimits Limits { get; init; } = new();

    /// <summary>Dither positions, 1 when not stated.</summary>
    internal int Positions => DitherPositions ?? 1;

    /// <summary>Lights per dither position: the master's noise falls with the positions only.</summary>
    internal double LightsPerPosition => (double)Lights / Positions;

    /// <summary>The lights at one temperature, under the sky determined for them.</summary>
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
