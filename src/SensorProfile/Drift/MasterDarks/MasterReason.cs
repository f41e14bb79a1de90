using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>The ground of a verdict on a master dark.</summary>
internal enum MasterGround
{
    /// <summary>The residual left after subtracting it from the fresh darks.</summary>
    Residual,

    /// <summary>There is no set of two or more fresh darks.</summary>
    NoFreshDarks,

    /// <summary>Its size differs from the fresh darks'.</summary>
    OtherSize,

    /// <summary>Its size differs from the fresh darks', and its hot pixels do not reveal how it lies.</summary>
    OtherSizeUnexplained,

    /// <summary>Its size differs from the profile's camera.</summary>
    OtherCamera,

    /// <summary>The fresh darks were taken with other settings.</summary>
    OtherSettings,

    /// <summary>The fresh darks have another exposure or temperature.</summary>
    OtherConditions,

    /// <summary>Fewer than two fresh darks could be read.</summary>
    FewReadable,

    /// <summary>
    /// The fresh darks do not scatter at all: no sensor produced them, and their noise cannot serve as a reference.
    /// </summary>
    NoNoise,

    /// <summary>The file cannot be read.</summary>
    Unreadable,

    /// <summary>It was made from the fresh darks themselves: their noise cancels, and ageing cannot show.</summary>
    SameFrames,

    /// <summary>Its hot pixels are not those of the fresh darks.</summary>
    OtherSensor,
}

/// <summary>Why a master dark was judged as it was.</summary>
/// <param name="Ground">Ground of the verdict.</param>
internal sealed record MasterReason(MasterGround Ground)
{
    /// <summary>Conditions in the master's header; null when it was compared.</summary>
    internal DarkConditions? Master { get; init; }

    /// <summary>Conditions of the fresh darks, or of the profile's camera, that do not match it.</summary>
    internal IReadOnlyList<DarkConditions> Others { get; init; } = [];

    /// <summary>The system's message for a file that cannot be read; otherwise null.</summary>
    internal string? Problem { get; init; }

    /// <summary>
    /// Hot pixels in common with the fresh darks when these are too few for one sensor; otherwise null.
    /// </summary>
    internal CommonHotPixels? Common { get; init; }

    /// <summary>
    /// Whether its bias was subtracted and no fresh bias frames are there to subtract from the darks: the bias pattern
    /// then looks like a residual.
    /// </summary>
    internal bool BiasPatternStays { get; init; }

    /// <summary>How its hot pixels contradict its header; null when they do not.</summary>
    internal HeaderContradiction? Contradiction { get; init; }

    /// <summary>
    /// Share of the extra variance due to the master's own noise; null when its header does not state how many frames
    /// it holds.
    /// </summary>
    internal double? OwnNoise { get; init; }

    /// <summary>Number of frames with which a master's own noise would equal the extra noise.</summary>
    internal double FramesAlike { get; init; }
}

/// <summary>Size, settings and conditions of darks.</summary>
/// <param name="Width">Width, px.</param>
/// <param name="Height">Height, px.</param>
/// <param name="Settings">Gain, offset, binning; null where they do not matter.</param>
/// <param name="Exposure">Exposure, s; null when unknown.</param>
/// <param name="Temperature">Temperature, °C; null when unknown.</param>
internal sealed record DarkConditions(
    int Width,
    int Height,
    ModeSettings? Settings,
    double? Exposure,
    double? Temperature
);

/// <summary>Hot pixels common to a master and fresh darks.</summary>
/// <param name="Votes">Hot pixels at the same positions.</param>
/// <param name="Pixels">Hot pixels of the smaller set.</param>
/// <param name="Expected">Coincidences expected by chance.</param>
internal sealed record CommonHotPixels(int Votes, int Pixels, double Expected);

/// <summary>How the hot pixels of a master contradict the exposure or temperature in its header.</summary>
/// <param name="SignalRatio">Dark signal in the fresh darks over that in the master.</param>
/// <param name="Exposure">Exposure that would explain the ratio, s; null when the header states none.</param>
/// <param name="Colder">How much colder the sensor would have to be to explain it, °C (negative: warmer); null when the
/// doubling temperature is unknown.</param>
/// <param name="MaybeElectrons">Whether values in electrons would explain it as well.</param>
internal sealed record HeaderContradiction(double SignalRatio, double? Exposure, double? Colder, bool MaybeElectrons);
