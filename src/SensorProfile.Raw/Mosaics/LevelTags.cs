using SensorProfile.Raw.Containers;
using static System.FormattableString;

namespace SensorProfile.Raw.Mosaics;

/// <summary>
/// Reads levels and crop of a mosaic. The samples do not depend on them, so faults become warnings.
/// </summary>
internal static class LevelTags
{
    private const int MaxPatternLevels = 4096;

    /// <summary>The black level; null when the file states none or nothing valid.</summary>
    public static RawBlackLevel? BlackLevel(TiffDirectory directory, RawArea active, List<RawWarning> warnings)
    {
        double[] levels = Numbers(directory, Tag.BlackLevel, MaxPatternLevels, warnings);
        double[]? columns = Offsets(directory, Tag.BlackLevelDeltaH, active.Width, warnings);
        double[]? rows = Offsets(directory, Tag.BlackLevelDeltaV, active.Height, warnings);
        long[] repeat = OptionalTags.Read(
            directory,
            Tag.BlackLevelRepeatDim,
            warnings,
            d => d.Integers(Tag.BlackLevelRepeatDim, 2),
            []
        );
        (long patternRows, long patternColumns) = repeat is [var r, var c] ? (r, c) : (1, 1);
        if (levels.Length == 0 && columns is null && rows is null)
            return null;
        if (levels.Length == 0)
            (levels, patternRows, patternColumns) = ([0], 1, 1); // the default of the specification
        if (patternRows < 1 || patternColumns < 1 || patternRows * patternColumns != levels.Length)
        {
            warnings.Add(
                OptionalTags.Passed(
                    directory,
                    Tag.BlackLevel,
                    Invariant($"a pattern of {patternRows} × {patternColumns} does not fit {levels.Length} levels.")
                )
            );
            return null;
        }
        return new RawBlackLevel
        {
            PatternRows = (int)patternRows,
            PatternColumns = (int)patternColumns,
            Pattern = levels,
            ColumnOffsets = columns,
            RowOffsets = rows,
        };
    }

    /// <summary>The saturation level; null when the file states none or nothing valid.</summary>
    public static double? WhiteLevel(TiffDirectory directory, List<RawWarning> warnings) =>
        Numbers(directory, Tag.WhiteLevel, 4, warnings) is [> 0 and var white, ..] ? white : null;

    /// <summary>The default crop, rounded inwards; null when the file states none or nothing valid.</summary>
    public static RawArea? DefaultCrop(TiffDirectory directory, RawArea active, List<RawWarning> warnings)
    {
        double[] origin = Numbers(directory, Tag.DefaultCropOrigin, 2, warnings);
        double[] size = Numbers(directory, Tag.DefaultCropSize, 2, warnings);
        if (origin.Length != 2 || size.Length != 2)
            return null;
        (double left, double top) = (Math.Ceiling(origin[0]), Math.Ceiling(origin[1]));
        (double right, double bottom) = (Math.Floor(origin[0] + size[0]), Math.Floor(origin[1] + size[1]));
        if (left >= 0 && top >= 0 && left < right && top < bottom && right <= active.Width && bottom <= active.Height)
            return new RawArea((int)top, (int)left, (int)bottom, (int)right);
        warnings.Add(
            OptionalTags.Passed(directory, Tag.DefaultCropSize, "the crop does not lie within the active area.")
        );
        return null;
    }

    private static double[]? Offsets(TiffDirectory directory, Tag tag, int needed, List<RawWarning> warnings)
    {
        double[] offsets = Numbers(directory, tag, MosaicLimits.MaxPixelsOfASide, warnings);
        if (offsets.Length == needed)
            return offsets;
        if (offsets.Length > 0)
            warnings.Add(
                OptionalTags.Passed(directory, tag, Invariant($"expected {needed} offsets, found {offsets.Length}."))
            );
        return null;
    }

    private static double[] Numbers(TiffDirectory directory, Tag tag, int most, List<RawWarning> warnings)
    {
        double[] numbers = OptionalTags.Read(directory, tag, warnings, d => d.Numbers(tag, most), []);
        if (numbers.All(double.IsFinite))
            return numbers;
        warnings.Add(OptionalTags.Passed(directory, tag, "a value is not finite."));
        return [];
    }
}
