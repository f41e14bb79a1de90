namespace SensorProfile.Drift.OverTheYears;

/// <summary>Why nothing can be said about ageing.</summary>
internal enum DriftGap
{
    /// <summary>Fewer than two profiles of one camera.</summary>
    FewProfiles,

    /// <summary>No two profiles were taken with the same settings.</summary>
    NoCommonSettings,

    /// <summary>The profiles have no quantity in common.</summary>
    NoCommonQuantity,
}

/// <summary>Frames to take again.</summary>
internal enum RetakeKind
{
    /// <summary>Darks.</summary>
    Darks,

    /// <summary>Bias frames.</summary>
    BiasFrames,

    /// <summary>Flats.</summary>
    Flats,
}
