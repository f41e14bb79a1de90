namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>What may be done with a profile, or how a question ended.</summary>
internal enum Verdict
{
    /// <summary>A question was answered.</summary>
    Answered,

    /// <summary>Everything was measured and nothing speaks against it.</summary>
    Keep,

    /// <summary>Everything was measured; there are warnings.</summary>
    KeepWithCare,

    /// <summary>A number that was asked for is missing.</summary>
    CannotTell,

    /// <summary>Comparison over the years: no change beyond the errors.</summary>
    Unchanged,

    /// <summary>Comparison over the years: something changed beyond the errors.</summary>
    Changed,

    /// <summary>Master darks: at least one must be retaken.</summary>
    Retake,
}
