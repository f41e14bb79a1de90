using SensorProfile.Profiles.Session;

namespace SensorProfile.Profiles.Darks;

/// <summary>Dark current against exposure and temperature.</summary>
public sealed record DarkCurrentProfile
{
    /// <summary>One entry per temperature, coldest first.</summary>
    public IReadOnlyList<DarkCurrentPoint> Points { get; init; } = [];

    /// <summary>Every model that could be fitted to the points.</summary>
    public IReadOnlyList<DarkCurrentModel> Models { get; init; } = [];

    /// <summary>
    /// Name of the model behind <see cref="RateAtReference"/> and the predictions; null when none could be fitted.
    /// </summary>
    public string? Selected { get; init; }

    /// <summary>Temperature rise that doubles dark current at the reference temperature, °C.</summary>
    public Measurement? DoublingTemperature { get; init; }

    /// <summary>Temperature at which the reference values hold, °C.</summary>
    public double? ReferenceTemperature { get; init; }

    /// <summary>Dark current of the typical pixel at the reference temperature, e-/px/s.</summary>
    public Measurement? RateAtReference { get; init; }

    /// <summary>Coldest and warmest temperature measured, °C; null without points.</summary>
    public IReadOnlyList<double>? MeasuredRange { get; init; }

    /// <summary>
    /// Settings of the mode whose darks these numbers are, carried over in electrons; null when the mode has its own.
    /// </summary>
    public ModeSettings? CarriedFrom { get; init; }

    /// <summary>
    /// What the models describe: the growth of the level, or that of the variance where the camera pins its level.
    /// </summary>
    public DarkForm Form { get; init; }
}
