namespace SensorProfile.Drift.MasterDarks;

/// <summary>What a master dark leaves behind.</summary>
internal enum ResidualKind
{
    /// <summary>Spread over the ordinary pixels.</summary>
    Typical,

    /// <summary>Visible pixels that are hot in the master.</summary>
    Hot,

    /// <summary>Visible pixels that are not.</summary>
    NewHot,

    /// <summary>The largest smooth residual.</summary>
    Glow,

    /// <summary>Spread over rows or columns.</summary>
    Structure,
}

/// <summary>One kind of residual of a master dark.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Value">Its size.</param>
/// <param name="Limit">What is accepted, in the same unit.</param>
/// <param name="Verdict">What follows from this kind alone.</param>
internal sealed record ResidualPart(ResidualKind Kind, Measurement Value, double Limit, CheckVerdict Verdict);
