namespace SensorProfile.Drift.MasterDarks;

/// <summary>One kind of residual of a master dark.</summary>
/// <param name="Kind">typical | hot | new-hot | glow | structure.</param>
/// <param name="Value">Its size.</param>
/// <param name="Limit">What is accepted, in the same unit.</param>
/// <param name="Verdict">keep | retake | cannot-tell for this kind alone.</param>
public sealed record ResidualPart(string Kind, Measurement Value, double Limit, string Verdict);
