using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.Exposure;

/// <summary>Which gain setting: the one with the largest full well whose read noise the sky still drowns.</summary>
/// <remarks>The lower gain setting is preferred if and only if R² ≤ ((1+p)² − 1)·B·t, B the sky background.</remarks>
internal static class GainChoice
{
    // the well is filled by the dark current of the pixel that this share of the pixels do not exceed
    private const double FillingRank = 0.999;

    /// <summary>Whether the sky drowns this read noise.</summary>
    /// <param name="readVariance">R², e-².</param>
    /// <param name="background">B, e-/px/s.</param>
    /// <param name="exposureSeconds">t.</param>
    /// <param name="loss">p.</param>
    internal static bool IsDrowned(double readVariance, double background, double exposureSeconds, double loss) =>
        readVariance <= ((1 + loss) * (1 + loss) - 1) * background * exposureSeconds;

    /// <summary>Ranks the measured modes for one sky and exposure.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="sky">The sky.</param>
    /// <param name="exposureSeconds">Exposure of one light, s.</param>
    /// <param name="loss">Accepted rise of the noise.</param>
    /// <param name="temperatureCelsius">Sensor temperature of the lights, °C, for the dark current that fills the well;
    /// null takes each mode's reference temperature.</param>
    /// <param name="fill">Part of the full well that sky and dark current may fill.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or no mode has read noise and
    /// gain.</exception>
    public static GainChoiceAnswer Find(
        CameraProfile profile,
        SkyRate sky,
        double exposureSeconds,
        double loss = 0.05,
        double? temperatureCelsius = null,
        double fill = 0.5
    )
    {
        Guard.Sky(sky.Rate);
        Refuse.UnlessPositive(exposureSeconds, FindingCodes.ExposureNotPositive, "exposure", "s");
        Refuse.UnlessShare(loss, FindingCodes.LossOutOfRange, "accepted loss");
        var terms = new Terms(profile, sky, exposureSeconds, loss, temperatureCelsius, fill);
        GainRow[] rows =
        [
            .. profile
                .Modes.Select(m => Rows(terms, m))
                .OfType<GainRow>()
                .OrderByDescending(r => r.FullWell?.Value ?? r.Gain.Value)
                .ThenByDescending(r => r.Gain.Value),
        ];
        if (rows.Length == 0)
            throw Refuse.CannotTell(
                FindingCodes.GainMissing,
                profile.Modes.Any(m => m.ReadNoiseAdu is not null)
                    ? "No mode of the profile has a gain: add flat pairs and characterise again."
                    : "No mode of the profile has both read noise and gain: add bias frames and flat pairs and "
                        + "characterise again."
            );
        GainRow? chosen = rows.FirstOrDefault(r => r.Drowned);
        GainRow advised = chosen ?? rows.MinBy(r => r.ReadNoise.Value)!;
        GainRow largest = rows[0];
        return new GainChoiceAnswer
        {
            Sky = sky,
            ExposureSeconds = exposureSeconds,
            Loss = loss,
            Fill = fill,
            Drowned = chosen is not null,
            Quantities = new Dictionary<string, Measurement?>
            {
                [QuantityNames.ShortestExposure] = advised.ExposureNeeded,
                [QuantityNames.LongestExposure] = advised.LongestExposure,
                [QuantityNames.ExposureNeeded] = largest.ExposureNeeded,
            },
            Findings =
            [
                .. rows.Length == 1 ? [OneMode] : Array.Empty<Finding>(),
                .. profile.Modes.SelectMany(ColourModes.ServedTogether).Distinct(),
            ],
            RulesOfThumb =
                rows.Length == 1
                    ? []
                    :
                    [
                        "\"Prefer a low gain or ISO setting\" (common practice, no source): "
                            + $"{(advised == largest ? "right" : "wrong")} for this sky and exposure.",
                    ],
            Modes = rows,
            Advised = advised.Settings,
        };
    }

    private static Finding OneMode { get; } =
        new(
            FindingCodes.OneModeOnly,
            Severity.Note,
            "The profile holds one mode only, so there was nothing to compare: characterise a second gain or ISO setting."
        );

    /// <summary>
    /// The row of a mode; where its colours are scaled separately, that of the colour that needs the longest light,
    /// with the limit of the colour that fills first. Null without read noise or gain.
    /// </summary>
    private static GainRow? Rows(Terms terms, ModeProfile mode)
    {
        GainRow[] colours = [.. ColourModes.Find(mode).Select(c => Row(terms, c.Mode))];
        if (colours.Length > 0)
        {
            GainRow? fillsFirst = colours
                .Where(r => r.LongestExposure is not null)
                .MinBy(r => r.LongestExposure!.Value);
            return colours.MaxBy(r => r.ExposureNeeded.Value)! with
            {
                LongestExposure = fillsFirst?.LongestExposure,
                FillsHottest = fillsFirst?.FillsHottest == true,
            };
        }
        if (ChannelMean.IsNeeded(mode))
            mode = ChannelMean.Average(mode);
        return mode is { ReadNoise.Value: > 0, Gain.Value: > 0 } ? Row(terms, mode) : null;
    }

    private static GainRow Row(Terms terms, ModeProfile mode)
    {
        (double sky, double uncertainty) = (terms.Sky.Rate.Value, terms.Sky.Rate.StandardUncertainty);
        double step = Math.Max(terms.Profile.Camera.CodeStep, 1) * mode.Gain!.Value;
        double variance = mode.ReadNoise!.Value * mode.ReadNoise.Value + step * step / 12,
            background = sky,
            doubt = uncertainty;
        Measurement? dark = TypicalDarkRate(terms, mode);
        (double Rate, bool Hottest) filling = FillingDarkRate(terms, mode);
        if (dark is not null)
            (background, doubt) = (sky + dark.Value, double.Hypot(uncertainty, dark.StandardUncertainty));
        double needed = SubExposure.Shortest(variance, background, terms.Loss),
            relative = double.Hypot(2 * mode.ReadNoise.StandardUncertainty / mode.ReadNoise.Value, doubt / background);
        return new GainRow(
            mode.Settings,
            mode.ReadNoise,
            mode.Gain,
            mode.FullWell,
            mode.DynamicRange,
            new Measurement(
                needed,
                needed * relative,
                "s",
                1,
                $"exposure from which the sky {(dark is null ? "" : "and the typical pixel's dark current ")}drowns the read noise"
            ),
            Longest(terms, mode, filling.Rate),
            Math.Sqrt(1 + variance / (background * terms.ExposureSeconds)) - 1,
            IsDrowned(variance, background, terms.ExposureSeconds, terms.Loss),
            dark,
            filling.Hottest
        );
    }

    /// <summary>
    /// Dark current of the typical pixel in the lights, e-/px/s; null where their temperature was not given: then the sky
    /// alone must drown the read noise, which holds however cold the sensor is.
    /// </summary>
    private static Measurement? TypicalDarkRate(Terms terms, ModeProfile mode)
    {
        if (terms.TemperatureCelsius is not double celsius || ReaderOf(terms, mode) is not { } reader)
            return null;
        double rate = Math.Max(reader.Best.Law.RateAt(celsius), 0);
        return new Measurement(
            rate,
            UncertaintyDraws
                .Through(reader, terms.Sky.Rate, (model, _) => [model.Law.RateAt(celsius)])[0]
                .StandardDeviation,
            "e-/px/s",
            UncertaintyDraws.Draws,
            "law of the typical pixel, uncertainties drawn"
        );
    }

    /// <summary>Part of the full well over the rate of sky and dark current.</summary>
    private static Measurement? Longest(Terms terms, ModeProfile mode, double darkRate)
    {
        if (mode.FullWell is not { Value: > 0 } well)
            return null;
        double rate = terms.Sky.Rate.Value + darkRate,
            seconds = terms.Fill * well.Value / rate;
        double relative = Math.Sqrt(
            Square(well.StandardUncertainty / well.Value) + Square(terms.Sky.Rate.StandardUncertainty / rate)
        );
        return new Measurement(
            seconds,
            seconds * relative,
            "s",
            1,
            "part of the full well over the rate of sky and dark current"
        );
    }

    /// <summary>
    /// Dark rate of the pixel that 99.9 % do not exceed, where the profile has a distribution; else of the typical
    /// pixel; 0 where dark current was not measured.
    /// </summary>
    private static (double Rate, bool Hottest) FillingDarkRate(Terms terms, ModeProfile mode)
    {
        // no law: the sky alone fills the well, and the answer says what it counts
        if (ReaderOf(terms, mode) is not { } reader)
            return (0, false);
        double celsius = terms.TemperatureCelsius ?? reader.Best.PixelReference;
        _ = Guard.Temperature(reader, celsius, "temperature of the lights").Count();
        double? hottest = reader.Best.RateOfRank(FillingRank, celsius, terms.ExposureSeconds);
        return (Math.Max(hottest ?? reader.Best.Law.RateAt(celsius), 0), hottest is not null);
    }

    private static SensorReader? ReaderOf(Terms terms, ModeProfile mode)
    {
        try
        {
            return mode.DarkCurrent is null ? null : SensorReader.Of(terms.Profile, mode);
        }
        catch (DecisionRefusedException)
        {
            return null;
        }
    }

    private static double Square(double x) => x * x;

    private sealed record Terms(
        CameraProfile Profile,
        SkyRate Sky,
        double ExposureSeconds,
        double Loss,
        double? TemperatureCelsius,
        double Fill
    );
}
