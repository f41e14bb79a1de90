using SensorProfile.DarkCurrent.Levels;
using SensorProfile.Profiles.Darks;
using SensorProfile.Screening;

namespace SensorProfile.DarkCurrent.Results;

/// <summary>The darks of one temperature and the lines through them.</summary>
internal sealed record DarkTemperature
{
    /// <summary>Mean sensor temperature as read, °C.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>Uncertainty of that mean relative to the other temperatures, °C.</summary>
    public required double TemperatureUncertainty { get; init; }

    /// <summary>One or more sets per exposure.</summary>
    public required IReadOnlyList<ScreenedSet> Sets { get; init; }

    /// <summary>Level of the median pixel against exposure, e-; null with one exposure or without gain.</summary>
    public DarkSignalFit? Typical { get; init; }

    /// <summary>Shift that was subtracted from the medians.</summary>
    public MedianShift Shift { get; init; } = MedianShift.None;

    /// <summary>Mean level of all pixels against exposure, e-.</summary>
    public DarkSignalFit? Mean { get; init; }

    /// <summary>Temporal variance against exposure, e-².</summary>
    public DarkSignalFit? Variance { get; init; }

    /// <summary>The same for each channel: level of the median pixel, and variance.</summary>
    public IReadOnlyList<(DarkSignalFit? Typical, DarkSignalFit? Variance)> Channels { get; init; } = [];

    /// <summary>Levels for plots, ADU.</summary>
    public IReadOnlyList<DarkLevel> Levels { get; init; } = [];

    /// <summary>Exposures, s, ascending.</summary>
    public IReadOnlyList<double> Exposures =>
        [.. Sets.Select(s => s.Set.ExposureSeconds).OfType<double>().Distinct().Order()];

    /// <summary>Number of frames.</summary>
    public int Frames => Sets.Sum(s => s.Frames.Count);

    /// <summary>
    /// Variance of the ordinary pixels, in the typical part of the sensor, e-²; measured only if the variance of the
    /// whole frame grows faster than the level.
    /// </summary>
    public DarkSignalFit? LocalVariance { get; init; }

    /// <summary>
    /// Whether the camera pins its level, that is, subtracts the dark signal: the level grows far less than the variance
    /// requires, both in the whole frame and for the ordinary pixels. In the whole frame only, the cause is the noise of
    /// strong glow or many warm pixels, which a median level leaves out.
    /// </summary>
    public bool LevelPinned => OutgrowsLevel(Variance) && (LocalVariance is null || OutgrowsLevel(LocalVariance));

    private bool OutgrowsLevel(DarkSignalFit? growing) =>
        Typical is { } level
        && growing is { } variance
        && variance.Resolved
        && variance.Slope.Value > 4 * variance.Slope.StandardUncertainty
        && level.Slope.Value < 0.5 * variance.Slope.Value
        && variance.Slope.Value - level.Slope.Value
            > 4 * Math.Sqrt(Square(variance.Slope.StandardUncertainty) + Square(level.Slope.StandardUncertainty));

    private static double Square(double x) => x * x;
}
