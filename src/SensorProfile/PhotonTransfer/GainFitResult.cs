using SensorProfile.Profiles.Response;

namespace SensorProfile.PhotonTransfer;

/// <summary>Conversion gain of one channel and the fits behind it.</summary>
internal sealed record GainFitResult
{
    /// <summary>The gain to use, e-/ADU.</summary>
    public required Measurement Gain { get; init; }

    /// <summary>K of the selected fit, ADU/e-.</summary>
    public required Measurement Slope { get; init; }

    /// <summary>
    /// Intercept of a line through the flats alone, less the dark variance, ADU²: consistent with zero when the model
    /// holds. Null with fewer than 3 levels.
    /// </summary>
    public Measurement? Intercept { get; init; }

    /// <summary>a of σ² = Kμ(1 + aμ), 1/ADU; null with fewer than 4 levels.</summary>
    public Measurement? Curvature { get; init; }

    /// <summary>Gain of the straight line, e-/ADU.</summary>
    public required Measurement GainStraight { get; init; }

    /// <summary>Gain of the curved fit, e-/ADU; null with fewer than 4 levels.</summary>
    public Measurement? GainCurved { get; init; }

    /// <summary>Which fit the gain comes from.</summary>
    public required GainForm Selected { get; init; }

    /// <summary>Largest signal in the fit, ADU above the pedestal.</summary>
    public required double FitLimit { get; init; }

    /// <summary>Which of the given points are in the fit.</summary>
    public required IReadOnlyList<bool> Used { get; init; }

    /// <summary>Number of different light levels in the fit.</summary>
    public required int Levels { get; init; }

    /// <summary>χ² of the selected fit.</summary>
    public required double ChiSquared { get; init; }

    /// <summary>Degrees of freedom of the selected fit.</summary>
    public required int DegreesOfFreedom { get; init; }
}
