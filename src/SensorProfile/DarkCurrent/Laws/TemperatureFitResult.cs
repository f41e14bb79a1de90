using SensorProfile.Profiles.Darks;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>
/// Dark current against temperature: every law that could be fitted, the selected one, and what follows from it.
/// </summary>
internal sealed record TemperatureFitResult
{
    /// <summary>Every law that could be fitted, simplest first.</summary>
    public IReadOnlyList<DarkCurrentModel> Models { get; init; } = [];

    /// <summary>Name of the selected law; null when none could be fitted.</summary>
    public string? Selected { get; init; }

    /// <summary>Temperature to which the rates refer, °C.</summary>
    public double ReferenceTemperature { get; init; }

    /// <summary>
    /// Temperature rise that doubles dark current at the reference temperature, °C; null, with a finding, when it could
    /// not be determined.
    /// </summary>
    public Measurement? DoublingTemperature { get; init; }

    /// <summary>Dark rate at the reference temperature from the selected law, e-/px/s.</summary>
    public Measurement? RateAtReference { get; init; }

    /// <summary>Coldest and warmest temperature of the points, °C; null without points.</summary>
    public IReadOnlyList<double>? MeasuredRange { get; init; }

    /// <summary>
    /// Scatter of the points about the best law beyond their own uncertainties, as a temperature error, °C; zero when
    /// there is none or it does not look like a temperature error.
    /// </summary>
    public double TemperatureScatter { get; init; }

    /// <summary>What the user should know.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];
}
