using SensorProfile.Raw.Containers;
using static System.FormattableString;

namespace SensorProfile.Raw.Mosaics;

/// <summary>
/// Reads the description of a mosaic from its directory: areas, colour filter, curve and, through
/// <see cref="LevelTags"/>, levels.
/// </summary>
internal static class MosaicDescription
{
    private const int MaxMaskedAreas = 64;

    /// <summary>Reads the description.</summary>
    /// <param name="found">The directory.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="warnings">Receives what was ignored.</param>
    /// <exception cref="RawFormatException">A tag needed to interpret the samples is wrong or not
    /// supported.</exception>
    public static RawMosaic Describe(FoundMosaic found, SegmentLayout layout, List<RawWarning> warnings)
    {
        TiffDirectory directory = found.Directory;
        RefuseInterleaving(directory);
        RawArea active = ActiveArea(directory, layout);
        RawArea[] masked = MaskedAreas(directory, layout, warnings);
        return new RawMosaic
        {
            SensorWidth = layout.Width,
            SensorHeight = layout.Height,
            ActiveArea = active,
            MaskedAreas = masked.Length > 0 ? masked : [.. active.Around(layout.Width, layout.Height)],
            MaskedAreasAreNamed = masked.Length > 0,
            DefaultCrop = LevelTags.DefaultCrop(directory, active, warnings),
            ColourFilter = found.HasColourFilter ? ColourFilter(directory) : null,
            BlackLevel = LevelTags.BlackLevel(directory, active, warnings),
            WhiteLevel = LevelTags.WhiteLevel(directory, warnings),
            Linearisation = Linearisation(directory, warnings),
        };
    }

    private static void RefuseInterleaving(TiffDirectory directory)
    {
        foreach (Tag tag in new[] { Tag.RowInterleaveFactor, Tag.ColumnInterleaveFactor })
            if (directory.Integer(tag) is { } factor and not 1)
                throw directory.Refuse(
                    tag,
                    RawRefusal.UnknownCoding,
                    Invariant(
                        $"the mosaic is stored as {factor} smaller ones, which this reader does not put together."
                    ),
                    "Convert it to DNG without interleaving."
                );
        if (directory.Integer(Tag.SamplesPerPixel) is { } samples and not 1)
            throw directory.Refuse(
                Tag.SamplesPerPixel,
                RawRefusal.UnknownCoding,
                Invariant($"expected 1 sample per pixel of a mosaic, found {samples}."),
                "Convert the original raw file again."
            );
    }

    private static RawArea ActiveArea(TiffDirectory directory, SegmentLayout layout)
    {
        if (!directory.Has(Tag.ActiveArea))
            return new RawArea(0, 0, layout.Height, layout.Width);
        long[] sides = directory.Integers(Tag.ActiveArea, 4);
        string size = Invariant($"{layout.Width} × {layout.Height} samples");
        string found = string.Join(' ', sides.Select(side => Invariant($"{side}")));
        return Area(sides, layout)
            ?? throw directory.Damaged(
                Tag.ActiveArea,
                $"expected top, left, bottom and right within {size}, found {found}."
            );
    }

    private static RawArea[] MaskedAreas(TiffDirectory directory, SegmentLayout layout, List<RawWarning> warnings)
    {
        long[] sides = OptionalTags.Read(
            directory,
            Tag.MaskedAreas,
            warnings,
            d => d.Integers(Tag.MaskedAreas, 4 * MaxMaskedAreas),
            []
        );
        RawArea?[] areas = [.. sides.Chunk(4).Select(four => Area(four, layout))];
        if (areas.All(area => area is not null))
            return [.. areas.Select(area => area!.Value)];
        warnings.Add(OptionalTags.Passed(directory, Tag.MaskedAreas, "an area does not lie within the mosaic."));
        return [];
    }

    private static RawArea? Area(long[] sides, SegmentLayout layout) =>
        sides is [var top, var left, var bottom, var right]
        && top >= 0
        && left >= 0
        && top < bottom
        && left < right
        && bottom <= layout.Height
        && right <= layout.Width
            ? new RawArea((int)top, (int)left, (int)bottom, (int)right)
            : null;

    private static RawColourFilter ColourFilter(TiffDirectory directory)
    {
        const string convert = RawColourFilter.Remedy;
        if (directory.Integer(Tag.CFALayout) is { } layout and not 1)
            throw directory.Refuse(
                Tag.CFALayout,
                RawRefusal.UnknownCoding,
                Invariant($"the pixels lie in staggered rows or columns (layout {layout}), not in a rectangle."),
                convert
            );
        long[] repeat = directory.Integers(Tag.CFARepeatPatternDim, 2);
        if (repeat.Length < 2)
            throw directory.Damaged(
                Tag.CFARepeatPatternDim,
                "the file does not say after how many pixels its colour filter repeats."
            );
        if (repeat is not [2, 2])
            throw directory.Refuse(
                Tag.CFARepeatPatternDim,
                RawRefusal.UnknownCoding,
                Invariant(
                    $"the colour filter repeats every {repeat[0]} × {repeat[1]} pixels; this reader knows 2 × 2."
                ),
                convert
            );
        byte[] colours = directory.Bytes(Tag.CFAPattern, 4);
        if (colours.Length != 4 || colours.Any(colour => colour > 2))
            throw directory.Refuse(
                Tag.CFAPattern,
                RawRefusal.UnknownCoding,
                $"expected a filter of red, green and blue, found {Names(colours)}.",
                convert
            );
        RawColour[] named = [.. colours.Select(colour => (RawColour)colour)];
        return new RawColourFilter(named[0], named[1], named[2], named[3]);
    }

    private static string Names(byte[] colours) =>
        colours.Length == 4 ? string.Join(", ", colours.Select(NameOf)) : Invariant($"{colours.Length} colours");

    private static string NameOf(byte colour) =>
        colour switch
        {
            0 => "red",
            1 => "green",
            2 => "blue",
            3 => "cyan",
            4 => "magenta",
            5 => "yellow",
            6 => "white",
            _ => Invariant($"colour {colour}"),
        };

    private static RawLinearisation? Linearisation(TiffDirectory directory, List<RawWarning> warnings)
    {
        const int mostCodes = 65_536;
        if (!directory.Has(Tag.LinearizationTable))
            return null;
        long[] codes = directory.Integers(Tag.LinearizationTable, mostCodes);
        if (codes.Any(code => code is < 0 or > ushort.MaxValue))
            throw directory.Damaged(Tag.LinearizationTable, "expected codes from 0 to 65535.");
        bool isIdentity = codes.Select((code, i) => code == i).All(same => same);
        if (isIdentity)
            return null;
        var curve = new RawLinearisation([.. codes.Select(code => (ushort)code)]);
        string steps = Invariant($"steps of up to {curve.LargestStep} linear codes");
        warnings.Add(
            new RawWarning(
                RawWarningCodes.CurvedCodes,
                directory.Location(Tag.LinearizationTable),
                $"the stored codes follow a curve with {steps}: their noise is not that of the sensor's converter."
            )
        );
        return curve;
    }
}
