using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Decisions.Shots;

/// <summary>The frames to take. Quantities: totalFrames, totalTime (s), diskSpace (MB).</summary>
public sealed record ShotListAnswer : Answer
{
    /// <summary>Whether the camera has a cooler.</summary>
    public required bool Cooled { get; init; }

    /// <summary>The darks of a session from nothing; null when frames exist.</summary>
    internal ListedDarks? Darks { get; init; }

    /// <summary>What exists already; null when nothing does.</summary>
    internal ExistingFrames? Existing { get; init; }

    /// <summary>The shots, in the order to take them.</summary>
    public IReadOnlyList<PlannedShot> Shots { get; init; } = [];

    /// <summary>With existing frames: what each addition would bring, the largest gain first.</summary>
    internal IReadOnlyList<ShotAddition> Additions { get; init; } = [];

    /// <summary>Uncertainties to expect now and with the listed shots, for a typical camera.</summary>
    internal IReadOnlyList<ShotExpectation> Expected { get; init; } = [];
}

/// <summary>The darks of a session.</summary>
/// <param name="Exposures">Different exposures at each temperature.</param>
/// <param name="Longest">The longest of them, s.</param>
/// <param name="Temperatures">Different temperatures.</param>
internal sealed record ListedDarks(int Exposures, double Longest, int Temperatures);

/// <summary>What a session already has.</summary>
/// <param name="Bias">Bias frames.</param>
/// <param name="FlatPairs">Flat pairs.</param>
/// <param name="DarkExposures">Exposures that a temperature must have to count.</param>
/// <param name="DarkTemperatures">Temperatures with darks of that many exposures, °C.</param>
/// <param name="KindsUnknown">Whether no frame states its kind, so that none counts.</param>
internal sealed record ExistingFrames(
    int Bias,
    int FlatPairs,
    int DarkExposures,
    IReadOnlyList<double> DarkTemperatures,
    bool KindsUnknown
);
