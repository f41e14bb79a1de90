using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Is my sensor ageing?</summary>
/// <remarks>
/// Verdict: changed | unchanged | cannot-tell | another-sensor. A temperature probe that drifted is no change of the
/// sensor: dark current, glow and counts of hot pixels are then compared at one temperature of the sensor.
/// </remarks>
public sealed record DriftAnswer : WordedAnswer
{
    /// <summary>
    /// Whether profiles of one sensor could be compared; the command ends with exit code 1 where not.
    /// </summary>
    public bool Answered => Outcome is DriftVerdict.Changed or DriftVerdict.Unchanged;

    /// <summary>The verdict; <see cref="WordedAnswer.Verdict"/> is its word for scripts.</summary>
    public required DriftVerdict Outcome { get; init; }

    /// <summary>What to retake, in words.</summary>
    public string Advice { get; init; } = "";

    /// <summary>Kinds of frames to take again: darks, bias frames, flats; empty when nothing needs to be.</summary>
    public IReadOnlyList<string> Retake { get; init; } = [];

    /// <summary>The profiles that were compared, oldest first.</summary>
    public IReadOnlyList<string> Compared { get; init; } = [];

    /// <summary>When the frames of each of them were taken.</summary>
    public IReadOnlyList<DateTimeOffset> Dates { get; init; } = [];

    /// <summary>The camera, as the last profile names it; empty when nothing could be compared.</summary>
    public string Camera { get; init; } = "";

    /// <summary>Profiles that were not compared, each with the reason.</summary>
    public IReadOnlyList<RejectedFile> Refused { get; init; } = [];

    /// <summary>First against last profile, quantity by quantity.</summary>
    public IReadOnlyList<DriftChange> Changes { get; init; } = [];

    /// <summary>Slopes per year; empty with fewer than three dates.</summary>
    public IReadOnlyList<DriftTrend> Trends { get; init; } = [];

    /// <summary>Hot pixels of the first mode that has maps in both profiles; null when none has.</summary>
    public HotPixelDrift? HotPixels => HotPixelModes.Count > 0 ? HotPixelModes[0] : null;

    /// <summary>Hot pixels of every mode that has maps in both profiles.</summary>
    public IReadOnlyList<HotPixelDrift> HotPixelModes { get; init; } = [];

    /// <summary>Probe or ageing, for every mode whose dark currents could be compared.</summary>
    public IReadOnlyList<ProbeOrAgeing> Probes { get; init; } = [];

    /// <summary>When the present darks will no longer do; empty with fewer than three dates.</summary>
    public IReadOnlyList<LibraryForecast> Library { get; init; } = [];
}
