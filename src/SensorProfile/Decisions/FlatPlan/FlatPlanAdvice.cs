using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.FlatPlan;

/// <summary>
/// The number of flats for a stack and their level, from the noise by which a master flat multiplies the sky.
/// </summary>
public static class FlatPlanAdvice
{
    // with fewer, one flat spoilt by a cloud or a hit cannot be recognised
    private const int MinFlats = MinDarks.MinInMaster;

    // a gradient can be removed from a picture, noise cannot: a straighter response is not worth flats fainter than
    // these
    private const double LeastForBend = 0.3;

    private static readonly int[] counts = [5, 7, 10, 15, 20, 30, 40, 50, 70, 100, 150, 200, 300, 500, 700, 1000];

    /// <summary>
    /// The fewest flats that stay within the loss, at the level that needs fewest; when the question does not say
    /// whether the stack is dithered, also for the same stack dithered over 20 positions.
    /// </summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="question">The stack.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the profile cannot answer it.</exception>
    public static FlatPlanAnswer Find(CameraProfile profile, ModeProfile mode, FlatPlanQuestion question)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(mode);
        ArgumentNullException.ThrowIfNull(question);
        Check(question);
        FlatPlanAnswer answer = OfMode(profile, mode, question);
        return question.DitherPositions is null && DarkTolerance.PositionsBeside(question.Lights) is int positions
            ? answer with
            {
                Dithered = OfMode(profile, mode, question with { Sky = answer.Sky, DitherPositions = positions }),
            }
            : answer;
    }

    private static FlatPlanAnswer OfMode(CameraProfile profile, ModeProfile mode, FlatPlanQuestion question) =>
        StrictestColour.Ask(
            mode,
            colour => Solve(profile, ChannelMean.IsNeeded(colour) ? ChannelMean.Average(colour) : colour, question),
            answer => -answer.Flats,
            QuantityNames.Flats
        );

    private static FlatPlanAnswer Solve(CameraProfile profile, ModeProfile mode, FlatPlanQuestion question)
    {
        SkyRate sky = NamedSkies.OrDefault(question.Sky);
        List<Finding> findings = question.Sky is null ? [DarkCountAdvice.SkyAssumed(sky)] : [];
        double loss = question.Limits.NoiseLoss;
        int? unlit = question.UnlitFrames;
        var levels = new FlatLevels(mode, question.Limits);
        FlatBudget budget = FlatBudget.Collect(profile, mode, question, sky, findings);
        FlatNoise noise = budget.Best;
        double well = levels.WellKnown ? levels.Well.Value : double.PositiveInfinity;
        StackConditions stack = budget.Stack;
        if (
            FullPixels.White(well, sky, budget.Dark.Value, stack.ExposureSeconds, stack.TemperatureCelsius) is { } white
        )
            throw white;
        FlatLevel Level(double share) =>
            levels.At(share, noise, Advised(noise.Smallest(share * levels.Well.Value, unlit, loss)));
        FlatLevel[] all = [.. levels.Candidates.Select(Level)];
        (FlatLevel level, FlatLevelLimit limit) = question.Level is double given
            ? (Level(given), FlatLevelLimit.Given)
            : Choose(all, levels.WellKnown);
        bool limited = level.Flats is null;
        if (limited)
            (budget, unlit) = (budget with { Residual = null }, null);
        double flats = budget.Best.Smallest(level.Electrons, unlit, loss) ?? MinFlats;
        UncertaintyDraws.Spread spread = UncertaintyDraws.Draw(next =>
        {
            double electrons = level.Electrons * FlatBudget.Moved(levels.Well, next()) / levels.Well.Value;
            return budget.Noise(next).Smallest(electrons, unlit, loss) is double n ? Math.Max(n, MinFlats) : null;
        });
        findings.AddRange([
            .. FlatPlanWarnings.OfLevel(level, question.Limits),
            .. FlatPlanWarnings.OfPattern(mode, noise, question.Limits),
            .. FlatPlanWarnings.OfNumber(
                flats,
                noise.Loss(level.Electrons, DarksPlan.PracticalFrames, question.UnlitFrames),
                budget,
                loss
            ),
        ]);
        AnswerQuantities quantities = Quantities(mode, level, noise, question.UnlitFrames);
        quantities.Add(
            QuantityNames.Flats,
            Math.Max(flats, MinFlats),
            "frames",
            "smallest number within the loss, uncertainties drawn",
            spread
        );
        return new FlatPlanAnswer
        {
            Verdict = limited ? FlatPlanVerdict.Limited : FlatPlanVerdict.Answered,
            Stack = budget.Stack,
            Sky = sky,
            Limits = question.Limits,
            Flats = Advised(flats)!.Value,
            FewestForHits = flats < MinFlats,
            Level = level,
            LevelLimit = limit,
            Levels = question.Level is null
                ? all
                : [.. all.Append(level).DistinctBy(l => l.Share).OrderBy(l => l.Share)],
            Quantities = quantities.Quantities,
            Intervals = quantities.Intervals,
            Findings = findings,
            Curve =
            [
                .. counts.Select(n => new FlatPlanPoint(n, 100 * noise.Loss(level.Electrons, n, question.UnlitFrames))),
            ],
            RulesOfThumb = [.. RulesOfThumb.OfFlats(noise, level.Electrons, question.UnlitFrames, loss, level.Share)],
        };
    }

    private static AnswerQuantities Quantities(ModeProfile mode, FlatLevel level, FlatNoise noise, int? unlit)
    {
        var quantities = new AnswerQuantities();
        quantities.Add(QuantityNames.Flats, null, "frames", ""); // first in order; filled in when it is known
        quantities.Add(QuantityNames.FlatLevel, 100 * level.Share, "%", "of the full well, mean of the frame");
        quantities.Add(QuantityNames.FlatLevelAdu, level.Adu, "ADU", "mean of the frame, bias level in it");
        quantities.Add(
            QuantityNames.LossAt20Flats,
            100 * noise.Loss(level.Electrons, RulesOfThumb.UsualFlats.Low, unlit),
            "%",
            "rise of the noise of the stack with 20 flats of this level"
        );
        quantities.Add(
            QuantityNames.LossByPattern,
            mode.FlatResidual is null ? null : 100 * noise.LossByPattern,
            "%",
            "rise of the noise of the stack from the flat-field residual"
        );
        quantities.Add(
            QuantityNames.GradientLeft,
            mode.FlatResidualOverAreas is { } areas ? noise.InStackNoise(areas.Value / 100) : null,
            "1",
            "flat-field residual over areas, in the noise of a pixel of the stack"
        );
        return quantities;
    }

    private static void Check(FlatPlanQuestion question)
    {
        question.Limits.Check();
        if (question.Level is double level && !(level is > 0 and <= 1))
            throw Refuse.BadArgument(
                FindingCodes.FlatLevelOutOfRange,
                "The level of the flats must be above 0 % and at most 100 % of the full well, not "
                    + $"{Plain.Percent(level)}."
            );
        if (question.UnlitFrames is int frames)
            Refuse.UnlessCount(frames, 1, FindingCodes.UnlitFramesNotPositive, "dark flats or bias frames");
    }

    /// <summary>
    /// The brightest level where the response is straight, which needs the fewest flats; else the straightest level.
    /// </summary>
    private static (FlatLevel, FlatLevelLimit) Choose(FlatLevel[] levels, bool wellKnown)
    {
        if (!wellKnown)
            return (levels[^1], FlatLevelLimit.BrightestMeasured);
        if (levels[^1].Straight)
            return (levels[^1], FlatLevelLimit.Saturation);
        FlatLevel[] bright = [.. levels.Where(l => l.Share >= LeastForBend)];
        if (bright.Length == 0)
            return (levels[^1], FlatLevelLimit.Saturation);
        FlatLevel? straight = bright.LastOrDefault(l => l.Straight);
        return (straight ?? bright.MinBy(l => l.Bend ?? double.PositiveInfinity)!, FlatLevelLimit.Linearity);
    }

    private static int? Advised(double? flats) =>
        flats is double n ? (int)Math.Min(Math.Max(n, MinFlats), int.MaxValue) : null;
}
