using OxyPlot;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Where the sensor is bad: in words, and on pictures of it.</summary>
internal static class BadPlacesSection
{
    /// <summary>The section; null without a fixed pattern.</summary>
    /// <param name="context">The mode.</param> <param name="pictures">Pictures of its sensor.</param>
    public static ReportSection? Compose(ModeContext context, IReadOnlyList<MapPicture> pictures)
    {
        if (
            context.Mode.FixedPattern is not { } pattern
            || (pattern.Places is null && pattern.Defects is null && pattern.Glow.Count == 0 && pictures.Count == 0)
        )
            return null;
        var blocks = new List<Block>();
        if (pattern.Places is not null || pattern.Defects is not null || pattern.Glow.Count > 0)
            blocks.Add(new ListBlock(BadPlaces.Sentences(pattern, Pixels(pattern, pictures))));
        foreach (MapPicture picture in pictures.Where(p => p.Map is not ("glow" or "read-noise")))
            blocks.Add(Figure(context, pattern, picture));
        if (blocks.Count == 0)
            return null;
        return new ReportSection("Where the sensor is bad", context.Label, blocks);
    }

    private static FigureBlock Figure(ModeContext context, FixedPatternProfile pattern, MapPicture picture) =>
        picture.Map switch
        {
            "dark-rate" => Picture(
                context,
                PicturePlot.Draw(picture, Marks(pattern, picture), []),
                $"{picture.Title}{At(pattern)}: grey scale at the right, "
                    + $"{(picture.Logarithmic ? "in equal ratios" : "in equal steps")}; blue was not measured. Each "
                    + "point is the mean of a square of pixels, or its hottest pixel where that is hot. The first row "
                    + "of the file is at the top.",
                "places"
            ),
            "defects" => Picture(
                context,
                PicturePlot.Draw(picture, [], Words(pattern, picture)),
                "Defect pixels by kind; a point shows the gravest defect of its square of pixels. The labels give "
                    + "the hot pixels in each ninth of the sensor.",
                "places"
            ),
            _ => Picture(
                context,
                PicturePlot.Draw(picture, [], []),
                $"{picture.Title}; blue was not measured. The first row of the file is at the top.",
                null
            ),
        };

    private static FigureBlock Picture(ModeContext context, Panel panel, string caption, string? table) =>
        new(context.Figures.Next(), caption, [panel])
        {
            KeepsShape = true,
            Table =
                table is null || context.Mode.FixedPattern?.Places is null
                    ? null
                    : $"tables/{context.TableFolder}{table}.csv",
        };

    private static List<PictureMarks> Marks(FixedPatternProfile pattern, MapPicture picture)
    {
        double height = picture.FrameHeight > 0 ? picture.FrameHeight : picture.Height,
            width = picture.FrameWidth > 0 ? picture.FrameWidth : picture.Width;
        var marks = new List<PictureMarks>();
        void Add(
            string title,
            OxyColor colour,
            MarkerType marker,
            double size,
            bool filled,
            IEnumerable<(double, double)> places
        )
        {
            // Moved inwards: a mark at the very edge would be cut in two.
            (double, double)[] all =
            [
                .. places.Select(p =>
                    (
                        Math.Clamp(p.Item1, 0.012 * width, 0.988 * width),
                        Math.Clamp(p.Item2, 0.015 * height, 0.985 * height)
                    )
                ),
            ];
            if (all.Length > 0)
                marks.Add(new(title, colour, marker, size, filled, all));
        }
        Add(
            "glow, brightest place",
            Palette.Orange,
            MarkerType.Diamond,
            5,
            false,
            pattern.Glow.Where(g => g.X > 0).Select(g => ((double)g.X, (double)g.Y))
        );
        Add(
            "hot pixels that touch",
            Palette.Vermillion,
            MarkerType.Circle,
            5,
            false,
            (pattern.Places?.Clusters ?? []).Select(c => ((double)c.X, (double)c.Y))
        );
        Add(
            "bad column",
            Palette.SkyBlue,
            MarkerType.Triangle,
            5,
            true,
            (pattern.Places?.Columns ?? []).Select(c => ((double)c, height))
        );
        Add(
            "bad row",
            Palette.Green,
            MarkerType.Square,
            4,
            true,
            (pattern.Places?.Rows ?? []).Select(r => (0.0, (double)r))
        );
        return marks;
    }

    private static List<PictureWords> Words(FixedPatternProfile pattern, MapPicture picture)
    {
        if (pattern.Places is not { Areas.Count: 9 } places)
            return [];
        double width = picture.FrameWidth > 0 ? picture.FrameWidth : picture.Width,
            height = picture.FrameHeight > 0 ? picture.FrameHeight : picture.Height;
        return
        [
            .. places.Areas.Select(
                (a, k) =>
                    new PictureWords(
                        $"{QuantityText.Count(a.Hot)} hot",
                        (k % 3 + 0.5) * width / 3,
                        (k / 3 + 0.5) * height / 3
                    )
            ),
        ];
    }

    private static long Pixels(FixedPatternProfile pattern, IReadOnlyList<MapPicture> pictures) =>
        pattern.Places?.Areas.Sum(a => a.Pixels) is > 0 and { } all
            ? all
            : pictures.Select(p => (long)p.FrameWidth * p.FrameHeight).FirstOrDefault();

    private static string At(FixedPatternProfile pattern) =>
        pattern.ReferenceTemperature is { } t ? $" at {QuantityText.Degrees(t)}" : "";
}
