using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.FlatPlan;

/// <summary>How many flats does this stack need, and at which level?</summary>
public sealed record FlatPlanQuestion : StackDescription
{
    /// <summary>
    /// Sensor temperature of the lights, °C; null for the profile's reference temperature. It matters only through the
    /// noise of the dark current.
    /// </summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Mean level of the flats, a share of the full well; null asks for the best one.</summary>
    public double? Level { get; init; }

    /// <summary>
    /// Dark flats or bias frames in the master that is subtracted from the flats; null for as many as flats.
    /// </summary>
    public int? UnlitFrames { get; init; }
}
