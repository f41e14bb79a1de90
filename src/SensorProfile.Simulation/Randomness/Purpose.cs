namespace SensorProfile.Simulation.Randomness;

/// <summary>
/// What a stream of random numbers is used for; part of the stream's key, so that one effect never shifts the draws of
/// another.
/// </summary>
internal enum Purpose
{
    /// <summary>Serial number of the sensor, from the seed, when the description gives none.</summary>
    Serial = 1,

    /// <summary>Dark rate of the ordinary pixels.</summary>
    DarkPattern,

    /// <summary>Response to light.</summary>
    ResponsePattern,

    /// <summary>Fixed pattern of the bias level: pixels.</summary>
    BiasPixels,

    /// <summary>Fixed pattern of the bias level: rows and columns.</summary>
    BiasLines,

    /// <summary>Read noise of individual pixels.</summary>
    ReadNoisePattern,

    /// <summary>Hot pixels present from the start.</summary>
    HotPixels,

    /// <summary>Hot pixels that appeared over the years.</summary>
    NewHotPixels,

    /// <summary>Hot pixels of the growing patch.</summary>
    Patch,

    /// <summary>Telegraph pixels: positions, amplitudes and dwell times.</summary>
    TelegraphPixels,

    /// <summary>Dead pixels, bad columns and bad rows.</summary>
    DeadPixels,

    /// <summary>Stars on the light frames.</summary>
    Stars,

    /// <summary>Temperature, pedestal and lamp of one frame.</summary>
    Conditions,

    /// <summary>States of one telegraph pixel over the night.</summary>
    TelegraphStates,

    /// <summary>Column noise of one frame.</summary>
    Columns,

    /// <summary>Cosmic-ray hits of one frame.</summary>
    CosmicRays,

    /// <summary>Electrons and read noise of one row in one frame.</summary>
    Row,

    /// <summary>Cold pixels.</summary>
    ColdPixels,

    /// <summary>Groups of touching hot pixels.</summary>
    HotClusters,

    /// <summary>Defects and traps of a sensor's own physics.</summary>
    PhysicalDefects,

    /// <summary>Electrons, row noise and read noise of the masked border: one row of one frame.</summary>
    Border,
}
