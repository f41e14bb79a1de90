using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Input;

/// <summary>Everything the per-pixel measurements need to know about a camera mode.</summary>
internal sealed record PatternInput
{
    /// <summary>Width, px.</summary>
    public required int Width { get; init; }

    /// <summary>Height, px.</summary>
    public required int Height { get; init; }

    /// <summary>Which pixels share a channel.</summary>
    public required ColourMosaic Mosaic { get; init; }

    /// <summary>e-/ADU of each channel.</summary>
    public required IReadOnlyList<double> Gains { get; init; }

    /// <summary>The darks, coldest first.</summary>
    public required IReadOnlyList<DarkSeries> Series { get; init; }

    /// <summary>Number of dark frames at all temperatures.</summary>
    public int Darks => Series.Sum(s => s.Exposures.Sum(e => e.Frames.Count));

    /// <summary>Temperature to which rates are scaled, °C.</summary>
    public required double ReferenceTemperature { get; init; }

    /// <summary>Rate of the typical pixel at the reference temperature, e-/px/s; null when not resolved.</summary>
    public Measurement? TypicalAtReference { get; init; }

    /// <summary>
    /// Rate of the typical pixel against temperature, °C → e-/px/s; null when no law could be fitted.
    /// </summary>
    public Func<double, double>? TypicalLaw { get; init; }

    /// <summary>
    /// The same without a constant floor, for the laws of single pixels; null when no law without floor was selected.
    /// </summary>
    public Func<double, double>? ActivationLaw { get; init; }

    /// <summary>Mean of every pixel without light at zero exposure (bias), ADU; null without bias frames.</summary>
    public PixelMoments? Unlit { get; init; }

    /// <summary>The sets of frames behind <see cref="Unlit"/> (exposure 0), for the level test; may be empty.</summary>
    public IReadOnlyList<DarkExposure> UnlitSets { get; init; } = [];

    /// <summary>Whether the camera pins its black level, so that the level of a dark is that of the bias.</summary>
    public bool LevelPinned { get; init; }

    /// <summary>Columns and rows that stand out in bias frames or flats.</summary>
    public IReadOnlyList<DefectLine> Lines { get; init; } = [];

    /// <summary>
    /// Temporal variance of the typical pixel without light, ADU²; used when there are too few frames to measure their
    /// own.
    /// </summary>
    public double UnlitVariance { get; init; }

    /// <summary>ADU between two usable codes.</summary>
    public int CodeStep { get; init; } = 1;

    /// <summary>Highest code, ADU.</summary>
    public double TopCode { get; init; } = ushort.MaxValue;

    /// <summary>Thresholds; null to choose them from the frames.</summary>
    public DefectThresholds? Thresholds { get; init; }

    /// <summary>Leaves out the temperature laws of single pixels.</summary>
    public bool Quick { get; init; }

    /// <summary>Whether single pixels are tested for jumps between levels.</summary>
    public bool TestLevels { get; init; } = true;

    /// <summary>Number of temperatures needed for the law of a single pixel.</summary>
    public int MinLawTemperatures { get; init; } = 3;

    /// <summary>Pixels without a value, which get no rate; null when all have one.</summary>
    public MissingPixels? Missing { get; init; }

    /// <summary>How walks over the frames are run.</summary>
    public WalkOptions Walk { get; init; } = new();

    /// <summary>Pixels in a frame.</summary>
    public int Pixels => Width * Height;
}
