namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>Whether a dark was computed.</summary>
public enum PredictionVerdict
{
    /// <summary>It was.</summary>
    Computed,

    /// <summary>Fresh darks contradict it.</summary>
    CannotTell,
}

/// <summary>The trial on left-out darks that applies to a question.</summary>
public enum PredictionProof
{
    /// <summary>Another exposure at a measured temperature.</summary>
    Exposure,

    /// <summary>A temperature between measured ones.</summary>
    Temperature,

    /// <summary>A temperature beyond the measured ones.</summary>
    Beyond,
}
