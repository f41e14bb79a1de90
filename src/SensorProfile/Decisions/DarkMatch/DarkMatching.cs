using SensorProfile.Decisions.DarkCount;
using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>Which darks on disk fit which lights, and at what loss.</summary>
public static class DarkMatching
{
    /// <summary>One verdict for every light set.</summary>
    /// <param name="profile">The camera's profile; null when there is none, then only darks of the same settings,
    /// exposure and temperature can be told to fit.</param>
    /// <param name="question">Light sets and dark sets.</param>
    /// <exception cref="DecisionRefusedException">There are no lights or no darks, or a threshold is out of
    /// range.</exception>
    public static MatchAnswer Match(CameraProfile? profile, MatchQuestion question)
    {
        Check(question);
        FrameSet[] given = [.. question.Lights, .. question.Darks];
        question = question with { Lights = SetPoints.Join(question.Lights), Darks = SetPoints.Join(question.Darks) };
        SkyRate sky = NamedSkies.OrDefault(question.Stack.Sky);
        List<Finding> findings =
            question.Stack.Sky is null && profile is not null ? [DarkCountAdvice.SkyAssumed(sky)] : [];
        if (profile is null)
            findings.Add(
                new Finding(
                    "profile-missing",
                    Severity.Warning,
                    "Without a profile only darks of the same settings, exposure and temperature can be told to fit: "
                        + "characterise the camera and give its profile."
                )
            );
        if (profile is not null && question.Stack.DitherPositions is null)
            findings.Add(
                new Finding(
                    "dither-assumed",
                    Severity.Note,
                    "Dithering was not stated; the verdicts assume none, the strictest case."
                )
            );
        findings.AddRange(SetPoints.NotHeld(given));
        List<LightMatch> pairs = [];
        LightMatch[] matches = [.. question.Lights.Select(light => Best(profile, question, sky, light, pairs))];
        MatchVerdict worst = matches.Max(m => m.Verdict);
        findings.AddRange(
            matches
                .Where(m => m.Drift > 1 && m.SetPoint is null)
                .Select(m => new Finding(
                    "lights-drift",
                    Severity.Warning,
                    $"The lights \"{m.Lights}\" drift by {Said.Celsius(m.Drift!.Value)} within the set; they are "
                        + "judged by their mean dark current."
                ))
        );
        findings.AddRange(
            matches
                .Where(m => m.Night is { Beyond: > 0 } && m.Verdict is MatchVerdict.Fits or MatchVerdict.Usable)
                .Select(Beyond)
        );
        findings.AddRange(matches.Where(m => m.FullPixels is not null).Select(FullPixelsFinding));
        return new MatchAnswer
        {
            Sentence = Sentence(matches),
            Reason = matches.FirstOrDefault(m => m.Verdict == worst)!.Reason,
            Verdict = Said.Word(worst),
            Worst = worst,
            Quantities = matches.Select(m => m.Loss).OfType<Measurement>().MaxBy(loss => loss.Value) is { } loss
                ? new Dictionary<string, Measurement?> { ["lossWorst"] = loss }
                : new Dictionary<string, Measurement?>(),
            Findings = findings,
            Matches = matches,
            Pairs = pairs,
            Settling = [.. matches.SelectMany(m => m.Settling).Distinct()],
        };
    }

    private static Finding Beyond(LightMatch match)
    {
        LightNight night = match.Night!;
        string from = night.ServesFrom is double low ? Said.Celsius(low) : "any temperature",
            to = night.ServesTo is double high ? Said.Celsius(high) : "any temperature";
        return new(
            "lights-beyond-tolerance",
            Severity.Warning,
            $"{Said.Whole(night.Beyond)} of the lights \"{match.Lights}\" are farther from the darks than the "
                + $"tolerance (one by one these darks serve {from} to {to}): take a second set of darks for them; "
                + "a plan for the folder of the lights says which."
        );
    }

    private static void Check(MatchQuestion question)
    {
        question.Stack.Limits.Check();
        Refuse.UnlessPositive(question.UsableLoss, "usable-loss-not-positive", "usable loss", "");
        if (question.Stack.Sky is { } sky)
            Guard.Sky(sky.Rate);
        if (question.Stack.DitherPositions is int positions)
            Refuse.UnlessCount(positions, 1, "dither-not-positive", "dither positions");
        Refuse.UnlessCount(question.BiasFrames, 0, "bias-negative", "bias frames");
        if (question.Lights.Count == 0)
            throw Refuse.CannotTell(
                "lights-missing",
                "No light frames were found: give the folder of the lights, or name the kind of its "
                    + "frames in the capture table."
            );
        if (question.Darks.Count == 0)
            throw Refuse.CannotTell(
                "darks-missing",
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
        string? ambiguous = profile is null ? null : Ambiguous(profile, light.Settings);
        SensorReader? reader = ambiguous is null ? Reader(profile, light.Settings) : null;
        double? doubling = reader?.Best.Law.DoublingAt(reader.Best.PixelReference);
        var lights = SetSummary.Of(light, doubling);
        int stack = question
            .Lights.Where(other =>
                Comparable(light, other) && SameExposure(light.ExposureSeconds, other.ExposureSeconds)
            )
            .Sum(s => s.Frames.Count);
        var judge = new PairJudge(profile, reader, question, sky, stack);
        var judged = question
            .Darks.Where(d => Comparable(light, d))
            .Select(d => SetSummary.Of(d, doubling))
            .Select(d =>
                (
                    Darks: d,
                    Match: ambiguous is null
                        ? judge.Judge(lights, d)
                        : PairJudge.Plain(lights, d) with
                        {
                            Reason = ambiguous,
                        }
                )
            )
            .ToList();
        pairs.AddRange(
            question.Darks.Select(d =>
                judged.Find(j => j.Darks.Set == d).Match ?? Other(lights, SetSummary.Of(d, doubling))
            )
        );
        if (judged.Count == 0)
            return new LightMatch
            {
                Lights = lights.Words(),
                Verdict = MatchVerdict.DoesNotFit,
                Drift = lights.Drift,
                Reason =
                    "No dark set has the camera, size and settings of these lights "
                    + $"({ModeChoice.Name(light.Settings)}, {Said.Whole(light.Width)} × {Said.Whole(light.Height)} "
                    + "px): take darks with these settings.",
            };
        (SetSummary darks, LightMatch best) = judged
            .OrderBy(j => j.Match.Verdict)
            .ThenBy(j => j.Match.Loss?.Value ?? double.PositiveInfinity)
            .First();
        return best with { Night = LightNight.Of(reader, question, sky, lights, darks, stack) };
    }

    private static LightMatch Other(SetSummary lights, SetSummary darks) =>
        PairJudge.Plain(lights, darks) with
        {
            Verdict = MatchVerdict.DoesNotFit,
            Reason =
                lights.Set.Width != darks.Set.Width || lights.Set.Height != darks.Set.Height ? "Frames of another size."
                : ModeChoice.Matches(lights.Settings, darks.Settings) ? "Frames of another camera."
                : "Taken with other settings.",
        };

    /// <summary>
    /// Headers that leave out a setting may fit several modes of the profile; which one is not guessed.
    /// </summary>
    private static string? Ambiguous(CameraProfile profile, ModeSettings settings)
    {
        ModeProfile[] fitting = [.. profile.Modes.Where(m => ModeChoice.Matches(m.Settings, settings))];
        return fitting.Length < 2
            ? null
            : "The headers do not say which of the modes of the profile these lights were taken with "
                + $"({string.Join("; ", fitting.Select(m => ModeChoice.Name(m.Settings)))}): name its gain, "
                + "offset or ISO, or fill them in in the capture table.";
    }

    private static SensorReader? Reader(CameraProfile? profile, ModeSettings settings)
    {
        ModeProfile? mode = profile?.Modes.FirstOrDefault(m => ModeChoice.Matches(m.Settings, settings));
        if (mode is null)
            return null;
        try
        {
            return SensorReader.Of(profile!, mode);
        }
        // the verdict says that the profile is missing what is needed
        catch (DecisionRefusedException)
        {
            return null;
        }
    }

    private static bool Comparable(FrameSet a, FrameSet b) =>
        a.Width == b.Width
        && a.Height == b.Height
        && ModeChoice.Matches(a.Settings, b.Settings)
        && (a.Frames[0].Camera is null || b.Frames[0].Camera is null || a.Frames[0].Camera == b.Frames[0].Camera);

    internal static bool SameExposure(double? a, double? b) =>
        a is double x && b is double y && Math.Abs(x - y) <= 1e-3 * Math.Max(x, y);

    private static string Sentence(LightMatch[] matches)
    {
        if (matches.Length == 1)
            return matches[0].Verdict switch
            {
                MatchVerdict.Fits => $"These darks fit the lights{Loss(matches[0])}.",
                MatchVerdict.Usable => $"These darks are usable{Loss(matches[0])}.",
                MatchVerdict.DoesNotFit => "These darks do not fit the lights: take new ones.",
                _ => "Cannot tell whether these darks fit the lights.",
            };
        int Count(MatchVerdict verdict) => matches.Count(m => m.Verdict == verdict);
        return $"Of {Said.Whole(matches.Length)} light sets, {Said.Whole(Count(MatchVerdict.Fits))} have darks that "
            + $"fit, {Said.Whole(Count(MatchVerdict.Usable))} have usable ones, "
            + $"{Said.Whole(Count(MatchVerdict.DoesNotFit))} need new ones, and for "
            + $"{Said.Whole(Count(MatchVerdict.CannotTell))} it cannot be told.";
    }

    private static string Loss(LightMatch match) =>
        match.Loss is { } loss ? $" (loss {Said.Percent(loss.Value / 100)})" : "";

    /// <summary>What to say of lights on disk.</summary>
    private static Finding FullPixelsFinding(LightMatch match) =>
        new(
            "pixels-full",
            match.FullPixels!.Value > 100 * FullPixels.Many ? Severity.Warning : Severity.Note,
            $"About {Said.Percent(match.FullPixels.Value / 100)} of the pixels are full in the lights "
                + $"\"{match.Lights}\": no dark brings them back. Dither and reject outliers, or expose shorter."
        );
}
