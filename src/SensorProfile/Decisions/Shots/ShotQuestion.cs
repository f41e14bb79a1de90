using SensorProfile.Frames;

namespace SensorProfile.Decisions.Shots;

/// <summary>Which frames do I take to characterise my camera?</summary>
public sealed record ShotQuestion
{
    /// <summary>False for a camera without a cooler.</summary>
    public bool Cooled { get; init; } = true;

    /// <summary>Time available, min; null for the full programme.</summary>
    public double? Minutes { get; init; }

    /// <summary>Ambient temperature during the session, °C.</summary>
    public double AmbientCelsius { get; init; } = 15;

    /// <summary>Largest difference to the ambient temperature that the cooler reaches, °C.</summary>
    public double MaximumDifference { get; init; } = 35;

    /// <summary>Part of that difference kept in reserve, °C.</summary>
    public double Margin { get; init; } = 3;

    /// <summary>
    /// Longest exposure of the lights, s: the darks go that far. Null for 300 s, or for the longest existing dark.
    /// </summary>
    public double? LongestExposureSeconds { get; init; }

    /// <summary>Frame width, px.</summary>
    public int Width { get; init; } = 3000;

    /// <summary>Frame height, px.</summary>
    public int Height { get; init; } = 3000;

    /// <summary>Time between two frames for read-out and saving, s.</summary>
    internal double OverheadSeconds { get; init; } = 2;

    /// <summary>Time for the sensor to settle at a new temperature, s.</summary>
    internal double SettleSeconds { get; init; } = 600;

    /// <summary>Frames that exist already; null when starting afresh.</summary>
    public Inventory? Existing { get; init; }
}
