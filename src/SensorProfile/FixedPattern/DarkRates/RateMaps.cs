using SensorProfile.FixedPattern.Cells;
using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.Telegraph;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Maps of the dark rate, row after row.</summary>
internal sealed record RateMaps
{
    /// <summary>Rate at the reference temperature, e-/px/s; not a number where none could be measured.</summary>
    public required float[] Rate { get; init; }

    /// <summary>
    /// Standard uncertainty of the rate, e-/px/s: temporal noise only, what all pixels share (typical rate, gain) not
    /// included.
    /// </summary>
    public required float[] Uncertainty { get; init; }

    /// <summary>
    /// Doubling temperature, °C; not a number where the pixel's own law could not be measured. Null when no laws were
    /// asked for.
    /// </summary>
    /// <remarks>
    /// To three digits, which is more than any pixel's law is good to: half of a map less in memory with large cameras.
    /// </remarks>
    public Half[]? Doubling { get; init; }

    /// <summary>Flags.</summary>
    public required PixelFlags[] Flags { get; init; }

    /// <summary>Doubling temperature against rate.</summary>
    public IReadOnlyList<DoublingByRate> Classes { get; init; } = [];

    /// <summary>How the laws of the pixels that stand out bend away from the typical one.</summary>
    public LawBend Bend { get; init; }

    /// <summary>The laws behind them, a sample of the ordinary pixels' among them, in the order of the frame.</summary>
    public IEnumerable<MeasuredLaw> Laws { get; init; } = [];

    /// <summary>What the level test found.</summary>
    public TelegraphSearch Levelled { get; init; } = TelegraphSearch.None;

    /// <summary>Pixels that scatter more than noise explains, with or without levels.</summary>
    public ExcessSearch Excess { get; init; } = ExcessSearch.None;

    /// <summary>The sets of frames as an ordinary pixel sees them: variance and times.</summary>
    public IReadOnlyList<SampleGroup> OrdinarySets { get; init; } = [];

    /// <summary>The pixels that stand out of the ordinary ones, in the order of the frame.</summary>
    public IEnumerable<OutstandingPixel> Outstanding { get; init; } = [];

    /// <summary>
    /// What an ordinary pixel's rate takes from its signal without light, 1/s: their errors are correlated by it.
    /// </summary>
    public double UnlitShare { get; init; }

    /// <summary>Rate of the typical pixel in these maps, e-/px/s.</summary>
    public double Typical { get; init; }

    /// <summary>Median uncertainty of the typical pixel, e-/px/s.</summary>
    public double TypicalUncertainty { get; init; }

    /// <summary>Signals of coarse cells for the glow's laws.</summary>
    public required CellSignals Cells { get; init; }

    /// <summary>The levels behind the maps, one entry per temperature that made a line.</summary>
    public required IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> Temperatures { get; init; }
}
