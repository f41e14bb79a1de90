using SensorProfile.FixedPattern.Cells;
using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.Telegraph;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Maps of the dark rate, row by row.</summary>
internal sealed record RateMaps
{
    /// <summary>Rate at the reference temperature, e-/px/s; not a number where it could not be measured.</summary>
    public required float[] Rate { get; init; }

    /// <summary>
    /// Standard uncertainty of the rate, e-/px/s: temporal noise only, without what all pixels share (typical rate,
    /// gain).
    /// </summary>
    public required float[] Uncertainty { get; init; }

    /// <summary>
    /// Doubling temperature, °C; not a number where a pixel has no measured law of its own. Null when no laws were
    /// requested.
    /// </summary>
    /// <remarks>
    /// Stored to three digits, more than the law of any pixel is good for; saves half a map of memory with large
    /// cameras.
    /// </remarks>
    public Half[]? Doubling { get; init; }

    /// <summary>Flags.</summary>
    public required PixelFlags[] Flags { get; init; }

    /// <summary>Doubling temperature against rate.</summary>
    public IReadOnlyList<DoublingByRate> Classes { get; init; } = [];

    /// <summary>How the laws of the pixels that stand out depart from the typical one.</summary>
    public LawBend Bend { get; init; }

    /// <summary>The laws behind the classes, including a sample of ordinary pixels, in frame order.</summary>
    public IEnumerable<MeasuredLaw> Laws { get; init; } = [];

    /// <summary>Results of the level test.</summary>
    public TelegraphSearch Levelled { get; init; } = TelegraphSearch.None;

    /// <summary>Pixels that scatter by more than noise explains, with or without levels.</summary>
    public ExcessSearch Excess { get; init; } = ExcessSearch.None;

    /// <summary>The sets of frames for an ordinary pixel: variance and times.</summary>
    public IReadOnlyList<SampleGroup> OrdinarySets { get; init; } = [];

    /// <summary>The pixels that stand out from the ordinary ones, in frame order.</summary>
    public IEnumerable<OutstandingPixel> Outstanding { get; init; } = [];

    /// <summary>
    /// Weight of the signal without light in the rate of an ordinary pixel, 1/s; it correlates their errors.
    /// </summary>
    public double UnlitShare { get; init; }

    /// <summary>Rate of the typical pixel in these maps, e-/px/s.</summary>
    public double Typical { get; init; }

    /// <summary>Median uncertainty of the typical pixel, e-/px/s.</summary>
    public double TypicalUncertainty { get; init; }

    /// <summary>Signals of coarse cells, for the laws of the glow.</summary>
    public required CellSignals Cells { get; init; }

    /// <summary>The levels behind the maps, one entry per temperature with a line.</summary>
    public required IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> Temperatures { get; init; }
}
