namespace SensorProfile.Drift.OverTheYears;

/// <summary>One quantity in the first and the last profile.</summary>
/// <param name="Quantity">As in profile.json: readNoise, gain, darkRate …</param>
/// <param name="Mode">Settings of the mode, in words.</param>
/// <param name="From">Value in the first profile.</param>
/// <param name="To">Value in the last profile.</param>
/// <param name="Change">To − from with the joint uncertainty √(u₁² + u₂²), night-to-night variation included.</param>
/// <param name="Z">Change over its uncertainty.</param>
/// <param name="P">Probability of a change this large by chance, for this quantity alone.</param>
/// <param name="AdjustedP">The same, adjusted for all tests of the answer (Holm 1979).</param>
/// <param name="Changed">Whether <paramref name="AdjustedP"/> is below the significance.</param>
/// <param name="Detectable">Change that would have been found with 80 % probability, in the unit of the
/// quantity.</param>
public sealed record DriftChange(
    string Quantity,
    string Mode,
    Measurement From,
    Measurement To,
    Measurement Change,
    double Z,
    double P,
    double AdjustedP,
    bool Changed,
    double Detectable
);
