using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Is my sensor ageing?</summary>
/// <remarks>
/// A drifted temperature probe is not a change of the sensor: dark current, glow and hot-pixel counts are then compared
/// at one temperature of the sensor.
/// </remarks>
public sealed record DriftAnswer : Answer
{
    /// <summary>
    /// Whether profiles of one sensor could be compared; if not, the command ends with exit code 1.
    /// </summary>
    internal bool Answered => Outcome is DriftVerdict.Changed or DriftVerdict.Unchanged;

    /// <summary>The verdict.</summary>
    public required DriftVerdict Outcome { get; init; }

    /// <summary>Why nothing can be told; null when it can, and for two sensors.</summary>
    internal DriftGap? Gap { get; init; }

    /// <summary>Profiles of another sensor under the same name; empty when there are none.</summary>
    internal IReadOnlyList<RejectedFile> OtherSensors { get; init; } = [];

    /// <summary>Years from the first to the last profile.</summary>
    public double Years { get; init; }

    /// <summary>Probability of calling an unchanged sensor changed.</summary>
    internal double Significance { get; init; }

    /// <summary>Kinds of frames to take again; empty when none are needed.</summary>
    internal IReadOnlyList<RetakeKind> Retake { get; init; } = [];

    /// <summary>The profiles that were compared, oldest first.</summary>
    public IReadOnlyList<string> Compared { get; init; } = [];

    /// <summary>When the frames of each profile were taken.</summary>
    public IReadOnlyList<DateTimeOffset> Dates { get; init; } = [];

    /// <summary>The camera, as the last profile names it; empty when nothing could be compared.</summary>
    internal string Camera { get; init; } = "";

    /// <summary>Profiles that were not compared, each with the reason.</summary>
    public IReadOnlyList<RejectedFile> Refused { get; init; } = [];

    /// <summary>First against last profile, quantity by quantity.</summary>
    public IReadOnlyList<DriftChange> Changes { get; init; } = [];

    /// <summary>Slopes per year; empty with fewer than three dates.</summary>
    public IReadOnlyList<DriftTrend> Trends { get; init; } = [];

    /// <summary>Hot pixels of the first mode that has maps in both profiles; null when none has.</summary>
    internal HotPixelDrift? HotPixels => HotPixelModes.Count > 0 ? HotPixelModes[0] : null;

    /// <summary>Hot pixels of every mode that has maps in both profiles.</summary>
    internal IReadOnlyList<HotPixelDrift> HotPixelModes { get; init; } = [];

    /// <summary>Probe or ageing, for every mode whose dark currents could be compared.</summary>
    internal IReadOnlyList<ProbeOrAgeing> Probes { get; init; } = [];

    /// <summary>When the present darks will no longer be good enough; empty with fewer than three dates.</summary>
    internal IReadOnlyList<LibraryForecast> Library { get; init; } = [];
}
