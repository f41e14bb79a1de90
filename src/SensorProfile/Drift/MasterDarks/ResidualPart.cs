namespace SensorProfile.Drift.MasterDarks;

/// <summary>The kinds of residual that a master dark leaves.</summary>
internal enum ResidualKind
{
    /// <summary>Spread over the ordinary pixels.</summary>
    Typical,

    /// <summary>Visible residuals at pixels hot in the master.</summary>
    Hot,

    /// <summary>Visible residuals at other pixels.</summary>
    NewHot,

    /// <summary>Largest smooth residual.</summary>
    Glow,

    /// <summary>Spread over rows or columns.</summary>
    Structure,
}

/// <summary>One kind of residual of a master dark.</summary>
/// <param name="Kind">Which kind.</param>
/// <param name="Value">Its size.</param>
/// <param name="Limit">Accepted limit, in the same unit.</param>
/// <param name="Verdict">The verdict from this kind alone.</param>
internal sealed record ResidualPart(ResidualKind Kind, Measurement Value, double Limit, CheckVerdict Verdict);
