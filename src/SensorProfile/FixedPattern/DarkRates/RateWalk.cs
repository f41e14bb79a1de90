using SensorProfile.FixedPattern.Cells;
using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.Telegraph;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>One pass over all darks: rate, uncertainty, law and flags of every pixel.</summary>
/// <remarks>All temperatures are walked together, so memory holds the maps and a few rows of sums, never frames or maps
/// of single temperatures. Relative rate at temperature T: gain·(Σ factor·mean − its median over the channel); rate =
/// typical rate + relative rate.</remarks>
internal static class RateWalk
{
    private const int EveryLawOf = 16; // one in so many ordinary pixels: plenty for the law of their class

    // with this many pixels or more, they are thinned further, and so are the fainter outstanding ones …
    private const int ManyPixels = 8_000_000;

    private const int ForSpread = 8192; // pixels that show the spread of scatter over all

    // … which exceed the limit by less than this factor
    private const double Bright = 8;

    /// <summary>Levels of the temperatures that allow a line, from a sample of the pixels.</summary>
    public static Dictionary<DarkSeries, SeriesLevels> Levels(PatternInput input)
    {
        var levels = new Dictionary<DarkSeries, SeriesLevels>(ReferenceEqualityComparer.Instance);
        foreach (DarkSeries series in input.Series)
            if (LevelSampling.Sample(input, series) is { } own)
                levels[series] = own;
        return levels;
    }

    /// <summary>Walks the frames; null when no temperature allows a line.</summary>
    /// <param name="input">The camera mode.</param>
    /// <param name="outstanding">Relative rate at the reference temperature above which a pixel stands out and gets a
    /// law of its own, e-/px/s; chosen from the noise and the typical rate.</param>
    /// <param name="known">Levels of temperatures already sampled; null to sample all.</param>
    public static RateMaps? Run(
        PatternInput input,
        Func<ReferenceScale, double> outstanding,
        IReadOnlyDictionary<DarkSeries, SeriesLevels>? known = null
    )
    {
        (DarkSeries Series, SeriesLevels Levels)[] temperatures =
        [
            .. input
                .Series.Select(s => (Series: s, Levels: known?.GetValueOrDefault(s) ?? LevelSampling.Sample(input, s)))
                .Where(t => t.Levels is not null)
                .Select(t => (t.Series, t.Levels!)),
        ];
        if (temperatures.Length == 0)
            return null;
        var scale = ReferenceScale.Measure(input, temperatures);
        double limit = outstanding(scale);
        bool laws = temperatures.Length >= input.MinLawTemperatures;
        int pixels = input.Pixels;
        float[] rate = new float[pixels],
            uncertainty = new float[pixels];
        // a quick run measures the laws of a sample only: enough for the classes, but not for a map
        Half[]? doubling = laws && !input.Quick ? new Half[pixels] : null;
        int thinning = 1 + pixels / ManyPixels * 2;
        int spreadOf = Math.Max(1, pixels / ForSpread) | 1; // odd, so that every channel is sampled
        var flags = new PixelFlags[pixels];
        double noiseFactor = (input.Thresholds ?? new()).NoiseFactor;
        var grid = CellGrid.For(input.Width, input.Height);
        LawBend? bend = laws ? LawBendFit.Fit(input, temperatures, scale, limit) : null;
        var reader = new PixelReader(input, temperatures, scale, limit, bend);

        IFrameSamples[][] groups =
        [
            .. temperatures.SelectMany(t => t.Series.Exposures).Concat(input.UnlitSets).Select(e => e.Frames.ToArray()),
        ];
        using var workers = new ThreadLocal<PixelReader.StripWorker>(reader.Worker);
        StripResult[] strips = GroupMoments.Walk(
            groups,
            strip =>
            {
                var result = new StripResult(strip.FirstRow, strip.Rows, grid, temperatures);
                PixelReader.StripWorker worker = workers.Value!;
                worker.Begin(strip);
                for (int row = 0; row < strip.Rows; row++)
                {
                    worker.BeginRow(row);
                    for (int column = 0; column < strip.Width; column++)
                    {
                        int at = (strip.FirstRow + row) * strip.Width + column;
                        if (input.Missing?[at] == true)
                        {
                            (rate[at], uncertainty[at]) = (float.NaN, float.NaN);
                            if (doubling is not null)
                                doubling[at] = Half.NaN;
                            continue;
                        }
                        PixelReading pixel = worker.Read(
                            row,
                            column,
                            !input.Quick || at % (EveryLawOf * thinning) == 0
                        );
                        (rate[at], uncertainty[at], flags[at]) = (pixel.Rate, pixel.Uncertainty, pixel.Flags);
                        if (input.TestLevels)
                            TestLevels(worker, row, column, at, noiseFactor, spreadOf, result);
                        if (doubling is not null)
                            doubling[at] = (Half)pixel.Doubling;
                        if (pixel.Flags.HasFlag(PixelFlags.Outstanding))
                            result.Outstanding.Add(new(at, pixel.DoublingUncertainty, pixel.Correlation));
                        int every =
                            !pixel.Flags.HasFlag(PixelFlags.Outstanding) ? EveryLawOf * thinning
                            : pixel.Rate < scale.Typical + Bright * limit ? thinning
                            : 1;
                        if (at % every == 0 && !float.IsNaN(pixel.Doubling))
                            result.Laws.Add(new(pixel.Rate, pixel.Doubling, pixel.DoublingUncertainty, at));
                    }
                }
                int first = strip.FirstRow * strip.Width;
                worker.AddTo(result, rate.AsSpan(first, strip.Pixels), flags.AsSpan(first, strip.Pixels));
                // kept until the walk ends: half a map if a tenth of the pixels stand out
                result.Outstanding.TrimExcess();
                result.Laws.TrimExcess();
                return result;
            },
            input.Walk,
            keepSamples: input.TestLevels
        );
        var excess = ExcessSearch.Judge(
            ScatterSpread.Measure(strips.Select(s => s.ScatterCounts), ExcessNoise.FreedomOf(groups)),
            strips.SelectMany(s => s.Noisy),
            pixels
        );
        CellSignals cells = StripResult.Merge(strips, grid, temperatures);
        var levelled = TelegraphSearch.Judge(
            strips.Sum(s => s.Tested),
            strips.SelectMany(s => s.Divided),
            pixels,
            (input.Thresholds ?? new()).FlickerFalseAlarms
        );
        List<MeasuredLaw>[] measuredLaws = [.. strips.Select(s => s.Laws)];
        IReadOnlyList<DoublingByRate> classes = DoublingClasses.Sort(measuredLaws.SelectMany(own => own));
        // the strips hold much that is not needed any more
        List<OutstandingPixel>[] standing = [.. strips.Select(s => s.Outstanding)];
        foreach (int pixel in levelled.Fits.Keys)
            flags[pixel] |= PixelFlags.Levelled;
        LargeScaleCorrection.Correct(input, scale, temperatures, cells, rate, flags);
        return new RateMaps
        {
            Rate = rate,
            Uncertainty = uncertainty,
            Doubling = doubling,
            Flags = flags,
            Levelled = levelled,
            Excess = excess,
            OrdinarySets = workers.Value!.OrdinarySets(),
            Classes = classes,
            Bend = bend ?? LawBend.None,
            Laws = measuredLaws.SelectMany(own => own),
            Outstanding = standing.SelectMany(s => s),
            UnlitShare = UnlitShare(scale, temperatures),
            Typical = scale.Typical,
            TypicalUncertainty = scale.Noise,
            Cells = cells,
            Temperatures = temperatures,
        };
    }

    private static void TestLevels(
        PixelReader.StripWorker worker,
        int row,
        int column,
        int at,
        double noiseFactor,
        int spreadOf,
        StripResult result
    )
    {
        bool suspect = worker.IsSuspect(row, column),
            sampled = at % spreadOf == 0;
        if (!suspect && !sampled && !worker.IsNoisy(row, column))
            return;
        SampleGroup[] samples = worker.Samples(row, column);
        if (ExcessNoise.Measure(samples) is { } noise)
        {
            if (sampled)
                ScatterSpread.Count(result.ScatterCounts, noise.Ratio);
            result.Noisy.Add((at, noise));
        }
        if (!suspect)
            return;
        result.Tested++;
        if (TelegraphTest.Run(samples, noiseFactor) is { } fit && TelegraphSearch.MayPass(fit))
            result.Divided.Add((at, fit));
    }

    /// <summary>
    /// Weight of the signal without light in the combined rate of an ordinary pixel, 1/s; 0 if the lines do not use the
    /// unlit map.
    /// </summary>
    private static double UnlitShare(ReferenceScale scale, (DarkSeries Series, SeriesLevels Levels)[] temperatures)
    {
        double share = 0;
        for (int t = 0; t < temperatures.Length; t++)
            if (temperatures[t].Levels.Slope is { UsesUnlit: true } line)
                share += scale.Weights[t] * scale.Factors[t] * line.Factors[^1];
        return share;
    }
}
