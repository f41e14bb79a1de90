using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>Where the noise of one light comes from, at one temperature of the sensor.</summary>
/// <param name="Temperature">°C.</param>
/// <param name="Terms">The sources in the typical pixel, largest first: independent, so their squares add up.</param>
/// <param name="Total">All of them together, e-.</param>
/// <param name="MasterDark">What a master of <see cref="Darks"/> darks like the lights adds to every light of the
/// stack, e-; a master bias adds nothing, it cancels.</param>
/// <param name="Darks">Darks in that master.</param>
/// <param name="GlowPeak">What the glow adds at its brightest place, e-; null when none was found.</param>
/// <param name="Share">Share of the pixels for the next two, 0.99 = 99 %.</param>
/// <param name="AtShare">Noise that this share of the pixels does not exceed, e-; null without a distribution.</param>
/// <param name="AtShareWithFlicker">The same with the pixels that jump between levels, e-; null when the profile holds
/// none.</param>
/// <param name="FullPixels">Pixels that sky and dark current fill, so that their light is lost, %; null when there are
/// none.</param>
internal sealed record LightNoise(
    double Temperature,
    IReadOnlyList<LightNoiseTerm> Terms,
    Measurement Total,
    Measurement MasterDark,
    int Darks,
    Measurement? GlowPeak,
    double Share,
    Measurement? AtShare,
    Measurement? AtShareWithFlicker,
    Measurement? FullPixels
)
{
    private static readonly string[] names = ["sky", "dark current", "read noise", "quantisation"];

    /// <summary>
    /// The budget of a light without masters: N² = (S + I)·t + R² + q², with the uncertainties of profile and sky
    /// propagated by random draws.
    /// </summary>
    /// <param name="reader">The camera.</param>
    /// <param name="sky">The sky.</param>
    /// <param name="exposureSeconds">t.</param>
    /// <param name="celsius">Temperature of the sensor.</param>
    /// <param name="share">Share of the pixels, one that <see cref="FlickerRanks"/> works out.</param>
    internal static LightNoise Compute(
        SensorReader reader,
        SkyRate sky,
        double exposureSeconds,
        double celsius,
        double share
    )
    {
        double?[] Decide(SensorModel sensor, double drawnSky) =>
            Numbers(sensor, drawnSky, exposureSeconds, celsius, share);
        double?[] best = Decide(reader.Best, sky.Rate.Value);
        UncertaintyDraws.Spread[] spreads = UncertaintyDraws.Through(reader, sky.Rate, Decide);
        Measurement? Made(int i, string method) =>
            best[i] is double value ? new Measurement(value, spreads[i].StandardDeviation, "e-", 1, method) : null;
        double total = best[names.Length]!.Value;
        return new LightNoise(
            celsius,
            [
                .. names
                    .Select(
                        (name, i) =>
                            new LightNoiseTerm(
                                name,
                                Made(i, "noise budget of the typical pixel")!,
                                Math.Pow(best[i]!.Value / total, 2)
                            )
                    )
                    .OrderByDescending(t => t.Share),
            ],
            Made(4, "noise budget of the typical pixel")!,
            Made(5, $"master of {Plain.Whole(RulesOfThumb.UsualDarks)} darks of the same exposure and temperature")!,
            RulesOfThumb.UsualDarks,
            Made(6, "dark current of the glow at its brightest place"),
            share,
            Made(7, "noise budget over the measured dark rates"),
            Made(8, "the same, mixed with the pixels that jump between levels"),
            NoiseModel.Noise.FullPixels.Share(reader, sky.Rate.Value, exposureSeconds, celsius)
        );
    }

    private static double?[] Numbers(
        SensorModel sensor,
        double sky,
        double exposureSeconds,
        double celsius,
        double share
    )
    {
        double skyElectrons = sky * exposureSeconds,
            dark = Math.Max(sensor.Law.RateAt(celsius), 0) * exposureSeconds;
        var darks = new DarkFrames
        {
            ExposureSeconds = exposureSeconds,
            TemperatureCelsius = celsius,
            Frames = RulesOfThumb.UsualDarks,
        };
        PixelNoise pixel = PixelNoise.Calibrated(sensor, skyElectrons, dark, dark, darks, scale: 1);
        FlickerAtRank? flicker = FlickerRanks
            .Rank(sensor, sky, exposureSeconds, celsius)
            .FirstOrDefault(r => r.Share == share);
        double? ranked = sensor.RateOfRank(share, celsius, exposureSeconds) is double rate
            ? Math.Sqrt(PixelNoise.OfLight(sensor, skyElectrons, Math.Max(rate, 0) * exposureSeconds).Random)
            : null;
        return
        [
            Math.Sqrt(pixel.Sky),
            Math.Sqrt(pixel.Dark),
            Math.Sqrt(pixel.Read),
            Math.Sqrt(pixel.Quantisation),
            Math.Sqrt(pixel.Random),
            Math.Sqrt(pixel.MasterDark),
            sensor.Glow is { } glow ? Math.Sqrt(glow.ElectronsAt(celsius, exposureSeconds, sensor)) : null,
            ranked,
            ranked * flicker?.With / flicker?.Without,
        ];
    }
}
