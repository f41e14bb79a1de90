using SensorProfile.NoiseModel;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>Lights that will be taken and need darks.</summary>
public sealed record PlannedLights
{
    /// <summary>Exposure of one light, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>Sensor temperature at the start, °C; the set temperature of a cooled camera.</summary>
    public required double StartCelsius { get; init; }

    /// <summary>
    /// Sensor temperature at the end, °C, when an uncooled camera follows the night; null for the same.
    /// </summary>
    public double? EndCelsius { get; init; }

    /// <summary>
    /// Sensor temperatures through the night, °C: of every light, or readings evenly spread over them. If empty, they
    /// run evenly from start to end.
    /// </summary>
    public IReadOnlyList<double> Temperatures { get; init; } = [];

    /// <summary>Lights in the stack.</summary>
    public required int Lights { get; init; }

    /// <summary>Dither positions; 1 without dithering.</summary>
    public int DitherPositions { get; init; } = 1;

    /// <summary>How the stack treats samples that stand out.</summary>
    public Rejection Rejection { get; init; }

    /// <summary>Settings; null when the profile holds one mode only.</summary>
    public ModeSettings? Settings { get; init; }

    /// <summary>The finding that frames of one exposure and setting were taken as one stack.</summary>
    /// <param name="stacks">The stacks made from them.</param>
    public static Finding TakenTogether(IReadOnlyList<PlannedLights> stacks)
    {
        ArgumentNullException.ThrowIfNull(stacks);
        return new(
            FindingCodes.LightsTakenTogether,
            Severity.Note,
            "Lights of one exposure and setting are planned as one stack "
                + $"({string.Join(", ", stacks.Select(s => $"{Plain.Whole(s.Lights)} × {Plain.Seconds(s.ExposureSeconds)}"))}): "
                + "if they show several targets, give the folder of one target alone."
        );
    }

    /// <summary>Planned when nothing else is known: 40 lights of 300 s.</summary>
    /// <param name="celsius">Sensor temperature, °C.</param>
    public static PlannedLights Usual(double celsius) =>
        new()
        {
            ExposureSeconds = 300,
            StartCelsius = celsius,
            Lights = 40,
        };
}
