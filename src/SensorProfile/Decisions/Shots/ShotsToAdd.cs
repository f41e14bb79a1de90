using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.Shots;

/// <summary>What an existing session still lacks, and which frames would shrink which uncertainty most.</summary>
internal static class ShotsToAdd
{
    internal static ShotListAnswer Find(ShotQuestion question)
    {
        List<IGrouping<(string?, int, int, ModeSettings), FrameSet>> modes =
        [
            .. question
                .Existing!.Sets.Where(s => s.Kind is FrameKind.Bias or FrameKind.Dark or FrameKind.Flat)
                .GroupBy(s => (s.Frames[0].Camera, s.Width, s.Height, s.Settings))
                .OrderByDescending(g => g.Sum(s => s.Frames.Count)),
        ];
        FrameSet[] sets = modes.Count > 0 ? [.. modes[0]] : [];
        if ((sets.FirstOrDefault() ?? question.Existing.Sets.MaxBy(s => s.Frames.Count)) is { } some)
            question = question with { Width = some.Width, Height = some.Height };
        double longest = question.LongestExposureSeconds
            ?? sets.Where(s => s.Kind == FrameKind.Dark)
                .Select(s => s.ExposureSeconds)
                .OfType<double>()
                .Where(t => t > 0)
                .DefaultIfEmpty(ShotList.UsualLongest)
                .Max();
        SessionDesign now = SessionDesign.Read(sets, (long)question.Width * question.Height);
        // Frames that bring no answer closer are not worth a night; those that bring one closest come first.
        List<List<PlannedShot>> units =
        [
            .. MissingShots
                .Find(question, sets, longest)
                .Select(unit => (Unit: unit, Gain: now.GainOf(unit)))
                .Where(u => u.Gain > ShotAdditions.MinReduction)
                .OrderByDescending(u => u.Gain)
                .Select(u => u.Unit),
        ];
        List<PlannedShot> shots = Fitting(question, units);
        SessionDesign with = now.With(shots);
        ShotAddition[] additions = [.. ShotAdditions.Suggest(question, now, longest)];
        return ShotList.Answer(question, shots) with
        {
            Existing = There(
                now,
                kindsUnknown: sets.Length == 0 && question.Existing!.Frames.Any(f => f.Kind == FrameKind.Unknown)
            ),
            Findings = [.. Findings(question, modes, units, shots)],
            Additions = additions,
            Expected = ShotExpectation.Predict(now, with),
        };
    }

    /// <summary>The units that fit the time, the quickest kinds first, in the order listed.</summary>
    private static List<PlannedShot> Fitting(ShotQuestion question, List<List<PlannedShot>> units)
    {
        double left = 60 * (question.Minutes ?? double.PositiveInfinity);
        var shots = new List<PlannedShot>();
        foreach (List<PlannedShot> unit in units)
        {
            double seconds = unit.Sum(s => s.Seconds);
            if (seconds > left)
                continue;
            left -= seconds;
            shots.AddRange(unit);
        }
        if (units.Count > 0 && shots.Count == 0)
            throw ShotGuard.TooShort(
                "The shortest step that these frames still lack",
                units.Min(u => u.Sum(s => s.Seconds)),
                question.Minutes!.Value,
                "give more time"
            );
        return shots;
    }

    private static IEnumerable<Finding> Findings(
        ShotQuestion question,
        List<IGrouping<(string?, int, int, ModeSettings), FrameSet>> modes,
        List<List<PlannedShot>> units,
        List<PlannedShot> shots
    )
    {
        int unknown = question.Existing!.Frames.Count(f => f.Kind == FrameKind.Unknown);
        if (unknown > 0)
            yield return new Finding(
                FindingCodes.KindsNotKnown,
                Severity.Warning,
                Unsaid(unknown, question.Existing.Frames.Count)
                    + " in a capture table, or let the names of files and folders speak, and ask again."
            );
        if (modes.Count > 1)
            yield return new Finding(
                FindingCodes.SeveralSettings,
                Severity.Note,
                $"The frames were taken with {Plain.Whole(modes.Count)} settings; this answer is for the one "
                    + $"with the most frames, {ModeChoice.Name(modes[0].Key.Item4)}: give the folders of another one "
                    + "alone to ask for it."
            );
        List<PlannedShot> rest = [.. units.SelectMany(u => u).Where(s => !shots.Contains(s))];
        if (rest.Count > 0)
            yield return new Finding(
                FindingCodes.TimeTooShort,
                Severity.Warning,
                $"Not everything fits into {Plain.Number(question.Minutes!.Value)} min: "
                    + $"{Plain.Whole(rest.Sum(s => s.Frames))} more frames "
                    + $"({Plain.Duration(rest.Sum(s => s.Seconds))}) will still be missing; ask again once "
                    + "these are taken."
            );
    }

    private static string Unsaid(int unknown, int all) =>
        unknown == 1
            ? $"{(all == 1 ? "The only frame" : $"1 of the {Plain.Whole(all)} frames")} does not say whether it is bias, dark or "
                + "flat and is not counted: give its kind"
            : $"{Plain.Whole(unknown)} of the {Plain.Whole(all)} frames do not say whether they are bias, dark or flat and "
                + "are not counted: give their kind";

    private static ExistingFrames There(SessionDesign now, bool kindsUnknown) =>
        new(
            now.Bias,
            now.FlatPairs,
            MissingMeasurements.DarkExposures,
            [
                .. now
                    .Darks.Where(d =>
                        d.Exposures.Select(e => e.Seconds).Distinct().Count() >= MissingMeasurements.DarkExposures
                    )
                    .Select(d => Math.Round(2 * d.Celsius) / 2),
            ],
            kindsUnknown
        );
}
