using SensorProfile.Frames.Survey;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Screening;

namespace SensorProfile.Characterisation;

/// <summary>How a camera is characterised.</summary>
public sealed record CharacterisationOptions
{
    /// <summary>Frames are pooled when their sensor temperatures lie within this of their set's mean, °C.</summary>
    public double TemperatureTolerance { get; init; } = InventoryOptions.DefaultTemperatureTolerance;

    /// <summary>
    /// Temperature to which rates refer, °C; null to take the measured temperature nearest the middle of the range.
    /// </summary>
    public double? ReferenceTemperature { get; init; }

    /// <summary>Thresholds of the defect search; null, or a rate of 0 in them, to choose from the frames.</summary>
    public DefectThresholds? Thresholds { get; init; }

    /// <summary>Leaves the per-pixel temperature laws out.</summary>
    public bool Quick { get; init; }

    /// <summary>Where the temperatures of the darks come from.</summary>
    public TemperatureSource Temperatures { get; init; }

    /// <summary>Threads; the result does not depend on it. Null for all processors.</summary>
    public int? Threads { get; init; }

    /// <summary>Records what each stage costs; null for no record.</summary>
    internal StageClock? Stages { get; init; }

    /// <summary>Version written into the profile.</summary>
    public string SoftwareVersion { get; init; } =
        typeof(CharacterisationOptions).Assembly.GetName().Version?.ToString(3) ?? "0";

    /// <summary>Clock for the profile's date.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;
}
