using System.Globalization;
using System.Text.RegularExpressions;
using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Tests.Data;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Reporting.Tests.Answers.Darks;

/// <summary>
/// Over cameras, skies and nights at random: sentence, verdict, numbers and table of a plan and of a match say the same,
/// a plan keeps what it promises, and the darks that it asks for fit the lights.
/// </summary>
public sealed partial class PlanAdviceTests
{
    private static readonly int Cases = LongRuns.Of(30, 1000);

    [Fact]
    public void PlansAgreeWithThemselvesAndWithTheMatch()
    {
        int answered = 0;
        for (int seed = 0; seed < Cases; seed++)
        {
            var given = new RandomStack(10_000 + seed);
            PlanQuestion question = Question(given);
            if (Ask(given, question) is not { } answer)
                continue;
            answered++;
            AnswerDocument said = PlanDocument.Compose(answer);
            string note = $"seed {seed}: {said.Sentence} {said.Reason}";
            SentenceAgrees(answer, said, note);
            IsPhysical(question, answer, note);
            KeepsItsLoss(given, question, answer, note);
            if (seed % 3 == 0)
                Fits(given, question, answer, note);
        }
        Assert.True(answered > 0.8 * Cases, $"only {answered} answered");
    }

    [Fact]
    public void MatchesAgreeWithThemselves()
    {
        var seen = new HashSet<MatchVerdict>();
        for (int seed = 0; seed < Cases; seed++)
        {
            var given = new RandomStack(20_000 + seed);
            FrameSet lights = Sets.Of(FrameKind.Light, given.Stack.Lights, given.Stack.ExposureSeconds, given.Celsius);
            FrameSet darks = Sets.Of(
                FrameKind.Dark,
                given.Whole(1, 60),
                given.Whole(0, 2) == 0
                    ? Math.Round(given.Stack.ExposureSeconds * given.Spread(0.5, 2), 1)
                    : given.Stack.ExposureSeconds,
                given.Whole(0, 2) == 0 ? given.Celsius : Math.Round(given.Celsius + given.Between(-6, 6), 1)
            );
            MatchAnswer answer = Match(given, lights, darks, given.Whole(0, 1) * 20);
            AnswerDocument said = MatchDocument.Compose(answer, given.Stack.Sky, []);
            LightMatch match = Assert.Single(answer.Matches);
            seen.Add(match.Verdict);
            string note = $"seed {seed}: {said.Sentence} {said.Reason}";
            Assert.Equal(match.Verdict, answer.Worst);
            Assert.Equal(match.Verdict == MatchVerdict.CannotTell, said.CannotTell);
            Assert.StartsWith(
                match.Verdict switch
                {
                    MatchVerdict.Fits => "These darks fit",
                    MatchVerdict.Usable => "These darks are usable",
                    MatchVerdict.DoesNotFit => "These darks do not fit",
                    _ => "Cannot tell",
                },
                said.Sentence,
                StringComparison.Ordinal
            );
            if (match.Reason.Ground != MatchGround.Measured)
                continue;
            double loss = match.Loss!.Value,
                use = match.Reason.Limit!.Share;
            Assert.True(loss >= 0, note);
            Assert.Equal(match.Loss, answer.Quantities["lossWorst"]);
            if (match.Verdict == MatchVerdict.Fits)
                Assert.True(loss <= 100 * given.Stack.Limits.NoiseLoss * (1 + 1e-9) && use <= 1 + 1e-9, note);
            if (match.Verdict is MatchVerdict.Usable or MatchVerdict.DoesNotFit)
                Assert.True(loss > 100 * given.Stack.Limits.NoiseLoss || use > 1, note);
            Match percent = LossSaid().Match(said.Sentence);
            if (percent.Success)
                Assert.InRange(
                    double.Parse(percent.Groups[1].Value, CultureInfo.InvariantCulture),
                    loss * 0.949,
                    loss * 1.051
                );
            // what is advised instead fits
            Match instead = Instead().Match(said.Reason);
            if (match.Verdict is not (MatchVerdict.Usable or MatchVerdict.DoesNotFit))
                continue;
            Assert.True(instead.Success, note);
            FrameSet taken = Sets.Of(
                FrameKind.Dark,
                int.Parse(instead.Groups[1].Value, CultureInfo.InvariantCulture),
                given.Stack.ExposureSeconds,
                given.Celsius
            );
            MatchVerdict then = Match(given, lights, taken, 0).Worst;
            Assert.True(then is MatchVerdict.Fits, $"{then}; {note}");
        }
        Assert.Equal(4, seen.Count);
    }

    // brighter skies, more lights at one place and larger losses move the number of darks one way
    [Fact]
    public void PlansAreMonotone()
    {
        for (int seed = 0; seed < Cases / 2; seed++)
        {
            var given = new RandomStack(30_000 + seed);
            PlanQuestion question = Question(given) with { Cooled = true };
            PlannedLights lights = question.Lights[0] with { EndCelsius = null };
            question = question with { Lights = [lights] };
            if (Ask(given, question) is not { } answer)
                continue;
            double frames = answer.Quantities["totalFrames"]!.Value;
            double Of(PlanQuestion other) => Ask(given, other)!.Quantities["totalFrames"]!.Value;
            // a sky twice as bright may turn the lights white: no dark is asked for then
            PlanAnswer? brighter = Ask(given, question with { Sky = SkyRate.Given(2 * question.Sky!.Rate.Value) });
            Assert.True((brighter?.Quantities["totalFrames"]!.Value ?? 0) <= frames, $"{seed}");
            Assert.True(
                Of(question with { Limits = question.Limits with { NoiseLoss = 1.5 * question.Limits.NoiseLoss } })
                    <= frames,
                $"{seed}"
            );
            Assert.True(
                Of(question with { Lights = [lights with { Lights = 2 * lights.Lights }] }) >= frames,
                $"{seed}"
            );
        }
    }

    private static PlanQuestion Question(RandomStack given)
    {
        bool cooled = given.Whole(0, 2) > 0;
        return new PlanQuestion
        {
            Cooled = cooled,
            Sky = given.Stack.Sky,
            Limits = given.Stack.Limits,
            Lights =
            [
                new PlannedLights
                {
                    ExposureSeconds = given.Stack.ExposureSeconds,
                    StartCelsius = given.Celsius,
                    EndCelsius = cooled ? null : given.Celsius - given.Between(0, 8),
                    Lights = given.Stack.Lights,
                    DitherPositions = given.Stack.Positions,
                    Rejection = given.Stack.Rejection,
                },
            ],
        };
    }

    private static PlanAnswer? Ask(RandomStack given, PlanQuestion question)
    {
        try
        {
            return DarksPlan.Find(given.Profile, question);
        }
        catch (DecisionRefusedException refusal)
        {
            Assert.Equal(RefusalKind.CannotTell, refusal.Kind);
            return null;
        }
    }

    private static void SentenceAgrees(PlanAnswer answer, AnswerDocument said, string note)
    {
        int frames = answer.Masters.Sum(m => m.Frames);
        Assert.Equal(frames, answer.Quantities["totalFrames"]!.Value);
        Assert.Equal(answer.Masters.Sum(m => m.Seconds), answer.Quantities["totalTime"]!.Value, 1e-6);
        Match shoot = Shoot().Match(said.Sentence);
        Assert.True(shoot.Success, note);
        Assert.Equal(
            (answer.Masters.Count, frames),
            (
                int.Parse(shoot.Groups[1].Value, CultureInfo.InvariantCulture),
                int.Parse(shoot.Groups[2].Value, CultureInfo.InvariantCulture)
            )
        );
        Assert.Equal(answer.Verdict == PlanVerdict.CannotTell, said.CannotTell);
        Assert.Equal(
            said.CannotTell,
            said.Sentence.Contains("annot tell", StringComparison.Ordinal)
                || said.Sentence.Contains("cannot be told", StringComparison.Ordinal)
        );
        Assert.Equal(answer.Masters.Select(m => QuantityText.Count(m.Frames)), said.Tables[0].Rows.Select(r => r[0]));
        foreach (MasterPlan master in answer.Masters)
            Assert.Equal(
                master.FewestForHits,
                PlanWords.Reason(answer, master).Contains("cosmic-ray", StringComparison.Ordinal)
            );
    }

    private static void IsPhysical(PlanQuestion question, PlanAnswer answer, string note)
    {
        PlannedLights lights = question.Lights[0];
        double low = Math.Min(lights.StartCelsius, lights.EndCelsius ?? lights.StartCelsius),
            high = Math.Max(lights.StartCelsius, lights.EndCelsius ?? lights.StartCelsius);
        foreach (MasterPlan master in answer.Masters)
        {
            Assert.InRange(master.Temperature, low - 1e-9, high + 1e-9);
            Assert.InRange(master.ServesFrom, low - 1e-9, master.ServesTo);
            Assert.InRange(master.ServesTo, master.ServesFrom, high + 1e-9);
            Assert.True(master.Frames >= MinDarks.MinInMaster, note);
            Assert.InRange(master.MismatchUse, 0, 1 + 1e-9);
            Assert.Equal(lights.ExposureSeconds, master.Exposure);
            Assert.Equal(question.Cooled, master.When is null);
            if (master.FramesInterval is { Low: double a, High: double b })
                Assert.True(a <= master.Frames && master.Frames <= b, $"{a} {master.Frames} {b}; {note}");
        }
        double served = answer.Masters.Sum(m => m.Lights) + answer.Unplanned.Sum(u => u.Lights);
        Assert.Equal(lights.Lights, served, 1.0);
    }

    // the loss by the number of darks and the mismatch together, worked out for every temperature of the night
    private static void KeepsItsLoss(RandomStack given, PlanQuestion question, PlanAnswer answer, string note)
    {
        if (question.Lights[0].EndCelsius is not null || answer.Masters.Count != 1)
            return;
        SensorModel sensor = SensorReader.Of(given.Profile, given.Mode).Best;
        MasterPlan master = answer.Masters[0];
        double loss = new DarkMismatch(
            sensor,
            given.Stack.At(given.Celsius, given.Stack.Sky!),
            given.Stack.Sky!.Rate.Value,
            question.Limits
        ).Loss(
            new DarkFrames
            {
                ExposureSeconds = master.Exposure,
                TemperatureCelsius = master.Temperature,
                Frames = master.Frames,
            }
        );
        Assert.True(loss <= question.Limits.NoiseLoss * (1 + 1e-9), $"{loss}; {note}");
    }

    private static void Fits(RandomStack given, PlanQuestion question, PlanAnswer answer, string note)
    {
        if (question.Lights[0].EndCelsius is not null || answer.Masters.Count != 1)
            return;
        MatchVerdict verdict = Match(
            given,
            Sets.Of(FrameKind.Light, given.Stack.Lights, given.Stack.ExposureSeconds, given.Celsius),
            Sets.Of(
                FrameKind.Dark,
                answer.Masters[0].Frames,
                given.Stack.ExposureSeconds,
                answer.Masters[0].Temperature
            ),
            0
        ).Worst;
        Assert.True(verdict == MatchVerdict.Fits, $"{verdict}; {note}");
    }

    private static MatchAnswer Match(RandomStack given, FrameSet lights, FrameSet darks, int bias) =>
        DarkMatching.Find(
            given.Profile,
            new MatchQuestion
            {
                Lights = [lights],
                Darks = [darks],
                Stack = given.Stack,
                BiasFrames = bias,
            }
        );

    [GeneratedRegex(@"[Ss]hoot ([0-9]+) master darks?.*, ([0-9]+) frames in all")]
    private static partial Regex Shoot();

    [GeneratedRegex(@"\(loss ([0-9.]+) %\)")]
    private static partial Regex LossSaid();

    [GeneratedRegex(@"take ([0-9]+) darks of")]
    private static partial Regex Instead();
}
