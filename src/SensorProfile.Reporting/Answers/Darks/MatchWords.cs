using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>Darks against lights on disk in words.</summary>
internal static class MatchWords
{
    public static AnswerWords Phrase(MatchAnswer answer) =>
        new(Sentence(answer.Matches), Reason(answer.Matches.First(m => m.Verdict == answer.Worst)), answer.Worst);

    /// <summary>"40 lights of 300 s at −10 °C, gain 100 (NGC)".</summary>
    public static string Set(MatchedSet set) =>
        $"{Plain.Whole(set.Frames)} {(set.Kind == FrameKind.Light ? "light" : "dark")}{(set.Frames == 1 ? "" : "s")} of "
        + $"{(set.Exposure is double t ? Plain.Seconds(t) : "unknown exposure")} at "
        + $"{(set.Temperature is double c ? Plain.Celsius(Math.Round(c, 1)) : "unknown temperature")}, "
        + $"{ModeChoice.Name(set.Settings)}{(set.Label is { } label ? $" ({label})" : "")}";

    /// <summary>The darks judged best; "none" where there are none of these settings.</summary>
    public static string Darks(LightMatch match) => match.Darks is { } darks ? Set(darks) : "none";

    private static string DarksOf(IReadOnlyList<ModeSettings> settings) =>
        settings.Count == 0 ? "" : $"; the darks were taken at {string.Join("; ", settings.Select(ModeChoice.Name))}";

    /// <summary>Why, and what to do.</summary>
    public static string Reason(LightMatch match)
    {
        MatchReason why = match.Reason;
        string frames = SettlingWords.Phrase(match.Settling);
        return why.Ground switch
        {
            MatchGround.NoneAlike => "No dark set has the camera, size or crop, and settings of these lights "
                + $"({ModeChoice.Name(match.Lights.Settings)}, {Plain.Whole(match.Lights.Width)} × "
                + $"{Plain.Whole(match.Lights.Height)} px){DarksOf(why.Modes)}: take darks with these settings.",
            MatchGround.OtherSize => "Frames of another size.",
            MatchGround.OtherPlace => "Frames of another part of the sensor.",
            MatchGround.OtherCamera => "Frames of another camera.",
            MatchGround.OtherSettings => "Taken with other settings.",
            MatchGround.SeveralModes =>
                "The headers do not say which of the modes of the profile these lights were taken with "
                    + $"({string.Join("; ", why.Modes.Select(ModeChoice.Name))}): name its gain, offset or ISO, or enter "
                    + "them in the capture table.",
            MatchGround.NotKnown => $"The {Unknown(why.Unknown)} is not known: enter it in the capture "
                + $"table{(match.Settling.Count > 0 ? $", or take {frames}" : "")}.",
            MatchGround.AlikeWithoutProfile =>
                $"Same settings and exposure, and temperatures within {Plain.Celsius(PairJudge.SameTemperature)}; without "
                    + "a profile the loss is not known.",
            MatchGround.NoSpread =>
                "Exposure or temperature differ, and the profile does not say how dark current spreads over the pixels: "
                    + $"{frames} would; characterise again with them.",
            MatchGround.NoProfile =>
                "Exposure or temperature differ, and no profile says what that costs: characterise this mode of the "
                    + $"camera ({frames}) and give its profile.",
            MatchGround.OutOfReach => $"{why.Refusal!.Message.TrimEnd('.')} ({frames}).",
            MatchGround.White => why.Refusal!.Message,
            _ => Measured(match, why.Limit!),
        };
    }

    /// <summary>Warnings about the matches.</summary>
    public static IEnumerable<Finding> Findings(MatchAnswer answer) =>
        [
            .. answer.Matches.Where(m => m.Drift > 1 && m.SetPoint is null).Select(Drift),
            .. answer
                .Matches.Where(m => m.Night is { Beyond: > 0 } && m.Verdict is MatchVerdict.Fits or MatchVerdict.Usable)
                .Select(Beyond),
            .. answer.Matches.Where(m => m.FullPixels is not null).Select(Full),
        ];

    private static string Sentence(IReadOnlyList<LightMatch> matches)
    {
        if (matches.Count == 1)
            return matches[0].Verdict switch
            {
                MatchVerdict.Fits => $"These darks fit the lights{Loss(matches[0])}.",
                MatchVerdict.Usable => $"These darks are usable{Loss(matches[0])}.",
                MatchVerdict.DoesNotFit => "These darks do not fit the lights: take new ones.",
                _ => "Cannot tell whether these darks fit the lights.",
            };
        int Count(MatchVerdict verdict) => matches.Count(m => m.Verdict == verdict);
        return $"Of {Plain.Whole(matches.Count)} light sets, darks fit {Plain.Whole(Count(MatchVerdict.Fits))}, "
            + $"are usable for {Plain.Whole(Count(MatchVerdict.Usable))}, "
            + $"do not fit {Plain.Whole(Count(MatchVerdict.DoesNotFit))}, and cannot be judged for "
            + $"{Plain.Whole(Count(MatchVerdict.CannotTell))}.";
    }

    private static string Loss(LightMatch match) =>
        match.Loss is { } loss ? $" (loss {Plain.Percent(loss.Value / 100)})" : "";

    private static string Measured(LightMatch match, LimitUse limit)
    {
        string closest = Closest(match, limit);
        string fresh =
            $"{Plain.Whole(limit.DarksNeeded)} darks of {Plain.Seconds(match.Lights.Exposure!.Value)} at "
            + Plain.Celsius(Math.Round(match.Lights.Temperature!.Value));
        return (match.Verdict, match.Scaled) switch
        {
            (MatchVerdict.Fits, false) => $"Within every limit; closest to its limit: {closest}.",
            (MatchVerdict.Fits, true) =>
                $"Within every limit once the darks are scaled; closest to its limit: {closest}.",
            (MatchVerdict.CannotTell, _) =>
                $"The profile is too uncertain to tell whether they fit; closest to its limit: {closest}. "
                    + $"{SettlingWords.Sentence(match.Reason.Settled!.Value, match.Settling)} Or take {fresh}: they fit in "
                    + "any case.",
            _ => $"Beyond the limit: {closest}. To fit, take {fresh}.",
        };
    }

    private static string Closest(LightMatch match, LimitUse limit)
    {
        if (limit.Cause == BindingCause.NumberOfDarks)
            return $"{Plain.Whole(match.Darks!.Frames)} darks for a stack of {Plain.Whole(limit.StackLights)} lights";
        string what = limit.Cause switch
        {
            BindingCause.Typical => "the spread over typical pixels",
            BindingCause.HotPixels => "hot pixels",
            BindingCause.Glow => "the residual of the glow",
            _ => "the level residual",
        };
        return $"{what} with {Apart(match)}, {Plain.Percent(limit.Share)} of the limit";
    }

    /// <summary>"darks 2 °C warmer and of 120 s instead of 300 s".</summary>
    private static string Apart(LightMatch match)
    {
        double difference = match.TemperatureDifference!.Value;
        string degrees = Plain.Celsius(Math.Abs(difference)),
            warmer = degrees != Plain.Celsius(0) ? $" {degrees} {(difference < 0 ? "colder" : "warmer")}" : "",
            longer = DarkMatching.SameExposure(match.Lights.Exposure, match.Darks!.Exposure)
                ? ""
                : $" of {Plain.Seconds(match.Darks.Exposure!.Value)} instead of {Plain.Seconds(match.Lights.Exposure!.Value)}";
        return warmer.Length + longer.Length == 0
            ? "darks like the lights"
            : $"darks{warmer}{(warmer.Length > 0 && longer.Length > 0 ? " and" : "")}{longer}";
    }

    private static string Unknown(UnknownOfPair? unknown) =>
        unknown switch
        {
            UnknownOfPair.LightExposure => "exposure of the lights",
            UnknownOfPair.DarkExposure => "exposure of the darks",
            UnknownOfPair.LightTemperature => "temperature of the lights",
            _ => "temperature of the darks",
        };

    private static Finding Drift(LightMatch match) =>
        new(
            FindingCodes.LightsDrift,
            Severity.Warning,
            $"The lights \"{Set(match.Lights)}\" drift by {Plain.Celsius(match.Drift!.Value)} within the set; they are "
                + "judged by their mean dark current."
        );

    private static Finding Beyond(LightMatch match)
    {
        LightNight night = match.Night!;
        string from = night.ServesFrom is double low ? Plain.Celsius(low) : "any temperature",
            to = night.ServesTo is double high ? Plain.Celsius(high) : "any temperature";
        return new(
            FindingCodes.LightsBeyondTolerance,
            Severity.Warning,
            $"{Plain.Whole(night.Beyond)} of the lights \"{Set(match.Lights)}\" are farther from the darks than "
                + $"allowed (each on its own, these darks serve lights from {from} to {to}): take a second set of darks for them; "
                + "a plan made from the folder of the lights says which."
        );
    }

    private static Finding Full(LightMatch match) =>
        new(
            FindingCodes.PixelsFull,
            match.FullPixels!.Value > 100 * FullPixels.Many ? Severity.Warning : Severity.Note,
            $"About {Plain.Percent(match.FullPixels.Value / 100)} of the pixels are full in the lights "
                + $"\"{Set(match.Lights)}\": no dark brings them back. Dither and reject outliers, or expose shorter."
        );
}
