namespace SensorProfile.Drift.OverTheYears;

/// <summary>One quantity in the first and the last profile.</summary>
/// <param name="Quantity">As in profile.json: readNoise, gain, darkRate …</param>
/// <param name="Mode">Settings it holds for, in words.</param>
/// <param name="From">In the first profile.</param>
/// <param name="To">In the last.</param>
/// <param name="Change">To − from with the joint uncertainty √(u₁² + u₂²), what varies from night to night
/// included.</param>
/// <param name="Z">Change over its uncertainty.</param>
/// <param name="P">Probability of so large a change by chance, this quantity alone.</param>
/// <param name="AdjustedP">The same for all tests of the answer together (Holm 1979).</param>
/// <param name="Changed">Whether <paramref name="AdjustedP"/> is below the significance.</param>
/// <param name="Detectable">Change that would have been found with a probability of 80 %, in the unit of the
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
