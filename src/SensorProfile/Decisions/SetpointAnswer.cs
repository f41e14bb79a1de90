namespace SensorProfile.Decisions;

/// <summary>How cold to run, with the curve behind it.</summary>
/// <remarks>Quantities: setpoint, setpointTypical, setpoint99, diminishingReturns, extraTypical, extra99. Verdict: holds | limited | uncooled | cannot-tell.</remarks>
public sealed record SetpointAnswer : Answer
{
    /// <summary>The sky it holds for.</summary>
    public required SkyRate Sky { get; init; }

    /// <summary>Added noise against temperature, coldest first, 1 °C apart.</summary>
    public IReadOnlyList<SetpointPoint> Curve { get; init; } = [];

    /// <summary>What each ambient temperature allows or costs.</summary>
    public IReadOnlyList<AmbientCost> Ambient { get; init; } = [];

    /// <summary>The same question for other skies, when the user gave none.</summary>
    public IReadOnlyList<SetpointAnswer> OtherSkies { get; init; } = [];
}
