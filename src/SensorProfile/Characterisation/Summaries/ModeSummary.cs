using SensorProfile.Characterisation.Maps;
using SensorProfile.DarkCurrent.Laws;
using SensorProfile.DarkCurrent.Levels;
using SensorProfile.DarkCurrent.Results;
using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Glow;
using SensorProfile.FixedPattern.RowsAndColumns;
using SensorProfile.FixedPattern.Telegraph;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;
using SensorProfile.Prediction;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Response;
using SensorProfile.Screening;

namespace SensorProfile.Characterisation.Summaries;

/// <summary>Combines the results of bias, flats and darks into a mode's part of the profile.</summary>
internal static class ModeSummary
{
    public static ModeProfile Summarise(
        ModeFrames mode,
        BiasResult bias,
        FlatResult flats,
        DarkResult darks,
        PatternResult? pattern,
        BlackLevelProfile? level,
        MaskedBorderProfile? border,
        StructureResult structure
    )
    {
        ChannelProfile[] channels = [.. mode.Mosaic.Names.Select((name, c) => Channel(name, c, bias, flats, darks))];
        Measurement? fullWell = Mean([.. flats.Channels.Select(c => c.FullWell).OfType<Measurement>()]);
        return new ModeProfile
        {
            Settings = mode.Settings,
            BiasLevel = bias.Level,
            ReadNoise = ChannelRms.Combine([.. channels.Select(c => c.ReadNoise)]),
            ReadNoiseAdu = bias.ReadNoiseAdu,
            Gain = flats.Gain,
            FullWell = fullWell,
            SaturationLevel = Mean([.. flats.Channels.Select(c => c.SaturationLevel).OfType<Measurement>()]),
            DynamicRange = Mean([.. channels.Select(c => c.DynamicRange).OfType<Measurement>()]),
            LinearityError = Mean([.. flats.Channels.Select(c => c.Linearity?.Error).OfType<Measurement>()]),
            ResponseNonuniformity = ChannelRms.Combine([.. flats.Channels.Select(c => c.Nonuniformity)]),
            FlatResidual = flats.Residual,
            FlatResidualOverAreas = flats.ResidualOverAreas,
            Channels = channels.Length > 1 ? channels : [],
            DarkCurrent = darks.Profile,
            DarkCurrentAdu = darks.ProfileAdu,
            DarkNights = darks.Nights,
            FixedPattern = Structure(bias, flats, pattern, level, border, structure),
            PhotonTransfer =
                flats.Channels.Count > 0
                    ? new PhotonTransferProfile { Curves = [.. flats.Channels.Select(c => c.Curve())] }
                    : null,
            NoiseDistribution = bias.NoiseDistribution,
        };
    }

    /// <summary>The maps.</summary>
    public static ModeMaps Maps(
        ModeFrames mode,
        BiasResult bias,
        FlatResult flats,
        PatternResult? pattern,
        PatternResult? inAdu
    )
    {
        if (!mode.Frames.Any())
            return new();
        IFrameSamples first = mode.Frames.First().Samples;
        PedestalDoubt? pedestal =
            bias.Moments is { } unlit && bias.ReadNoiseAdu is { } read
                ? new(unlit.Frames, unlit.Width, mode.CodeStep.Step, read.Value)
                : null;
        return new ModeMaps
        {
            Width = first.Width,
            Height = first.Height,
            ReadNoise = Known(bias.ReadNoiseMap, first.Missing, Half.NaN),
            DarkRate = pattern?.Maps.Rate,
            DarkRateUncertainty = pattern?.Maps.Uncertainty,
            DarkRateAdu = pattern is null ? inAdu?.Maps.Rate : null,
            Glow = pattern is null ? null : Glowing(pattern.Glow, pattern.Maps.Rate.Length),
            Doubling = pattern?.Maps.Doubling,
            DoublingUncertainty = pattern is { Maps.Doubling: not null }
                ? OwnLaws(pattern.Maps.Outstanding, pattern.Maps.Rate.Length)
                : null,
            Pedestal = Known(bias.Moments?.Mean, first.Missing, float.NaN),
            PedestalUncertainty = pedestal is null
                ? null
                : Doubts(
                    pedestal,
                    bias.Moments!.Mean.Length,
                    bias.ReadNoiseMap,
                    mode.Mosaic,
                    flats.ElectronsPerAdu(mode.Mosaic) ?? []
                ),
            // to the runtime, an array of a byte enumeration is an array of bytes
            Defects = (byte[]?)(object?)pattern?.Defects.Classes ?? WithoutGain(inAdu),
            Levels = pattern?.Maps.Levelled.Fits ?? TelegraphSearch.None.Fits,
        };
    }

    // These follow from rates alone; the other classes need the noise of a pixel, and so the gain.
    private static byte[]? WithoutGain(PatternResult? inAdu) =>
        inAdu is null
            ? null
            :
            [
                .. inAdu.Defects.Classes.Select(found =>
                    (byte)(found & (DefectClass.Hot | DefectClass.Saturated | DefectClass.Line))
                ),
            ];

    // A pixel without a value holds another pixel's: no map shows it.
    private static T[]? Known<T>(T[]? map, MissingPixels? missing, T unknown) =>
        map is null || missing is null ? map : [.. map.Select((value, i) => missing[i] ? unknown : value)];

    // Made only when they are written, from little: one map more in memory matters for large cameras.
    private static Func<float[]> Doubts(
        PedestalDoubt pedestal,
        int pixels,
        Half[]? noise,
        ColourMosaic mosaic,
        double[] gains
    ) => () => pedestal.Map(pixels, noise, mosaic, gains);

    private static Func<float[]> Glowing(GlowField? field, int pixels) => () => field?.Map() ?? new float[pixels];

    private static Func<float[]> OwnLaws(IEnumerable<OutstandingPixel> outstanding, int pixels) =>
        () =>
        {
            float[] map = new float[pixels];
            Array.Fill(map, float.NaN);
            foreach (OutstandingPixel pixel in outstanding)
                map[pixel.Index] = pixel.DoublingUncertainty;
            return map;
        };

    private static ChannelProfile Channel(string name, int c, BiasResult bias, FlatResult flats, DarkResult darks)
    {
        BiasChannel? unlit = bias.Channels.Count > c ? bias.Channels[c] : null;
        FlatChannel? lit = flats.Channels.Count > c ? flats.Channels[c] : null;
        Measurement? gain = lit?.Fit?.Gain,
            noise = InElectrons(unlit?.ReadNoiseAdu, gain);
        return new ChannelProfile
        {
            Name = name,
            BiasLevel = unlit?.Level,
            ReadNoise = noise,
            ReadNoiseAdu = unlit?.ReadNoiseAdu,
            Gain = gain,
            FullWell = lit?.FullWell,
            SaturationLevel = lit?.SaturationLevel,
            DynamicRange = DynamicRange(lit, unlit),
            LinearityError = lit?.Linearity?.Error,
            ResponseNonuniformity = lit?.Nonuniformity,
            DarkRate = ChannelDarkRate(c, darks, gain, variance: false),
            DarkRateFromVariance = ChannelDarkRate(c, darks, gain, variance: true),
        };
    }

    private static Measurement? InElectrons(Measurement? adu, Measurement? gain) =>
        adu is null || gain is null
            ? null
            : new(
                adu.Value * gain.Value,
                Math.Sqrt(
                    Math.Pow(adu.StandardUncertainty * gain.Value, 2)
                        + Math.Pow(adu.Value * gain.StandardUncertainty, 2)
                ),
                "e-",
                adu.Samples,
                adu.Method
            );

    // Full well and read noise share the gain, so it cancels: the ratio is formed in ADU.
    private static Measurement? DynamicRange(FlatChannel? lit, BiasChannel? unlit)
    {
        if (lit?.Saturation is not { } full || unlit?.ReadNoiseAdu is not { Value: > 0 } noise)
            return null;
        double relative = Math.Sqrt(
            Math.Pow(full.StandardUncertaintyAdu / full.SignalAdu, 2)
                + Math.Pow(noise.StandardUncertainty / noise.Value, 2)
                + lit.Bend * lit.Bend
        );
        return new(
            Math.Log2(full.SignalAdu / noise.Value),
            relative / Math.Log(2),
            "stops",
            noise.Samples,
            "full well over read noise"
        );
    }

    // At the measured temperature nearest the reference, brought to it by the law of the whole sensor.
    private static Measurement? ChannelDarkRate(int channel, DarkResult darks, Measurement? gain, bool variance)
    {
        if (gain is null || darks.Profile?.ReferenceTemperature is not { } reference)
            return null;
        DarkTemperature? nearest = darks.Temperatures.MinBy(t => Math.Abs(t.TemperatureCelsius - reference));
        if (nearest is null || nearest.Channels.Count <= channel)
            return null;
        DarkSignalFit? line = variance ? nearest.Channels[channel].Variance : nearest.Channels[channel].Typical;
        if (line is not { Resolved: true } || (!variance && darks.Profile.Form == DarkForm.Variance))
            return null;
        double factor = 1;
        if (darks.Profile.Models.FirstOrDefault(m => m.Name == darks.Profile.Selected) is { } model)
        {
            var law = DarkCurrentLaw.FromModel(model, reference);
            factor = law.RateAt(reference).Value / law.RateAt(nearest.TemperatureCelsius).Value;
        }
        Measurement rate = DarkSummary.Rate(
            line,
            [gain],
            variance,
            variance ? "rise of the temporal variance with exposure" : "rise of the median level with exposure"
        );
        return rate with { Value = rate.Value * factor, StandardUncertainty = rate.StandardUncertainty * factor };
    }

    private static Measurement? Mean(Measurement[] values)
    {
        if (values.Length == 0)
            return null;
        double mean = values.Average(v => v.Value);
        double spread =
            values.Length > 1
                ? Math.Sqrt(values.Sum(v => Math.Pow(v.Value - mean, 2)) / (values.Length - 1) / values.Length)
                : 0;
        double stated = Math.Sqrt(values.Sum(v => v.StandardUncertainty * v.StandardUncertainty)) / values.Length;
        return values[0] with
        {
            Value = mean,
            StandardUncertainty = Math.Max(stated, spread),
            Samples = values.Sum(v => v.Samples),
        };
    }

    private static FixedPatternProfile? Structure(
        BiasResult bias,
        FlatResult flats,
        PatternResult? pattern,
        BlackLevelProfile? level,
        MaskedBorderProfile? border,
        StructureResult lines
    )
    {
        if (
            bias.Structure is null
            && bias.Stability is null
            && pattern is null
            && level is null
            && border is null
            && lines.Response is null
        )
            return null;
        return (pattern?.Profile ?? new FixedPatternProfile()) with
        {
            Structure = lines.Level,
            ResponseStructure = lines.Response,
            Lines = [.. pattern?.Profile.Lines ?? [], .. lines.Lines],
            Boundaries = lines.Boundaries,
            RowNoise = Deviation(bias.Structure?.RowVariance, flats.Gain),
            ColumnNoise = Deviation(bias.Structure?.ColumnVariance, flats.Gain),
            BiasStability = bias.Stability,
            BlackLevel = level,
            MaskedBorder = border,
        };
    }

    // √ of a variance that chance may have brought below zero: then zero, with the uncertainty that leaves.
    private static Measurement? Deviation(Measurement? variance, Measurement? gain)
    {
        if (variance is null || !double.IsFinite(variance.Value))
            return null;
        double value = Math.Sqrt(Math.Max(0, variance.Value));
        double uncertainty =
            variance.Value > variance.StandardUncertainty
                ? variance.StandardUncertainty / (2 * value)
                : Math.Sqrt(variance.StandardUncertainty);
        double factor = gain?.Value ?? 1;
        return new(
            value * factor,
            uncertainty * factor,
            gain is null ? "ADU" : "e-",
            variance.Samples,
            variance.Method
        );
    }
}
