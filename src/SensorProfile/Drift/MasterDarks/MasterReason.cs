using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>What the verdict on a master dark rests on.</summary>
public enum MasterGround
{
    /// <summary>What is left after subtraction from the fresh darks.</summary>
    Residual,

    /// <summary>There is no set of two or more fresh darks.</summary>
    NoFreshDarks,

    /// <summary>Its size is not that of the fresh darks.</summary>
    OtherSize,

    /// <summary>Its size is not that of the fresh darks, and its hot pixels do not say how it lies.</summary>
    OtherSizeUnexplained,

    /// <summary>Its size is not that of the profile's camera.</summary>
    OtherCamera,

    /// <summary>The fresh darks were taken with other settings.</summary>
    OtherSettings,

    /// <summary>The fresh darks have another exposure or temperature.</summary>
    OtherConditions,

    /// <summary>Fewer than two fresh darks could be read.</summary>
    FewReadable,

    /// <summary>The fresh darks do not scatter at all: no sensor gave them, and nothing can be held against their
    /// noise.</summary>
    NoNoise,

    /// <summary>The file cannot be read.</summary>
    Unreadable,

    /// <summary>It was made of the fresh darks themselves: their noise cancels, and no age shows.</summary>
    SameFrames,

    /// <summary>Its hot pixels are not those of the fresh darks.</summary>
    OtherSensor,
}

/// <summary>Why a master dark is judged as it is.</summary>
/// <param name="Ground">What the verdict rests on.</param>
public sealed record MasterReason(MasterGround Ground)
{
    /// <summary>The master as its header states it; null where it was compared.</summary>
    internal DarkConditions? Master { get; init; }

    /// <summary>The fresh darks that do not fit it, or the camera of the profile that does not.</summary>
    internal IReadOnlyList<DarkConditions> Others { get; init; } = [];

    /// <summary>What the file system says of a file that cannot be read; null for one that can.</summary>
    internal string? Problem { get; init; }

    /// <summary>Hot pixels in common with the fresh darks, where they are too few for one sensor; else null.</summary>
    internal CommonHotPixels? Common { get; init; }

    /// <summary>
    /// Whether its bias was taken off and no fresh bias frames take it off the darks: the bias pattern then looks like
    /// a residual.
    /// </summary>
    internal bool BiasPatternStays { get; init; }

    /// <summary>How its hot pixels contradict its header; null when they do not.</summary>
    internal HeaderContradiction? Contradiction { get; init; }

    /// <summary>
    /// Share of the extra variance that is the master's own noise; null where its header does not say how many frames
    /// it holds.
    /// </summary>
    internal double? OwnNoise { get; init; }

    /// <summary>Frames of a master whose own noise would be as large as the extra noise.</summary>
    internal double FramesAlike { get; init; }
}

/// <summary>Size, settings and conditions of darks.</summary>
/// <param name="Width">px.</param>
/// <param name="Height">px.</param>
/// <param name="Settings">Gain, offset, binning; null where they do not matter.</param>
/// <param name="Exposure">s; null when unknown.</param>
/// <param name="Temperature">°C; null when unknown.</param>
internal sealed record DarkConditions(
    int Width,
    int Height,
    ModeSettings? Settings,
    double? Exposure,
    double? Temperature
);

/// <summary>Hot pixels that a master and fresh darks have in common.</summary>
/// <param name="Votes">At the same places.</param>
/// <param name="Pixels">Of so many.</param>
/// <param name="Expected">By chance.</param>
internal sealed record CommonHotPixels(int Votes, int Pixels, double Expected);

/// <summary>How the hot pixels of a master contradict the exposure or temperature that its header states.</summary>
/// <param name="SignalRatio">Dark signal in the fresh darks over that in the master.</param>
/// <param name="Exposure">Exposure that would explain it, s; null when the header states none.</param>
/// <param name="Colder">The sensor so much colder would explain it, °C (negative: warmer); null when the doubling
/// temperature is not known.</param>
/// <param name="MaybeElectrons">Whether values in electrons would explain it too.</param>
internal sealed record HeaderContradiction(double SignalRatio, double? Exposure, double? Colder, bool MaybeElectrons);
