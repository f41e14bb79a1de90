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

    /// <summary>Of a comparison over the years: nothing beyond the errors.</summary>
    Unchanged,

    /// <summary>Of a comparison over the years: something changed beyond the errors.</summary>
    Changed,

    /// <summary>Of master darks: at least one must be taken again.</summary>
    Retake,
}
