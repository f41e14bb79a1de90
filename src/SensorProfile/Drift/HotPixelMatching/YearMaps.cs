using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.Identity;
using SensorProfile.Fitting.Models;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>
/// The per-pixel rates of one mode over the years: those of the first and the last session, and the growth of the
/// ordinary pixels' pattern in each.
/// </summary>
/// <remarks>
/// Sessions in between are read one at a time and released. All are brought to the temperature of the first.
/// </remarks>
internal sealed record YearMaps
{
    private const double SameTemperature = 0.5,
        FarthestShift = 12; // °C

    /// <summary>Rates of the first session.</summary>
    public required PixelRates First { get; init; }

    /// <summary>Rates of the last session.</summary>
    public required PixelRates Last { get; init; }

    /// <summary>Temperature step by which the last session's rates were moved to match the first, °C.</summary>
    public double Shift { get; init; }

    /// <summary>Rate of the ordinary pixels by member, e-/px/s; missing where it could not be measured.</summary>
    public required IReadOnlyDictionary<int, Quantity> Scales { get; init; }

    /// <summary>
    /// How much warmer the sensor was than in the first session at the same reading, by member; missing where too few
    /// hot pixels show it.
    /// </summary>
    public required IReadOnlyDictionary<int, HotPixelStep> Steps { get; init; }

    /// <summary>Reads the maps; null when the first or the last session has none that can be used.</summary>
    public static YearMaps? Read(
        MatchedMode mode,
        DriftOptions options,
        Func<ProfileOnDisk, int, (PixelRates?, Finding?)> read,
        List<Finding> findings
    )
    {
        PixelRates? Read(int member)
        {
            (PixelRates? rates, Finding? finding) = read(mode.Members[member].Profile, mode.Members[member].Index);
            if (finding is not null)
                findings.Add(finding);
            return rates;
        }
        int end = mode.Members.Count - 1;
        PixelRates? first = Read(0),
            last = first is not null && Read(end) is { } found ? Aligned(first, found, mode, end, findings) : null;
        if (first is null || last is null)
            return null;
        (PixelRates? moved, double shift) = AtTemperatureOf(first, last, mode, end, findings, say: true);
        if (moved is null)
            return null;
        var scales = new Dictionary<int, Quantity>();
        Dictionary<int, Measurement> raw = [];
        var steps = new Dictionary<int, HotPixelStep> { [0] = HotPixelStep.None };
        void Measure(int member, PixelRates there)
        {
            if (PatternScale.Measure(first, there) is { } scale)
                raw[member] = scale;
            if (Step(mode, first, there) is { } step)
                steps[member] = step;
        }
        for (int member = 1; member < end; member++)
            if (
                Read(member) is { } between
                && Aligned(first, between, mode, member, findings) is { } turned
                && AtTemperatureOf(first, turned, mode, member, findings, say: false).Rates is { } there
            )
                Measure(member, there);
        Measure(end, moved);
        if (raw.TryGetValue(end, out Measurement? ends))
        {
            // share of one session in the uncertainty of a ratio
            double own = raw.Values.Average(s => s.StandardUncertainty / s.Value) / Math.Sqrt(2);
            scales[0] = Rate(mode, 0, first, new Measurement(1, own, "1", ends.Samples, ends.Method), options);
            foreach ((int member, Measurement s) in raw)
                scales[member] = Rate(
                    mode,
                    member,
                    first,
                    s with
                    {
                        StandardUncertainty = Math.Sqrt(
                            Math.Max(
                                s.StandardUncertainty * s.StandardUncertainty - s.Value * s.Value * own * own,
                                0.25 * s.StandardUncertainty * s.StandardUncertainty
                            )
                        ),
                    },
                    options
                );
        }
        return new YearMaps
        {
            First = first,
            Last = moved,
            Shift = shift,
            Scales = scales,
            Steps = steps,
        };
    }

    private static HotPixelStep? Step(MatchedMode mode, PixelRates first, PixelRates there)
    {
        ModeProfile before = mode.Mode(0);
        double typical =
            first.ReferenceTemperature is double reference
            && LawCorrection.Law(before)?.At(reference).DoublingTemperature.Value is > 0 and < 100 and double doubling
                ? doubling
                : PhysicalConstants.UsualDoubling;
        return HotPixelStep.Measure(
            HotPixelMatch.Match(first, there, HotThreshold.Choose(before, first.TypicalRate)),
            before,
            typical,
            first.Doubling
        );
    }

    /// <summary>
    /// Turns back a map whose orientation changed (with the capture program, say); null when the sizes differ and the
    /// hot pixels do not reveal the orientation.
    /// </summary>
    private static PixelRates? Aligned(
        PixelRates first,
        PixelRates other,
        MatchedMode mode,
        int member,
        List<Finding> findings
    )
    {
        HotPixelSet Hot(PixelRates rates, int of) =>
            HotPixelSet.Find(rates, HotThreshold.Choose(mode.Mode(of), rates.TypicalRate));
        AlignmentVotes votes = HotPixelVotes.Find(Hot(other, member), Hot(first, 0));
        if (!votes.Found || votes.Alignment.IsIdentity)
            return other.Width == first.Width && other.Height == first.Height ? other : null;
        string file = mode.Members[member].Profile.File;
        findings.Add(
            new Finding(
                FindingCodes.MapsTurned,
                Severity.Warning,
                $"The pixels of {file} are {votes.Alignment.Words} relative to those of {mode.Members[0].Profile.File} "
                    + $"({Plain.Whole(votes.Votes)} of {Plain.Whole(votes.Pixels)} hot pixels agree): the capture program "
                    + "changed the orientation of its frames. They were turned back before the comparison; darks of one "
                    + "orientation do not fit lights of the other.",
                [file]
            )
        );
        return AlignedRates.To(first, other, votes.Alignment);
    }

    /// <summary>
    /// The first session's typical rate times the scale, brought to one temperature law, with the uncertainties of the
    /// session's gain, temperature and law.
    /// </summary>
    private static Quantity Rate(
        MatchedMode mode,
        int member,
        PixelRates first,
        Measurement scale,
        DriftOptions options
    )
    {
        ModeProfile session = mode.Mode(member);
        double gain = session.Gain is { Value: > 0 } k ? k.StandardUncertainty / k.Value : 0,
            nightly = 0,
            factor = 1,
            ofLaw = 0;
        if (first.ReferenceTemperature is double reference)
        {
            if (LawCorrection.Law(session)?.At(reference).DoublingTemperature is { Value: > 0 and < 100 } doubling)
                nightly = Math.Log(2) / doubling.Value * options.TemperatureRepeatability;
            if (member > 0)
                (factor, ofLaw) = LawCorrection.Compute(session, mode.Mode(0), reference);
        }
        double relative = Math.Sqrt(
                Square(scale.StandardUncertainty / scale.Value) + gain * gain + nightly * nightly + ofLaw * ofLaw
            ),
            value = first.TypicalRate * scale.Value * factor;
        return new Quantity(
            QuantityNames.DarkRateByPixel,
            new Measurement(value, value * relative, "e-/px/s", scale.Samples, scale.Method)
        );
    }

    private static (PixelRates? Rates, double Shift) AtTemperatureOf(
        PixelRates first,
        PixelRates other,
        MatchedMode mode,
        int member,
        List<Finding> findings,
        bool say
    )
    {
        if (
            first.ReferenceTemperature is not double a
            || other.ReferenceTemperature is not double b
            || Math.Abs(a - b) <= SameTemperature
        )
            return (other, 0);
        DarkCurrentPredictor? law = LawCorrection.Law(mode.Mode(member));
        bool possible = law is not null && Math.Abs(a - b) <= FarthestShift;
        if (say)
            findings.Add(
                possible
                    ? new Finding(
                        FindingCodes.MapsMovedInTemperature,
                        Severity.Note,
                        $"The maps at {mode.Name} refer to {Plain.Celsius(a)} and {Plain.Celsius(b)}: the later ones "
                            + $"were brought to {Plain.Celsius(a)} by each pixel's own law. Characterise with "
                            + $"the reference temperature {Plain.Celsius(a)} to compare without that step."
                    )
                    : new Finding(
                        FindingCodes.MapTemperaturesApart,
                        Severity.Warning,
                        $"The pixels at {mode.Name} were not compared one by one: the maps refer to "
                            + $"{Plain.Celsius(a)} and {Plain.Celsius(b)}. Characterise both sessions at one reference "
                            + "temperature."
                    )
            );
        return possible ? (ShiftedRates.To(other, a, t => law!.At(t).Rate.Value), a - b) : (null, 0);
    }

    private static double Square(double x) => x * x;
}
