using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Fitting.Models;
using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>Which darks on disk fit which lights, and at what loss.</summary>
public static class DarkMatching
{
    /// <summary>One verdict for every light set.</summary>
    /// <param name="profile">The camera's profile; null when there is none: then only darks of the same settings,
    /// exposure and temperature are known to fit.</param>
    /// <param name="question">Light sets and dark sets.</param>
    /// <exception cref="DecisionRefusedException">There are no lights or no darks, or a threshold is out of
    /// range.</exception>
    public static MatchAnswer Find(CameraProfile? profile, MatchQuestion question)
    {
        Check(question);
        MatchAnswer still = Matched(profile, question);
        int lights = question.Lights.Max(s => s.Frames.Count);
        if (
            profile is null
            || question.Stack.DitherPositions is not null
            || DarkTolerance.PositionsBeside(lights) is not int positions
        )
            return still;
        StackDescription dithered = question.Stack with
        {
            DitherPositions = positions,
            Rejection = Rejection.SigmaClip,
        };
        return still with { Dithered = Matched(profile, question with { Stack = dithered }) };
    }

    private static MatchAnswer Matched(CameraProfile? profile, MatchQuestion question)
    {
        FrameSet[] given = [.. question.Lights, .. question.Darks];
        question = question with { Lights = SetPoints.Join(question.Lights), Darks = SetPoints.Join(question.Darks) };
        SkyRate sky = NamedSkies.OrDefault(question.Stack.Sky);
        List<Finding> findings =
            question.Stack.Sky is null && profile is not null ? [DarkCountAdvice.SkyAssumed(sky)] : [];
        if (profile is null)
            findings.Add(
                new Finding(
                    FindingCodes.ProfileMissing,
                    Severity.Warning,
                    "Without a profile, only darks of the same settings, exposure and temperature are known to fit: "
                        + "characterise the camera and give its profile."
                )
            );
        if (profile is not null && question.Stack.DitherPositions is null)
            findings.Add(
                new Finding(
                    FindingCodes.DitherAssumed,
                    Severity.Note,
                    "Dithering was not stated; the verdicts assume none, the strictest case."
                )
            );
        findings.AddRange(SetPoints.NotHeld(given));
        findings.AddRange(
            question
                .Lights.Select(light => Mode(profile, light.Settings))
                .OfType<ModeProfile>()
                .SelectMany(ColourModes.ServedTogether)
                .Distinct()
        );
        List<LightMatch> pairs = [];
        LightMatch[] matches = [.. question.Lights.Select(light => Best(profile, question, sky, light, pairs))];
        return new MatchAnswer
        {
            Worst = matches.Max(m => m.Verdict),
            Quantities = matches.Select(m => m.Loss).OfType<Measurement>().MaxBy(loss => loss.Value) is { } loss
                ? new Dictionary<string, Measurement?> { [QuantityNames.LossWorst] = loss }
                : new Dictionary<string, Measurement?>(),
            Findings = findings,
            Matches = matches,
            Pairs = pairs,
            Settling = [.. matches.SelectMany(m => m.Settling).Distinct()],
        };
    }

    private static void Check(MatchQuestion question)
    {
        question.Stack.Limits.Check();
        Refuse.UnlessPositive(question.UsableLoss, FindingCodes.UsableLossNotPositive, "usable loss", "");
        if (question.Stack.Sky is { } sky)
            Guard.Sky(sky.Rate);
        if (question.Stack.DitherPositions is int positions)
            Refuse.UnlessCount(positions, 1, FindingCodes.DitherNotPositive, "dither positions");
        Refuse.UnlessCount(question.BiasFrames, 0, FindingCodes.BiasNegative, "bias frames");
        if (question.Lights.Count == 0)
            throw Refuse.CannotTell(
                FindingCodes.LightsMissing,
                "No light frames were found: give the folder of the lights, or name the kind of its "
                    + "frames in the capture table."
            );
        if (question.Darks.Count == 0)
            throw Refuse.CannotTell(
                FindingCodes.DarksMissing,
                "No dark frames were found: give the folder of the darks, or name the kind of its frames "
                    + "in the capture table."
            );
    }

    private static LightMatch Best(
        CameraProfile? profile,
        MatchQuestion question,
        SkyRate sky,
        FrameSet light,
        List<LightMatch> pairs
    )
    {
        MatchReason? ambiguous = profile is null ? null : Ambiguous(profile, light.Settings);
        IReadOnlyList<SensorReader> readers = ambiguous is null ? Readers(profile, light.Settings) : [];
        SensorReader? reader = readers.Count > 0 ? readers[0] : null;
        double? doubling = reader?.Best.Law.DoublingAt(reader.Best.PixelReference);
        var lights = SetSummary.Summarise(light, doubling);
        int stack = question
            .Lights.Where(other =>
                Comparable(light, other) && SameExposure(light.ExposureSeconds, other.ExposureSeconds)
            )
            .Sum(s => s.Frames.Count);
        PairJudge[] judges =
        [
            .. readers.DefaultIfEmpty(null).Select(r => new PairJudge(profile, r, question, sky, stack)),
        ];
        var judged = question
            .Darks.Where(d => Comparable(light, d))
            .Select(d => SetSummary.Summarise(d, doubling))
            .Select(d =>
                (
                    Darks: d,
                    Match: ambiguous is null
                        ? judges
                            .Select(judge => judge.Judge(lights, d))
                            .MaxBy(match => (match.Verdict, match.Loss?.Value ?? 0))!
                        : PairJudge.Plain(lights, d) with
                        {
                            Reason = ambiguous,
                        }
                )
            )
            .ToList();
        pairs.AddRange(
            question.Darks.Select(d =>
                judged.Find(j => j.Darks.Set == d).Match ?? Other(lights, SetSummary.Summarise(d, doubling))
            )
        );
        if (judged.Count == 0)
            return new LightMatch(
                new MatchReason(MatchGround.NoneAlike) { Modes = [.. OtherSettings(question, light)] }
            )
            {
                Lights = lights.Facts(),
                Verdict = MatchVerdict.DoesNotFit,
                Drift = lights.Drift,
            };
        (SetSummary darks, LightMatch best) = judged
            .OrderBy(j => j.Match.Verdict)
            .ThenBy(j => j.Match.Loss?.Value ?? double.PositiveInfinity)
            .ThenBy(j => Apart(light, j.Darks.Set))
            .First();
        return best with { Night = LightNight.Describe(reader, question, sky, lights, darks, stack) };
    }

    /// <summary>Settings of the darks of this camera and size; none of them match the lights.</summary>
    private static IEnumerable<ModeSettings> OtherSettings(MatchQuestion question, FrameSet light) =>
        question
            .Darks.Where(d => Comparable(light with { Settings = d.Settings }, d))
            .Select(d => d.Settings)
            .Distinct();

    /// <summary>
    /// Where the loss is not known: the number of factors of 2 by which the dark signals of two sets differ, with the
    /// usual doubling every 6 °C.
    /// </summary>
    private static double Apart(FrameSet a, FrameSet b)
    {
        return a.ExposureSeconds is > 0 and var t && b.ExposureSeconds is > 0 and var u
            ? Math.Abs(
                Math.Log2(u / t)
                    + ((b.TemperatureCelsius - a.TemperatureCelsius ?? 0) / PhysicalConstants.UsualDoubling)
            )
            : double.PositiveInfinity;
    }

    private static LightMatch Other(SetSummary lights, SetSummary darks) =>
        PairJudge.Plain(lights, darks) with
        {
            Verdict = MatchVerdict.DoesNotFit,
            Reason = new MatchReason(
                lights.Set.Width != darks.Set.Width || lights.Set.Height != darks.Set.Height ? MatchGround.OtherSize
                : !SamePlace(lights.Set, darks.Set) ? MatchGround.OtherPlace
                : ModeChoice.Matches(lights.Settings, darks.Settings) ? MatchGround.OtherCamera
                : MatchGround.OtherSettings
            ),
        };

    /// <summary>Headers that leave out a setting may fit several modes of the profile; no mode is guessed.</summary>
    private static MatchReason? Ambiguous(CameraProfile profile, ModeSettings settings)
    {
        ModeProfile[] fitting = [.. profile.Modes.Where(m => ModeChoice.Matches(m.Settings, settings))];
        return fitting.Length < 2
            ? null
            : new MatchReason(MatchGround.SeveralModes) { Modes = [.. fitting.Select(m => m.Settings)] };
    }

    /// <summary>
    /// The mode of such lights, or each of its colours where they are scaled separately; empty for none.
    /// </summary>
    private static IReadOnlyList<SensorReader> Readers(CameraProfile? profile, ModeSettings settings)
    {
        if (Mode(profile, settings) is not { } mode)
            return [];
        try
        {
            return ColourModes.Readers(profile!, mode);
        }
        // the verdict says that the profile lacks what is needed
        catch (DecisionRefusedException)
        {
            return [];
        }
    }

    private static ModeProfile? Mode(CameraProfile? profile, ModeSettings settings) =>
        profile?.Modes.FirstOrDefault(m => ModeChoice.Matches(m.Settings, settings));

    private static bool Comparable(FrameSet a, FrameSet b) =>
        a.Width == b.Width
        && a.Height == b.Height
        && SamePlace(a, b)
        && ModeChoice.Matches(a.Settings, b.Settings)
        && (a.Frames[0].Camera is null || b.Frames[0].Camera is null || a.Frames[0].Camera == b.Frames[0].Camera);

    /// <summary>Whether both show the same part of the sensor, as far as both state it.</summary>
    private static bool SamePlace(FrameSet a, FrameSet b) =>
        a.Frames[0].Sensor is null || b.Frames[0].Sensor is null || a.Frames[0].Place == b.Frames[0].Place;

    internal static bool SameExposure(double? a, double? b) =>
        a is double x && b is double y && Math.Abs(x - y) <= 1e-3 * Math.Max(x, y);
}
