using SensorProfile.DarkCurrent.Laws;
using SensorProfile.DarkCurrent.Levels;
using SensorProfile.DarkCurrent.Results;
using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern.BlackLevel;
using SensorProfile.FixedPattern.Thermometer;
using SensorProfile.Frames;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Profiles.Darks;
using SensorProfile.Screening;

namespace SensorProfile.Characterisation;

/// <summary>
/// Levels of bias and dark frames → how steady the black level is, and the smallest dark current it lets one detect.
/// </summary>
internal static class BlackLevelRecipe
{
    private const double LongPause = 20,
        PauseRatio = 3; // s beyond the usual gap, and times the usual gap

    public static BlackLevelProfile? Measure(
        ModeFrames mode,
        BiasResult bias,
        FlatResult flats,
        DarkResult darks,
        FindingsLog log
    )
    {
        double[] gains =
        [
            .. mode.Mosaic.Names.Select((_, c) => flats.GainOf(c)).OfType<Measurement>().Select(g => g.Value),
        ];
        bool electrons = gains.Length == mode.Mosaic.Channels && darks.Temperatures.Count > 0;
        IReadOnlyList<DarkTemperature> temperatures = electrons ? darks.Temperatures : [];
        BlackLevelSeries[] series = [.. temperatures.Select(t => Series(t, darks.Profile!))];
        IReadOnlyList<BlackLevelFrame> frames = Frames(
            mode,
            temperatures,
            darks.Profile,
            electrons ? gains.Average() : 1,
            bias.ReadNoiseAdu?.Value
        );
        if (BlackLevelMeasurement.Measure(frames, series, electrons ? flats.Gain : null) is not { } level)
            return null;
        log.Add(BlackLevelFindings.Judge(level, series, darks.Profile?.Form == DarkForm.Variance));
        return level;
    }

    private static BlackLevelSeries Series(DarkTemperature t, DarkCurrentProfile profile)
    {
        double? expected = t.Variance is { Resolved: true } ? t.Variance.Slope.Value : null;
        if (
            profile is { ReferenceTemperature: { } reference, DoublingTemperature: not null }
            && profile.Models.FirstOrDefault(m => m.Name == profile.Selected) is { } model
        )
            expected = DarkCurrentLaw.FromModel(model, reference).RateAt(t.TemperatureCelsius).Value;
        return new(
            t.TemperatureCelsius,
            t.Exposures.Count > 0 ? t.Exposures[^1] : 0,
            t.Variance?.Slope,
            Math.Max(0, (t.Mean?.Slope.Value ?? 0) - (t.Typical?.Slope.Value ?? 0)),
            expected
        )
        {
            Plain = t.Typical is { Resolved: true } line ? line.Slope : null,
        };
    }

    private static IReadOnlyList<BlackLevelFrame> Frames(
        ModeFrames mode,
        IReadOnlyList<DarkTemperature> temperatures,
        DarkCurrentProfile? profile,
        double gain,
        double? readNoise
    )
    {
        double doubling = profile?.DoublingTemperature?.Value ?? PhysicalConstants.AssumedDoubling;
        HashSet<string> first = FirstAfterPause(mode);
        var frames = mode.SetsOf(FrameKind.Bias)
            .SelectMany(s => s.Frames.Select(f => (Frame: f, Set: s, Series: -1)))
            .Concat(
                temperatures.SelectMany(
                    (t, k) => t.Sets.SelectMany(s => s.Frames.Select(f => (Frame: f, Set: s, Series: k)))
                )
            )
            .OrderBy(f => f.Frame.Frame, FrameOrder.ByTimeThenName)
            .ToList();
        ScreenedSet[] sets = [.. frames.Select(f => f.Set).Distinct()];
        DateTimeOffset? start = frames.Select(f => f.Frame.Frame.StartUtc).Min();
        return
        [
            .. frames.Select(f =>
            {
                DarkTemperature? at = f.Series < 0 ? null : temperatures[f.Series];
                double taken = at is null ? 0 : f.Frame.Frame.ExposureSeconds ?? f.Set.Set.ExposureSeconds ?? 0;
                double reading =
                    at is null || !ProbeReadings.ReadsFinely(at.Sets) || f.Frame.Frame.TemperatureCelsius is not { } own
                        ? 0
                        : own - at.TemperatureCelsius;
                double equivalent = taken * Math.Pow(2, reading / doubling);
                double signal = at?.Typical is { Resolved: true } line ? line.Slope.Value * equivalent / gain : 0,
                    doubt = signal * Math.Log(2) / doubling * ThermometerReport.ReadingDoubt;
                double collected = at?.Variance is { Resolved: true } grown
                    ? grown.Slope.Value * equivalent / gain
                    : signal;
                double noise = DarkLevels.MedianNoise(
                    f.Frame,
                    readNoise is { } read ? (read * read) + (Math.Max(0, collected) / gain) : null
                );
                return new BlackLevelFrame
                {
                    Name = f.Frame.Name,
                    Set = Array.IndexOf(sets, f.Set),
                    Series = at is null ? null : f.Series,
                    Hours = (f.Frame.Frame.StartUtc - start)?.TotalHours,
                    TemperatureCelsius = f.Frame.Frame.TemperatureCelsius,
                    ExposureSeconds = taken,
                    EquivalentSeconds = equivalent,
                    Level =
                        f.Frame.Level
                        + (
                            at?.Shift.Of(f.Set) is { } shift
                                ? -shift / gain
                                : MedianShift(f.Frame, at, equivalent, gain)
                        ),
                    Noise = Math.Sqrt(noise * noise + doubt * doubt),
                    ReadingNoise = doubt,
                    First = first.Contains(f.Frame.Name),
                };
            }),
        ];
    }

    /// <summary>
    /// By how much the median lies below the mean because dark electrons are Poisson distributed, ADU. Used where the whole
    /// distribution is not known: κ₃/(6σ²), κ₃ = their number (Cornish and Fisher 1938, Rev. Int. Stat. Inst. 5, 307).
    /// </summary>
    private static double MedianShift(ScreenedFrame frame, DarkTemperature? at, double seconds, double gain)
    {
        DarkSignalFit? line =
            at?.Variance is { Resolved: true } noise ? noise
            : at?.Typical is { Resolved: true } level ? level
            : null;
        double variance = frame.Channels.Average(c => c.ClippedVariance) * gain * gain;
        return line is null || !(variance > 0) ? 0 : line.Slope.Value * seconds / (6 * variance) / gain;
    }

    /// <summary>
    /// Frames of any kind that follow a pause longer than the camera's usual one; without times, the first of every
    /// set.
    /// </summary>
    private static HashSet<string> FirstAfterPause(ModeFrames mode)
    {
        ScreenedFrame[] all = [.. mode.Frames.OrderBy(f => f.Frame, FrameOrder.ByTimeThenName)];
        if (all.Any(f => f.Frame.StartUtc is null || f.Frame.ExposureSeconds is null))
            return [.. mode.Sets.Where(s => s.Frames.Count > 0).Select(s => s.Frames[0].Name)];
        double[] gaps =
        [
            .. all.Skip(1)
                .Select(
                    (f, i) =>
                        (f.Frame.StartUtc!.Value - all[i].Frame.StartUtc!.Value).TotalSeconds
                        - all[i].Frame.ExposureSeconds!.Value
                ),
        ];
        if (gaps.Length == 0)
            return [];
        double usual = OrderStatistics.Median(gaps),
            pause = Math.Max(usual + LongPause, PauseRatio * usual);
        return [all[0].Name, .. all.Skip(1).Where((_, i) => gaps[i] > pause).Select(f => f.Name)];
    }
}
