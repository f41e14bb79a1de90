namespace SensorProfile.Decisions.Tolerance;

/// <summary>How far a mismatch uses up each of the four limits; 1 is the limit, null is not known.</summary>
/// <param name="Typical">Spread of the residual over pixels that are not hot.</param>
/// <param name="HotPixels">Share of pixels with a visible residual.</param>
/// <param name="Glow">Residual of the glow at its peak.</param>
/// <param name="Level">Gradient that the level residual leaves after the flat.</param>
internal sealed record CauseLoads(double? Typical, double? HotPixels, double Glow, double Level)
{
    internal static IReadOnlyList<string> Names { get; } = ["typical", "hot-pixels", "glow", "level"];

    internal double? this[int cause] =>
        cause switch
        {
            0 => Typical,
            1 => HotPixels,
            2 => Glow,
            _ => Level,
        };

    internal double Largest => Enumerable.Range(0, 4).Max(i => this[i] ?? 0);

    internal string Binding => Names[Enumerable.Range(0, 4).MaxBy(i => this[i] ?? 0)];
}
