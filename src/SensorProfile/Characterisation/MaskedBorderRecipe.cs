using SensorProfile.FixedPattern.BlackLevel;
using SensorProfile.Frames;
using SensorProfile.PhotonTransfer;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Profiles.Darks;
using SensorProfile.Screening;

namespace SensorProfile.Characterisation;

/// <summary>
/// Masked pixels of raw files → a black level and a read noise independent of the other pixels, and how the level
/// behaves in the darks.
/// </summary>
internal static class MaskedBorderRecipe
{
    private const int MaxFrames = 512;

    private sealed record BorderReading(ScreenedSet Set, MaskedLevels Masked)
    {
        public Measurement Level(int codeStep, long pixels) => BiasRecipe.LevelOf(Masked.Levels, codeStep, pixels);

        public PooledVariance? Pixel =>
            PooledVariance.Pool([.. Masked.Pairs.Select(p => (p.Pixel, p.PixelUncertainty))]);

        public PooledVariance? Row => PooledVariance.Pool([.. Masked.Pairs.Select(p => (p.Row, p.RowUncertainty))]);
    }

    /// <summary>Measures the border; null where the bias frames have no usable masked pixels.</summary>
    public static MaskedBorderProfile? Measure(ModeFrames mode, FlatResult flats, StageProgress stages, FindingsLog log)
    {
        ScreenedSet[] unlit = [.. mode.SetsOf(FrameKind.Bias)];
        if (unlit.Length == 0 || unlit[0].Frames[0].Samples.Masked is not { } area)
            return null;
        ScreenedFrame? flat = mode.SetsOf(FrameKind.Flat).SelectMany(s => s.Frames).MaxBy(f => f.Level);
        ScreenedFrame bias = unlit[0].Frames[0];
        if (MaskedPixels.Find(bias.Samples, flat?.Samples, (flat?.Level ?? 0) - bias.Level) is not { } pixels)
        {
            log.Add(MaskedBorderFindings.Unusable());
            return null;
        }
        ScreenedSet[] sets =
        [
            .. unlit
                .Concat(mode.SetsOf(FrameKind.Dark).Where(s => s.Set.ExposureSeconds > 0))
                .Where(s => s.Frames.All(f => f.Samples.Masked == area)),
        ];
        BorderReading[] readings = stages.ForEach("Masked border", sets, 0, 0, set => new BorderReading(
            set,
            MaskedLevels.Measure(pixels, [.. set.Frames.Select(f => f.Samples)])
        ));
        BorderReading[] dark = [.. readings.Where(r => r.Set.Set.Kind == FrameKind.Dark)];
        BorderReading[] without = [.. readings.Where(r => r.Set.Set.Kind == FrameKind.Bias)];
        if (without.Length == 0)
            return null;
        MaskedBorderProfile border = Bias(without, pixels, mode.CodeStep.Step);
        border = border with
        {
            Sets =
            [
                .. without.Select(r => SetOf(r, pixels, mode.CodeStep.Step)),
                .. dark.Select(r => Shift(r, without, border, pixels, flats.Gain, mode.CodeStep.Step)),
            ],
            Frames = FramesOf(readings),
        };
        log.Add(MaskedBorderFindings.Judge(border));
        return border;
    }

    private static MaskedBorderProfile Bias(BorderReading[] bias, MaskedPixels pixels, int codeStep)
    {
        double[] levels = [.. bias.SelectMany(r => r.Masked.Levels)],
            seen = [.. bias.SelectMany(r => r.Set.Frames).Select(PixelLevel)];
        PooledVariance? pixel = Pooled(bias, r => r.Masked.Pairs.Select(p => (p.Pixel, p.PixelUncertainty))),
            row = Pooled(bias, r => r.Masked.Pairs.Select(p => (p.Row, p.RowUncertainty)));
        return new MaskedBorderProfile
        {
            Top = pixels.Area.Top,
            Left = pixels.Area.Left,
            Width = pixels.Area.Width,
            Height = pixels.Area.Height,
            Pixels = pixels.Count,
            IsNamed = pixels.Area.IsNamed,
            Level = BiasRecipe.LevelOf(levels, codeStep, pixels.Count) with
            {
                Method = "mean of the bias frames' masked pixels, 5 sigma clip",
            },
            Difference = BiasRecipe.LevelOf([.. seen.Zip(levels, (s, l) => s - l)], codeStep, pixels.Count) with
            {
                Method = "level of the pixels less that of the masked border, bias frame by bias frame",
            },
            ReadNoiseAdu =
                pixel is null || row is null ? null
                : ReadNoise.Adu(
                    pixel with
                    {
                        Value = pixel.Value + row.Value,
                        StandardUncertainty = double.Hypot(pixel.StandardUncertainty, row.StandardUncertainty),
                    },
                    codeStep,
                    pixels.Count
                )
                    is { } noise
                    ? noise with
                    {
                        Method = "masked pixels of bias pairs, quantisation removed (EMVA 1288)",
                    }
                : null,
            RowNoiseAdu = RowNoise(row, pixels.Rows.Length),
        };
    }

    private static MaskedBorderSet SetOf(BorderReading reading, MaskedPixels pixels, int codeStep) =>
        new()
        {
            Exposure = reading.Set.Set.Kind == FrameKind.Bias ? 0 : reading.Set.Set.ExposureSeconds ?? 0,
            Temperature = reading.Set.Set.TemperatureCelsius,
            Level = reading.Level(codeStep, pixels.Count),
            RowNoise = RowNoise(reading.Row, pixels.Rows.Length),
        };

    /// <summary>
    /// Dark charge N of masked pixels lifts their level by N/K and their variance by N/K² (Poisson), so the variance
    /// gives the level that the charge must add, K·ΔV; the rest of the rise is the black level's own.
    /// </summary>
    private static MaskedBorderSet Shift(
        BorderReading dark,
        BorderReading[] bias,
        MaskedBorderProfile border,
        MaskedPixels pixels,
        Measurement? gain,
        int codeStep
    )
    {
        MaskedBorderSet set = SetOf(dark, pixels, codeStep);
        PooledVariance? without = Pooled(bias, r => r.Masked.Pairs.Select(p => (p.Pixel, p.PixelUncertainty)));
        if (gain is null || dark.Pixel is not { } with || without is null || dark.Masked.Levels.Length < 2)
            return set;
        double growth = with.Value - without.Value;
        double charge = growth * gain.Value,
            doubt = double.Hypot(
                gain.Value * double.Hypot(with.StandardUncertainty, without.StandardUncertainty),
                growth * gain.StandardUncertainty
            );
        double shift = set.Level!.Value - border.Level!.Value - charge;
        return set with
        {
            Charge = new Measurement(
                charge,
                doubt,
                "ADU",
                set.Level.Samples,
                "growth of the masked pixels' variance over the bias frames, times the gain"
            ),
            Shift = new Measurement(
                shift,
                double.Hypot(doubt, double.Hypot(set.Level.StandardUncertainty, border.Level.StandardUncertainty)),
                "ADU",
                set.Level.Samples,
                "rise of the masked border over the bias frames less its own dark charge"
            ),
        };
    }

    private static PooledVariance? Pooled(
        BorderReading[] sets,
        Func<BorderReading, IEnumerable<(double, double)>> variances
    ) => PooledVariance.Pool([.. sets.SelectMany(variances)]);

    private static Measurement? RowNoise(PooledVariance? row, int rows)
    {
        if (row is null)
            return null;
        double value = Math.Sqrt(Math.Max(0, row.Value));
        return new Measurement(
            value,
            row.Value > row.StandardUncertainty
                ? row.StandardUncertainty / (2 * value)
                : Math.Sqrt(row.StandardUncertainty),
            "ADU",
            (long)row.Pairs * rows,
            "row means of masked pixels, pairs of frames"
        );
    }

    private static IReadOnlyList<MaskedBorderFrame> FramesOf(BorderReading[] readings)
    {
        MaskedBorderFrame[] all =
        [
            .. readings.SelectMany(r =>
                r.Set.Frames.Select(
                    (f, i) =>
                        new MaskedBorderFrame(
                            f.Name,
                            r.Set.Set.Kind == FrameKind.Bias ? 0 : r.Set.Set.ExposureSeconds ?? 0,
                            r.Masked.Levels[i],
                            PixelLevel(f)
                        )
                )
            ),
        ];
        int kept = Math.Min(all.Length, MaxFrames);
        return [.. Enumerable.Range(0, kept).Select(i => all[(int)((long)i * all.Length / kept)])];
    }

    // clipped like the border's level, so that the two compare
    private static double PixelLevel(ScreenedFrame frame) => frame.Channels.Average(c => c.ClippedMean);
}
