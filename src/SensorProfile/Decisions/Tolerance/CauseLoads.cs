namespace SensorProfile.Decisions.Tolerance;

/// <summary>How much of each of the four limits a mismatch uses; 1 is the limit, null is not known.</summary>
/// <param name="Typical">Spread of the residual over pixels that are not hot.</param>
/// <param name="HotPixels">Share of pixels with a visible residual.</param>
/// <param name="Glow">Residual of the glow at its peak.</param>
/// <param name="Level">Gradient that the level residual leaves after the flat.</param>
internal sealed record CauseLoads(double? Typical, double? HotPixels, double Glow, double Level)
{
    /// <summary>The causes that can limit a mismatch.</summary>
    internal static IReadOnlyList<BindingCause> Mismatches { get; } =
    [BindingCause.Typical, BindingCause.HotPixels, BindingCause.Glow, BindingCause.Level];

    internal double? Of(BindingCause cause) =>
        cause switch
        {
            BindingCause.Typical => Typical,
            BindingCause.HotPixels => HotPixels,
            BindingCause.Glow => Glow,
            BindingCause.Level => Level,
            _ => null,
        };

    internal double Largest => Of(Binding) ?? 0;

    /// <summary>The cause that uses most of its limit.</summary>
    internal BindingCause Binding => Mismatches.MaxBy(cause => Of(cause) ?? 0);
}
