using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Drift;

/// <summary>How profiles are compared.</summary>
public sealed record DriftOptions
{
    /// <summary>Probability of at least one false "has changed" in the whole comparison, 0…1.</summary>
    public double Significance { get; init; } = 0.05;

    /// <summary>
    /// Temperature at which dark currents are compared, °C; null picks one that all profiles cover.
    /// </summary>
    public double? ReferenceTemperature { get; init; }

    /// <summary>Dark rates above which pixels are counted as hot, e-/px/s.</summary>
    internal IReadOnlyList<double> HotRates { get; init; } = [0.1, 1, 10];

    /// <summary>
    /// How well a session's mean temperature repeats from year to year, °C (one standard uncertainty): half the usual
    /// step of the reading.
    /// </summary>
    public double TemperatureRepeatability { get; init; } = 0.05;

    /// <summary>
    /// The stack that the present dark library serves, for forecasting when the library exceeds its limits; null leaves
    /// the forecast out. A null sky means a suburban one.
    /// </summary>
    public ToleranceQuestion? Stack { get; init; } =
        new()
        {
            ExposureSeconds = 300,
            Lights = 40,
            Sky = NamedSkies.Suburban,
        };

    /// <summary>Number of random layouts against which a patch of new hot pixels is tested.</summary>
    internal int Layouts { get; init; } = 999;

    /// <summary>Seed of those layouts: the same seed gives the same answer.</summary>
    internal int Seed { get; init; } = 1;
}
