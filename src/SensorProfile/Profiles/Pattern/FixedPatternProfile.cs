using SensorProfile.Profiles.Darks;

namespace SensorProfile.Profiles.Pattern;

/// <summary>Defect pixels, amplifier glow and structure, from the per-pixel maps.</summary>
public sealed record FixedPatternProfile
{
    /// <summary>Pixels with a dark rate above a threshold, at the reference temperature.</summary>
    public IReadOnlyList<HotPixelCount> HotPixelCurve { get; init; } = [];

    /// <summary>
    /// <see cref="HotPixelCurve"/> at the measured temperatures, coldest first; empty without temperature laws of single pixels.
    /// </summary>
    public IReadOnlyList<HotPixelCurveAt> HotPixelCurves { get; init; } = [];

    /// <summary>
    /// Dark rate at given shares of the pixels (0.5, 0.9, 0.95, 0.98, 0.99, 0.995, 0.999, 0.9999), e-/px/s at the reference
    /// temperature.
    /// </summary>
    public IReadOnlyList<RateQuantile> RateQuantiles { get; init; } = [];

    /// <summary>
    /// Rate without glow at the same shares as <see cref="RateQuantiles"/>; empty where nothing glows, and in older
    /// profiles.
    /// </summary>
    public IReadOnlyList<RateQuantile> ThermalQuantiles { get; init; } = [];

    /// <summary>Pixels with a dark rate, without glow, above a threshold; empty where nothing glows, and in older profiles.</summary>
    public IReadOnlyList<HotPixelCount> ThermalCurve { get; init; } = [];

    /// <summary>Pixels by the strength of the glow, faintest first; empty where nothing glows, and in older profiles.</summary>
    public IReadOnlyList<GlowClass> GlowClasses { get; init; } = [];

    /// <summary>
    /// Doubling temperature of pixels by dark rate, glow not included; empty with fewer than 3 temperatures.
    /// </summary>
    public IReadOnlyList<DoublingByRate> DoublingByRate { get; init; } = [];

    /// <summary>How the laws of hot pixels bend; null where this could not be learnt, and in older profiles.</summary>
    public HotLawBend? HotLawBend { get; init; }

    /// <summary>
    /// Pixels that jump between levels (telegraph pixels), in classes of about the same step, and those that scatter
    /// more than noise explains; empty when none were found, and in older profiles.
    /// </summary>
    public IReadOnlyList<FlickerClass> Flicker { get; init; } = [];

    /// <summary>
    /// Which part of the flickering pixels the frames could show, by step and dwell time; empty in older profiles.
    /// </summary>
    public IReadOnlyList<FlickerReach> FlickerReach { get; init; } = [];

    /// <summary>Defect counts by kind.</summary>
    public DefectCounts? Defects { get; init; }

    /// <summary>Where the defects are; null when they were not located.</summary>
    public DefectPlaces? Places { get; init; }

    /// <summary>The thresholds used for the counts.</summary>
    public DefectThresholds? Thresholds { get; init; }

    /// <summary>Amplifier glow, strongest place first; empty when none was found.</summary>
    public IReadOnlyList<GlowRegion> Glow { get; init; } = [];

    /// <summary>
    /// Temperature differences according to the hot pixels, one entry per set of darks that could be judged, coldest
    /// first.
    /// </summary>
    public IReadOnlyList<HotPixelTemperature> Thermometer { get; init; } = [];

    /// <summary>
    /// Whether a master dark can be computed, tried on every set; null when it was not tried (a quick characterisation,
    /// no bias frames, a single set of darks).
    /// </summary>
    public DarkPredictionProfile? DarkPrediction { get; init; }

    /// <summary>Structure of the level without light; null without two bias frames.</summary>
    public PatternStructure? Structure { get; init; }

    /// <summary>
    /// Structure of the response to light at half saturation (PRNU), % of the signal; null without flats.
    /// </summary>
    public PatternStructure? ResponseStructure { get; init; }

    /// <summary>Columns and rows that stand out in darks, bias frames or flats.</summary>
    public IReadOnlyList<DefectLine> Lines { get; init; } = [];

    /// <summary>Steps between parts of the sensor that are read through different amplifiers.</summary>
    public IReadOnlyList<SensorBoundary> Boundaries { get; init; } = [];

    /// <summary>Temporal noise common to a row, e- (ADU when the gain is unknown).</summary>
    public Measurement? RowNoise { get; init; }

    /// <summary>Temporal noise common to a column, e- (ADU when the gain is unknown).</summary>
    public Measurement? ColumnNoise { get; init; }

    /// <summary>Standard deviation of the bias level from frame to frame, ADU.</summary>
    public Measurement? BiasStability { get; init; }

    /// <summary>How steady the black level was over the session; null with too few bias and dark frames.</summary>
    public BlackLevelProfile? BlackLevel { get; init; }

    /// <summary>What the masked pixels show; null where the files hold no usable ones.</summary>
    public MaskedBorderProfile? MaskedBorder { get; init; }

    /// <summary>Temperature at which the rates hold, °C.</summary>
    public double? ReferenceTemperature { get; init; }
}
