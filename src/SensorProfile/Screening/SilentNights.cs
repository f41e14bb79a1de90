using SensorProfile.Fitting.Models;
using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using static System.FormattableString;

namespace SensorProfile.Screening;

/// <summary>
/// Nights of a camera without a thermometer: darks of different warmth, told by their hot pixels, are kept apart; readings
/// that were typed in for some frames reach those that were as warm.
/// </summary>
internal static class SilentNights
{
    /// <summary>Darks of one group differ from its mean by no more than this, °C.</summary>
    public const double WithinCelsius = 1;

    private const double Sigmas = 4;
    private const int MinFrames = 2;

    /// <summary>The sets, darks of such nights regrouped.</summary>
    public static IReadOnlyList<FrameSet> Split(
        IReadOnlyList<FrameSet> sets,
        IReadOnlyDictionary<string, ScreenedFrame> looked,
        FindingsLog log
    )
    {
        Frame[] darks =
        [
            .. sets.Where(s => s.Kind == FrameKind.Dark)
                .SelectMany(s => s.Frames)
                .Where(f => f is { StartUtc: not null, ExposureSeconds: > 0 } && looked.ContainsKey(f.Name))
                .Order(FrameOrder.ByTimeThenName),
        ];
        ScreenedFrame[] bias =
        [
            .. sets.Where(s => s.Kind == FrameKind.Bias)
                .SelectMany(s => s.Frames)
                .Where(f => looked.ContainsKey(f.Name))
                .Select(f => looked[f.Name]),
        ];
        Frame[] typed =
        [
            .. sets.SelectMany(s => s.Frames)
                .Where(f => f is { TemperatureOrigin: TemperatureOrigin.Typed, StartUtc: not null }),
        ];
        var nights = new List<Night>();
        foreach (IReadOnlyList<Frame> frames in NightSplit.Split(darks))
        {
            if (frames.Any(SaysItself) || frames.All(f => f.TemperatureOrigin == TemperatureOrigin.Typed))
                continue;
            if (FrameWarmth.Measure([.. frames.Select(f => looked[f.Name])], bias) is not { } warmth)
                continue;
            if (Night.Of(frames, warmth, typed, nights.Sum(n => n.Groups.Count)) is { } night)
                nights.Add(night);
        }
        if (nights.Count == 0)
            return sets;
        foreach (Night night in nights)
            Report(night, log);
        Dictionary<string, Night> nightOf = nights
            .SelectMany(n => n.Frames.Select(f => (f.Name, Night: n)))
            .ToDictionary(f => f.Name, f => f.Night, StringComparer.Ordinal);
        return [.. sets.SelectMany(s => s.Kind == FrameKind.Dark ? Regroup(s, nightOf) : [s])];
    }

    private static bool SaysItself(Frame frame) =>
        frame is { TemperatureCelsius: not null, TemperatureOrigin: TemperatureOrigin.Header };

    /// <summary>One set's frames: those of split nights by temperature or by warmth, the others as they were.</summary>
    private static IEnumerable<FrameSet> Regroup(FrameSet set, Dictionary<string, Night> nightOf)
    {
        ILookup<Night?, Frame> byNight = set.Frames.ToLookup(f => nightOf.GetValueOrDefault(f.Name));
        foreach (IGrouping<Night?, Frame> part in byNight)
        {
            if (part.Key is not { } night)
            {
                double[] known = [.. part.Select(f => f.TemperatureCelsius).OfType<double>()];
                yield return set with
                {
                    Frames = [.. part],
                    TemperatureCelsius = known.Length > 0 ? known.Average() : null,
                };
                continue;
            }
            Frame[] frames = [.. part.Select(night.WithTemperature)];
            foreach (
                IReadOnlyList<Frame> known in TemperatureClusters.Find(
                    [.. frames.Where(f => f.TemperatureCelsius is not null)],
                    WithinCelsius
                )
            )
                yield return set with
                {
                    Frames = known,
                    TemperatureCelsius = known.Average(f => f.TemperatureCelsius!.Value),
                    TypedScale = night.Readings?.Scale,
                };
            foreach (
                var group in frames
                    .Where(f => f.TemperatureCelsius is null)
                    .GroupBy(f => night.GroupOf(f))
                    .OrderBy(g => g.Key.Number)
            )
                yield return set with
                {
                    Frames = [.. group],
                    TemperatureCelsius = null,
                    Warmth = group.Key,
                };
        }
    }

    private static void Report(Night night, FindingsLog log)
    {
        string[] silent =
        [
            .. night.Frames.Where(f => night.WithTemperature(f).TemperatureCelsius is null).Select(f => f.Name),
        ];
        Measurement range = night.Groups[^1].AboveColdest;
        string when = Invariant($"In the night of {night.Frames[0].StartUtc:yyyy-MM-dd HH:mm} UTC");
        string apart =
            $"{when} the darks differ by {QuantityText.Of(range)} in warmth by the light of their hot pixels (taken to double "
            + $"every 6 °C ± {FrameWarmth.DoublingDoubt:0} °C)";
        if (silent.Length == night.Frames.Count)
        {
            log.Add(
                FindingCodes.NightSplitByHotPixels,
                Severity.Warning,
                $"{apart}: they were measured in {night.Groups.Count} groups, each within {WithinCelsius:0} °C. If a "
                    + "thermometer lay beside the camera, fill column temperature_c of the capture table for some frames of the "
                    + $"coldest and of the warmest group ({night.First(0)} and {night.First(night.Groups.Count - 1)}, for "
                    + "example): the hot pixels carry the readings to the others.",
                silent
            );
            return;
        }
        if (night.IsContradicted)
        {
            log.Add(
                FindingCodes.TypedCarriedByHotPixels,
                Severity.Warning,
                $"{apart}, and the readings typed in do not follow it: each was used for its own frame alone. Check the readings, "
                    + "and whether the thermometer lay close to the camera.",
                silent
            );
            return;
        }
        int carried = night.Frames.Count(f =>
            f.TemperatureOrigin != TemperatureOrigin.Typed && night.WithTemperature(f).TemperatureCelsius is not null
        );
        string scale = night.Readings is { AreOfSeveralTemperatures: true, Scale: var open }
            ? Invariant(
                $" A reading is taken to be right within {TypedScale.ReadingDoubt:0.0} °C: that adds {100 * open.ScaleUncertainty:0} % to "
            ) + "the uncertainty of the doubling temperature."
            : "";
        string rest =
            silent.Length == 0
                ? "."
                : $"; {Counted.Nouns(silent.Length, "dark")}, colder or warmer than every reading, have none: type one in for "
                    + $"each group of them ({Counted.Some([.. FirstOfGroups(night, silent)])}).";
        log.Add(
            FindingCodes.TypedCarriedByHotPixels,
            silent.Length == 0 ? Severity.Note : Severity.Warning,
            $"{apart}: for {Counted.Nouns(carried, "dark")} the readings typed in were carried over by the hot pixels, not along a "
                + $"line in time{rest}{scale}",
            silent.Length == 0 ? [.. night.Frames.Select(f => f.Name)] : silent
        );
    }

    private static IEnumerable<string> FirstOfGroups(Night night, string[] silent) =>
        night
            .Frames.Where(f => silent.Contains(f.Name))
            .GroupBy(f => night.GroupOf(f).Number)
            .OrderBy(g => g.Key)
            .Select(g => g.First().Name);

    /// <summary>A night that was not of one temperature.</summary>
    private sealed class Night
    {
        private readonly FrameWarmth warmth;
        private readonly Dictionary<string, WarmthGroup> groupOf;

        private Night(
            IReadOnlyList<Frame> frames,
            FrameWarmth warmth,
            TypedReadings? readings,
            IReadOnlyList<(WarmthGroup Group, IReadOnlyList<Frame> Frames)> groups
        )
        {
            (Frames, this.warmth, Readings) = (frames, warmth, readings);
            Groups = [.. groups.Select(g => g.Group)];
            groupOf = groups
                .SelectMany(g => g.Frames.Select(f => (f.Name, g.Group)))
                .ToDictionary(f => f.Name, f => f.Group, StringComparer.Ordinal);
        }

        /// <summary>Readings that the hot pixels bear out; null where there are none.</summary>
        public TypedReadings? Readings { get; }

        /// <summary>Whether readings were typed in that the hot pixels do not bear out.</summary>
        public bool IsContradicted { get; private init; }

        /// <summary>Darks in order of time.</summary>
        public IReadOnlyList<Frame> Frames { get; }

        /// <summary>Coldest first.</summary>
        public IReadOnlyList<WarmthGroup> Groups { get; }

        public static Night? Of(IReadOnlyList<Frame> frames, FrameWarmth warmth, Frame[] typed, int firstNumber)
        {
            List<List<(Frame Frame, double Warmth)>> parts =
            [
                .. TemperatureClusters
                    .Find(
                        [
                            .. frames.Select(f =>
                                f with
                                {
                                    TemperatureCelsius = warmth.At(f),
                                    SetTemperatureCelsius = null,
                                }
                            ),
                        ],
                        Math.Max(WithinCelsius, 3 * warmth.Doubt)
                    )
                    .Select(part => part.Select(f => (f, f.TemperatureCelsius!.Value)).ToList()),
            ];
            parts = WithoutSingles(parts);
            if (parts.Count < 2)
                return null;
            double Mean(int part) => parts[part].Average(f => f.Warmth);
            double Noise(int part) => warmth.Doubt * Math.Sqrt((1.0 / parts[part].Count) + (1.0 / parts[0].Count));
            if (Mean(parts.Count - 1) - Mean(0) < Sigmas * Noise(parts.Count - 1))
                return null;
            const double relative = FrameWarmth.DoublingDoubt / PhysicalConstants.UsualDoubling;
            (WarmthGroup, IReadOnlyList<Frame>)[] groups =
            [
                .. parts.Select(
                    (part, i) =>
                    {
                        double above = Mean(i) - Mean(0);
                        var measured = new Measurement(
                            above,
                            i == 0 ? 0 : Math.Sqrt(Math.Pow(Noise(i), 2) + Math.Pow(above * relative, 2)),
                            "°C",
                            part.Count,
                            "light of the hot pixels"
                        );
                        return (
                            new WarmthGroup(firstNumber + i, measured),
                            (IReadOnlyList<Frame>)[.. part.Select(f => f.Frame)]
                        );
                    }
                ),
            ];
            (DateTimeOffset first, DateTimeOffset last) = (frames[0].StartUtc!.Value, frames[^1].StartUtc!.Value);
            Frame[] ofNight = [.. typed.Where(f => f.StartUtc >= first - near && f.StartUtc <= last + near)];
            TypedReadings? readings = TypedReadings.Fit(ofNight, warmth);
            return new Night(frames, warmth, readings, groups)
            {
                IsContradicted = ofNight.Length > 0 && readings is null,
            };
        }

        private static readonly TimeSpan near = TimeSpan.FromMinutes(15); // a bias frame just before the darks

        public WarmthGroup GroupOf(Frame frame) => groupOf[frame.Name];

        /// <summary>The first dark of a group, from the coldest.</summary>
        public string First(int group) => Frames.First(f => GroupOf(f) == Groups[group]).Name;

        /// <summary>The frame as the readings have it; one that nobody read loses a temperature drawn in time.</summary>
        public Frame WithTemperature(Frame frame)
        {
            if (frame.TemperatureOrigin == TemperatureOrigin.Typed)
                return frame;
            double? celsius = Readings?.At(warmth.At(frame));
            return frame with
            {
                TemperatureCelsius = celsius is { } known ? Math.Round(known, 2) : null,
                TemperatureOrigin = TemperatureOrigin.Drawn,
            };
        }

        /// <summary>A group of one frame joins the one nearest in warmth.</summary>
        private static List<List<(Frame Frame, double Warmth)>> WithoutSingles(
            List<List<(Frame Frame, double Warmth)>> parts
        )
        {
            while (parts.Count > 1 && parts.Find(p => p.Count < MinFrames) is { } single)
            {
                parts.Remove(single);
                double mean = single.Average(f => f.Warmth);
                List<(Frame Frame, double Warmth)> nearest = parts.MinBy(p =>
                    Math.Abs(p.Average(f => f.Warmth) - mean)
                )!;
                nearest.AddRange(single);
            }
            return parts;
        }
    }
}
