namespace SensorProfile.Profiles.Darks;

/// <summary>
/// How steady the black level was over the session: the level of every bias and dark frame, the dark signal's part
/// removed, against time, sensor temperature and exposure.
/// </summary>
/// <remarks>
/// A term that the frames cannot separate from another one is null and named in <see cref="CannotTell"/>.
/// </remarks>
public sealed record BlackLevelProfile
{
    /// <summary>Level at the middle of the session and of its temperatures, without exposure, ADU.</summary>
    public Measurement? Level { get; init; }

    /// <summary>Standard deviation from frame to frame, beyond the pixels' own noise, ADU.</summary>
    public Measurement? Jitter { get; init; }

    /// <summary>
    /// Standard deviation from set to set that time, temperature and exposure leave unexplained, ADU; null with too few
    /// sets.
    /// </summary>
    public Measurement? SetScatter { get; init; }

    /// <summary>Change with time, ADU/h.</summary>
    public Measurement? DriftPerHour { get; init; }

    /// <summary>Change with the sensor's temperature, ADU/°C.</summary>
    public Measurement? DriftPerDegree { get; init; }

    /// <summary>Change with the exposure beyond the dark signal that the noise shows, ADU/s.</summary>
    public Measurement? DriftPerSecond { get; init; }

    /// <summary>First frame after a pause minus the frames after it, ADU.</summary>
    public Measurement? FirstFrameDifference { get; init; }

    /// <summary>Sudden steps between frames taken one after the other, in order of time.</summary>
    public IReadOnlyList<BlackLevelJump> Jumps { get; init; } = [];

    /// <summary>The dark current that this lets one see, one entry per temperature, coldest first.</summary>
    public IReadOnlyList<DarkCurrentLimit> Limits { get; init; } = [];

    /// <summary>The smallest of <see cref="Limits"/>, e-/px/s.</summary>
    public Measurement? SmallestDarkCurrent { get; init; }

    /// <summary>What could not be determined, and why: one sentence each.</summary>
    public IReadOnlyList<string> CannotTell { get; init; } = [];

    /// <summary>The levels behind all this, in order of time; at most 512, evenly chosen.</summary>
    public IReadOnlyList<BlackLevelPoint> Points { get; init; } = [];
}
