using SensorProfile.DarkCurrent.Results;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.Thermometer;
using SensorProfile.Frames;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>Puts nights without any temperature in order by the common brightness of their hot pixels.</summary>
/// <remarks>
/// The night with the longest exposure finds the hot pixels; the brightness of every other night relative to it gives a
/// temperature difference, assuming a doubling of 6 °C ± 1 °C where no law is known. Unlike the level of the typical
/// pixel, this does not depend on the black level, which moves from night to night.
/// </remarks>
internal static class NightsByHotPixels
{
    // nominal temperature, °C, of the hot pixels of one night; only differences are used
    private const double Nominal = 0;

    /// <summary>Reports the order; false where there are not two such nights, or too few hot pixels.</summary>
    public static bool Report(
        ModeFrames mode,
        BiasResult bias,
        FlatResult flats,
        DefectClass[]? response,
        IReadOnlyList<DefectLine> lines,
        CharacterisationOptions options,
        StageProgress stages,
        FindingsLog log
    )
    {
        ScreenedSet[] unknown = [.. mode.SetsOf(FrameKind.Dark).Where(s => s.Set.TemperatureCelsius is null)];
        ScreenedSet[][] nights =
        [
            .. NightRates
                .Split(unknown.Select(s => s.Set))
                .Select(night => unknown.Where(s => night.Contains(s.Set) && s.Set.ExposureSeconds > 0).ToArray())
                .Where(night => night.Length > 0),
        ];
        if (nights.Length < 2)
            return false;
        ScreenedSet[] reference = nights.MaxBy(n => n.Max(s => s.Set.ExposureSeconds!.Value))!;
        ModeFrames alone = mode with
        {
            Sets =
            [
                .. mode.Sets.Where(s => s.Set.Kind != FrameKind.Dark),
                .. reference.Select(s => new ScreenedSet(s.Set with { TemperatureCelsius = Nominal }, s.Frames)),
            ],
        };
        var unsaid = new FindingsLog();
        DarkResult darks = DarkRecipe.Measure(alone, bias, flats, options, stages, unsaid);
        if (
            PatternRecipe.Prepare(alone, bias, flats, lines, darks, options, predict: false, stages, unsaid)
                is not { } prepared
            || PatternRecipe.Measure(prepared, response, mode.BytesPerFrame, stages, unsaid) is not { } pattern
            || HotPixelThermometer.Calibrate(prepared.Input, pattern.Maps, pattern.Defects) is not { } thermometer
        )
            return false;
        ScreenedSet[] all = [.. reference, .. nights.Where(n => n != reference).SelectMany(n => n)];
        var series = new DarkSeries(
            Nominal,
            prepared.Input.TypicalAtReference?.Value ?? 0,
            [.. all.Select(s => new DarkExposure(s.Set.ExposureSeconds!.Value, [.. s.Frames.Select(f => f.Samples)]))]
        );
        if (thermometer.Temperatures(series) is not { } found)
            return false;
        // the best-known set of each night
        (DateTimeOffset? Start, Measurement Warmer)[] order =
        [
            .. nights
                .Select(night =>
                    (
                        night.SelectMany(s => s.Frames).Min(f => f.Frame.StartUtc),
                        night
                            .Select(s => found[Array.IndexOf(all, s)].Mean)
                            .Where(m => double.IsFinite(m.Value))
                            .MinBy(m => m.StandardUncertainty)
                    )
                )
                .Where(n => n.Item2 is not null)
                .Select(n => (n.Item1, n.Item2!))
                .OrderBy(n => n.Item2.Value),
        ];
        if (order.Length < 2)
            return false;
        log.Add(
            FindingCodes.NightsOrdered,
            Severity.Note,
            $"By their hot pixels the {(unknown.Any(s => s.Set.Warmth is not null) ? "groups" : "nights")} were, "
                + "from the coldest to the warmest: "
                + Counted.List([.. order.Select((n, i) => Place(n.Start, n.Warmer, order[0].Warmer, thermometer, i))])
                + " (dark current taken to double every 6 °C ± 1 °C)."
        );
        return true;
    }

    private static string Place(
        DateTimeOffset? start,
        Measurement night,
        Measurement coldest,
        HotPixelThermometer thermometer,
        int place
    )
    {
        string name = start is { } known ? Invariant($"{known:yyyy-MM-dd HH:mm} UTC") : "a night without a date";
        if (place == 0)
            return name;
        double warmer = night.Value - coldest.Value;
        // The uncertainty of the doubling temperature is common to both, so it applies to their difference.
        double Own(Measurement m) =>
            Math.Sqrt(
                Math.Max(0, m.StandardUncertainty * m.StandardUncertainty - Square(m.Value * thermometer.RelativeDoubt))
            );
        double doubt = Math.Sqrt(
            Square(Own(night)) + Square(Own(coldest)) + Square(warmer * thermometer.RelativeDoubt)
        );
        return $"{name}, {QuantityText.Of(new Measurement(warmer, doubt, "°C", night.Samples, "hot pixels"))} warmer";
    }

    private static double Square(double x) => x * x;
}
