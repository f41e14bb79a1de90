namespace SensorProfile.Tests.Physics;

/// <summary>One number that was told, against what is true.</summary>
/// <param name="What">The quantity.</param>
/// <param name="Told">The number with its uncertainty; null where none was told.</param>
/// <param name="Truth">What it should be.</param>
/// <param name="TruthUncertainty">Of a truth that was drawn (Monte Carlo); 0 of one that is known.</param>
internal sealed record CoverageRow(string What, Measurement? Told, double Truth, double TruthUncertainty = 0)
{
    private const double Normal95 = 1.959964;

    /// <summary>(told − true)/uncertainty; not a number where nothing was told.</summary>
    internal double Z =>
        Told is null
            ? double.NaN
            : (Told.Value - Truth)
                / Math.Sqrt(Told.StandardUncertainty * Told.StandardUncertainty + TruthUncertainty * TruthUncertainty);

    /// <summary>Whether the stated 95 % interval holds the truth.</summary>
    internal bool Held => Math.Abs(Z) <= Normal95;
}
