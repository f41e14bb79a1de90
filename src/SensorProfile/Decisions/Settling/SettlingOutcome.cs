namespace SensorProfile.Decisions.Settling;

/// <summary>What would settle an answer that the uncertainty of the profile leaves open.</summary>
internal enum SettlingOutcome
{
    /// <summary>More frames of the kinds that the profile has.</summary>
    MoreFrames,

    /// <summary>Darks that show how dark current spreads over the pixels.</summary>
    SpreadOverPixels,

    /// <summary>No number of frames that anyone would take.</summary>
    TooManyFrames,

    /// <summary>Nothing: what remains is the counting error of the few hot pixels of this sensor.</summary>
    CountOfHotPixels,
}
