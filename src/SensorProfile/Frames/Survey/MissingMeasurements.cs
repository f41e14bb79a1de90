using System.Globalization;
using SensorProfile.Frames.Sets;
using SensorProfile.Profiles.Session;
using static SensorProfile.Frames.Counted;

namespace SensorProfile.Frames.Survey;

/// <summary>Which frames each measurement still lacks, judged from the sets alone: the answer of a survey.</summary>
internal static class MissingMeasurements
{
    /// <summary>Bias frames for read noise (one pair).</summary>
    public const int BiasForReadNoise = 2;

    /// <summary>Bias frames for a map of the noise of every pixel.</summary>
    public const int BiasForPixelNoise = 8;

    /// <summary>Flat pairs at different levels for gain, full well and linearity.</summary>
    public const int FlatLevels = 6;

    /// <summary>Dark exposures at one temperature for a dark current.</summary>
    public const int DarkExposures = 3;

    /// <summary>Temperatures for the temperature law of the dark current.</summary>
    public const int Temperatures = 3;

    private const int Pair = 2;

    /// <summary>
    /// What each mode (camera, size, gain, offset, binning …) lacks, in the order of the sets; empty when nothing is
    /// missing.
    /// </summary>
    /// <param name="inventory">The frames.</param>
    /// <param name="toleranceCelsius">Sets within this distance of their common mean count as one temperature,
    /// °C.</param>
    public static IReadOnlyList<MeasurementLack> Find(
        Inventory inventory,
        double toleranceCelsius = InventoryOptions.DefaultTemperatureTolerance
    )
    {
        var modes = inventory
            .Sets.Where(s => s.Kind is FrameKind.Bias or FrameKind.Dark or FrameKind.Flat or FrameKind.DarkFlat)
            .GroupBy(s => (s.Frames[0].Camera, s.Width, s.Height, s.Settings))
            .ToList();
        List<MeasurementLack> lacks = [];
        if (modes.Count == 0) // nothing to measure with: everything is missing
        {
            Mode none = new(
                inventory.Frames.Count > 0 ? inventory.Frames[0].Settings : new ModeSettings(),
                "",
                [],
                toleranceCelsius
            );
            return [.. none.Bias(), .. none.Flats(), .. none.Darks()];
        }
        foreach (var mode in modes)
        {
            Mode one = new(
                mode.Key.Settings,
                modes.Count > 1 ? NameOf(mode.Key.Camera, mode.Key.Settings) : "",
                [.. mode],
                toleranceCelsius
            );
            lacks.AddRange([.. one.Bias(), .. one.Flats(), .. one.Darks()]);
        }
        return lacks;
    }

    private static string NameOf(string? camera, ModeSettings settings)
    {
        List<string> parts = [];
        if (camera is not null)
            parts.Add(camera);
        if (settings.Gain is { } gain)
            parts.Add($"gain {NumberText.Short(gain, 4)}");
        if (settings.Iso is { } iso)
            parts.Add($"ISO {NumberText.Short(iso, 4)}");
        if (settings.Offset is { } offset)
            parts.Add($"offset {NumberText.Short(offset, 4)}");
        if (settings.Readout is { } readout)
            parts.Add(readout);
        parts.Add(settings.Binning);
        return "(" + string.Join(", ", parts) + ") ";
    }

    /// <summary>The sets of one mode.</summary>
    private sealed class Mode(ModeSettings settings, string name, List<FrameSet> sets, double tolerance)
    {
        private readonly List<FrameSet> bias = sets.FindAll(s => s.Kind == FrameKind.Bias);
        private readonly List<FrameSet> darks = sets.FindAll(s => s.Kind == FrameKind.Dark);
        private readonly List<FrameSet> darkFlats = sets.FindAll(s => s.Kind == FrameKind.DarkFlat);
        private readonly List<FrameSet> flats = sets.FindAll(s => s.Kind == FrameKind.Flat);

        public IEnumerable<MeasurementLack> Bias()
        {
            int there = bias.Count == 0 ? 0 : bias.Max(s => s.Frames.Count);
            if (there < BiasForReadNoise)
                yield return BiasLack(MeasurementKind.ReadNoise, "Read noise", BiasForReadNoise, there);
            if (there < BiasForPixelNoise)
                yield return BiasLack(
                    MeasurementKind.PixelNoiseMap,
                    "The noise of every pixel",
                    BiasForPixelNoise,
                    there
                );
        }

        public IEnumerable<MeasurementLack> Flats()
        {
            int exposures = flats.Where(IsPair).Select(s => s.ExposureSeconds).OfType<double>().Distinct().Count();
            int levels = flats.Where(IsPair).Select(s => (s.ExposureSeconds, s.Label)).Distinct().Count();
            if (levels < FlatLevels)
                yield return FlatLack(
                    MeasurementKind.Gain,
                    "Gain and full well",
                    levels,
                    "brightness levels from dim to saturated",
                    SameExposureHint(levels)
                );
            if (exposures < FlatLevels)
                yield return FlatLack(
                    MeasurementKind.Linearity,
                    "Linearity",
                    exposures,
                    "known exposures from dim to saturated under the same light",
                    ""
                );
            if (flats.Count > 0 && !bias.Exists(IsPair) && !flats.TrueForAll(HasDarkPair))
                yield return Lack(
                    MeasurementKind.Gain,
                    FrameKind.Bias,
                    Pair,
                    $"Gain needs the level without light: {Pair} bias frames, or {Pair} dark flats at each "
                        + "exposure of the flats."
                );
        }

        public IEnumerable<MeasurementLack> Darks()
        {
            List<(double? Temperature, int Exposures)> levels =
            [
                .. TemperatureGroup
                    .Gather(darks, tolerance)
                    .Select(l =>
                        (
                            l.TemperatureCelsius,
                            l.Sets.Where(IsPair).Select(s => s.ExposureSeconds).OfType<double>().Distinct().Count()
                        )
                    ),
            ];
            (double? temperature, int most) = levels.OrderByDescending(l => l.Exposures).FirstOrDefault();
            if (most < DarkExposures)
            {
                int more = DarkExposures - most;
                string there = most == 0 ? "none there" : $"{most} there at {Degrees(temperature)}";
                yield return Lack(
                    MeasurementKind.DarkCurrent,
                    FrameKind.Dark,
                    more * Pair,
                    $"Dark current and its per-pixel map lack {Nouns(more, "dark exposure")} at one "
                        + $"temperature ({DarkExposures} of {Pair} frames each are needed, {there}): "
                        + $"{Nouns(more * Pair, "dark frame")}."
                );
            }
            double[] done =
            [
                .. levels
                    .Where(l => l.Temperature is not null && l.Exposures >= DarkExposures)
                    .Select(l => l.Temperature!.Value),
            ];
            if (done.Length >= Temperatures)
                yield break;
            int missing = Temperatures - done.Length;
            string orSay = levels.Exists(l => l.Temperature is null && l.Exposures >= DarkExposures)
                ? " Or say how warm the darks were that have no temperature, in column temperature_c of the capture table: "
                    + "a thermometer beside the camera, read for some of them, is good enough."
                : "";
            int frames = missing * DarkExposures * Pair;
            string known = done.Length == 0 ? "none complete" : "complete: " + List([.. done.Select(t => Degrees(t))]);
            yield return Lack(
                MeasurementKind.TemperatureLaw,
                FrameKind.Dark,
                frames,
                $"The law of dark current against temperature lacks {Nouns(missing, "temperature")} "
                    + $"({Temperatures} with {DarkExposures} exposures of {Pair} frames each are needed, {known}): "
                    + $"at most {Nouns(frames, "dark frame")}.{orSay}"
            );
        }

        private MeasurementLack BiasLack(MeasurementKind measurement, string what, int needed, int there) =>
            Lack(
                measurement,
                FrameKind.Bias,
                needed - there,
                $"{what} lacks {Nouns(needed - there, "bias frame")} ({needed} in one set are needed, {there} "
                    + "there)."
            );

        private MeasurementLack FlatLack(
            MeasurementKind measurement,
            string what,
            int levels,
            string ofWhat,
            string hint
        )
        {
            int more = FlatLevels - levels;
            return Lack(
                measurement,
                FrameKind.Flat,
                more * Pair,
                $"{what} {(what.Contains(" and ", StringComparison.Ordinal) ? "lack" : "lacks")} flat pairs at "
                    + $"{more.ToString(CultureInfo.InvariantCulture)} more {ofWhat} ({FlatLevels} are needed, "
                    + $"{levels} there): {Nouns(more * Pair, "flat frame")}.{hint}"
            );
        }

        private string SameExposureHint(int levels)
        {
            int count = flats.Sum(s => s.Frames.Count);
            return levels == 1 && count > Pair && flats.Select(s => s.ExposureSeconds).Distinct().Count() == 1
                ? $" All {count} flats have one exposure and count as one level; if the light was changed "
                    + "between them, give each level a label in column set of the capture table."
                : "";
        }

        private bool HasDarkPair(FrameSet flat) =>
            darks.Concat(darkFlats).Any(d => IsPair(d) && SameExposure.Test(d.ExposureSeconds, flat.ExposureSeconds));

        private MeasurementLack Lack(MeasurementKind measurement, FrameKind kind, int frames, string sentence) =>
            new(measurement, settings, kind, frames, name + sentence);

        private static bool IsPair(FrameSet set) => set.Frames.Count >= Pair;

        private static string Degrees(double? celsius) =>
            celsius is { } value ? NumberText.Short(value, 1) + " °C" : "an unknown temperature";
    }
}
