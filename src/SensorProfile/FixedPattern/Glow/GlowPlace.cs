using SensorProfile.FixedPattern.Cells;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>Describes one place that glows.</summary>
internal static class GlowPlace
{
    /// <summary>
    /// What a glow has below its reach is not in its total: 5 % of it in physical cameras simulated (CoverageRun).
    /// </summary>
    internal const double TailDoubt = 0.05;

    private const double EdgeShare = 0.15; // of the width or height of the frame
    private const double AreaShareOfPeak = 0.1;

    /// <summary>Measures peak, extent, total and laws.</summary>
    /// <param name="input">The camera mode.</param>
    /// <param name="maps">Rates.</param>
    /// <param name="grid">The cells.</param>
    /// <param name="place">Cells of this place.</param>
    /// <param name="excess">Excess of every cell, e-/px/s.</param>
    /// <param name="glows">Cells that glow anywhere.</param>
    /// <param name="field">Glow of every pixel.</param>
    /// <param name="noise">Standard error of a cell's median.</param>
    /// <param name="floorDoubt">How far the floor may be off, e-/px/s.</param>
    public static GlowRegion Describe(
        PatternInput input,
        RateMaps maps,
        CellGrid grid,
        IReadOnlyList<int> place,
        double[] excess,
        bool[] glows,
        GlowField field,
        double noise,
        double floorDoubt
    )
    {
        bool[] own = new bool[grid.Count];
        foreach (int cell in place)
            own[cell] = true;
        int peak = -1;
        double total = 0;
        long pixels = 0;
        float brightest = 0;
        for (int i = 0; i < field.Pixels; i++)
        {
            if (!own[field.CellOf(i)] || field.At(i) is var rate && rate <= 0)
                continue;
            total += rate;
            pixels++;
            if (rate > brightest)
                (peak, brightest) = (i, rate);
        }
        double threshold = RoundNumbers.AtLeast(Math.Max(AreaShareOfPeak * brightest, noise)),
            highest = place.Max(c => excess[c]);
        long above = 0;
        for (int i = 0; i < field.Pixels; i++)
            if (own[field.CellOf(i)] && field.At(i) > threshold)
                above++;
        double relative = input.TypicalAtReference is { Value: > 0 } t ? t.StandardUncertainty / t.Value : 0;
        // The peak lies between the brightest cell and its extrapolation to the edge; a third of the step between them
        // is the uncertainty of that extrapolation.
        double peakDoubt = Math.Sqrt(
            noise * noise + Math.Pow((brightest - highest) / 3, 2) + Math.Pow(relative * brightest, 2)
        );
        // The floor is known from many cells; the tail of the glow outside this place is not in the total.
        double tail = 2 * noise / 3 * pixels / 2,
            below = floorDoubt * pixels,
            hidden = TailDoubt * total,
            totalDoubt = Math.Sqrt(tail * tail + below * below + hidden * hidden + Math.Pow(relative * total, 2));
        GlowLaws laws = GlowLaws.Fit(input, maps, place, excess, glows);
        return new GlowRegion
        {
            Where = Words(peak % input.Width, peak / input.Width, input.Width, input.Height),
            X = peak % input.Width + 1,
            Y = peak / input.Width + 1,
            Peak = new(
                brightest,
                peakDoubt,
                "e-/px/s",
                place.Count,
                "brightest place of the smoothed dark-rate map above its floor"
            ),
            AreaThreshold = threshold,
            AreaShare = (double)above / field.Pixels,
            Total = new(total, totalDoubt, "e-/s", pixels, "sum of the smoothed dark-rate map above its floor"),
            ExposureExponent = laws.ExposureExponent,
            DoublingTemperature = laws.Doubling,
            Signals = laws.Signals,
            Rates = laws.Rates,
        };
    }

    /// <summary>"right edge", "upper left corner", "middle": upper is the first row of the file.</summary>
    internal static string Words(int column, int row, int width, int height)
    {
        string across =
            column < EdgeShare * width ? "left"
            : column >= (1 - EdgeShare) * width ? "right"
            : "";
        string along =
            row < EdgeShare * height ? "upper"
            : row >= (1 - EdgeShare) * height ? "lower"
            : "";
        return (along, across) switch
        {
            ("", "") => "middle",
            ("", _) => $"{across} edge",
            (_, "") => $"{along} edge",
            _ => $"{along} {across} corner",
        };
    }
}
