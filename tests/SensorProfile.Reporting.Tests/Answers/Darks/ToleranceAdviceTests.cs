using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Tests.Data;

namespace SensorProfile.Reporting.Tests.Answers.Darks;

/// <summary>
/// Over cameras, skies and stacks at random: sentence, verdict, numbers and tables of the dark tolerance say the same,
/// and what they say is physical.
/// </summary>
public sealed partial class ToleranceAdviceTests
{
    private static readonly int Cases = LongRuns.Of(20, 1000);

    [Fact]
    public void AnswersAgreeWithThemselves()
    {
        var seen = new HashSet<string>();
        int answered = 0;
        for (int seed = 0; seed < Cases; seed++)
        {
            var given = new RandomStack(seed);
            if (Ask(given) is not { } answer)
                continue;
            answered++;
            AnswerDocument said = ToleranceDocument.Compose(answer);
            string note = $"seed {seed}: {said.Sentence} {said.Reason}";
            seen.Add(said.Sentence[..8]);
            NumbersAgree(answer, note);
            SentenceAgrees(answer, said, note);
            TablesAgree(answer, said, note);
            CurveAgrees(answer, note);
            JsonElement json = JsonDocument.Parse(AnswerJson.Of(said)).RootElement;
            Assert.Equal(said.Sentence, json.GetProperty("sentence").GetString());
            Assert.Equal(answer.BeyondCoolers, json.GetProperty("beyondCoolers").GetBoolean());
        }
        Assert.True(answered > 0.8 * Cases, $"only {answered} answered");
        Assert.Equal(["Cannot t", "Extrapol", "No darks", "Use dark"], seen.Order());
    }

    private static ToleranceAnswer? Ask(RandomStack given)
    {
        try
        {
            return DarkTolerance.Find(
                given.Profile,
                given.Mode,
                new ToleranceQuestion
                {
                    ExposureSeconds = given.Stack.ExposureSeconds,
                    TemperatureCelsius = given.Celsius,
                    Lights = given.Stack.Lights,
                    DitherPositions = given.Stack.DitherPositions,
                    Rejection = given.Stack.Rejection,
                    Sky = given.Stack.Sky,
                    Limits = given.Stack.Limits,
                }
            );
        }
        catch (DecisionRefusedException refusal)
        {
            Assert.Equal(RefusalKind.CannotTell, refusal.Kind);
            return null;
        }
    }

    private static void NumbersAgree(ToleranceAnswer answer, string note)
    {
        foreach (
            (string name, Func<CauseTolerance, Measurement?> of, double most) in new (
                string,
                Func<CauseTolerance, Measurement?>,
                double
            )[]
            {
                ("toleranceWarmer", cause => cause.Warmer, 80),
                ("toleranceColder", cause => cause.Colder, 120),
                ("toleranceExposure", cause => cause.Exposure, 20 * answer.Stack.ExposureSeconds),
            }
        )
        {
            double? least = answer.Causes.Select(of).OfType<Measurement>().Select(m => (double?)m.Value).Min();
            Assert.Equal(least, answer.Quantities[name]?.Value);
            if (least is double limit)
                Assert.True(limit > 0 && limit <= most, note);
            if (
                answer.Intervals.GetValueOrDefault(name) is { Low: double low, High: double high }
                && least is double value
            )
                // the level rests on the mean over all pixels, which few bright ones rule: its draws lean to one side
                Assert.True(0.95 * low <= value && value <= 1.05 * high, $"{name} {low} {value} {high}; {note}");
        }
        CauseTolerance[] limiting = [.. answer.Causes.Where(c => Tighter(c) is not null)];
        Assert.Equal(limiting.Length == 0, answer.BindingCause is null);
        if (limiting.Length > 0)
            Assert.Equal(limiting.Min(Tighter), Tighter(answer.Causes.Single(c => c.Cause == answer.BindingCause)));
    }

    private static double? Tighter(CauseTolerance cause) =>
        SideLimits.Smaller(cause.Warmer?.Value, cause.Colder?.Value);

    private static void SentenceAgrees(ToleranceAnswer answer, AnswerDocument said, string note)
    {
        bool told = answer.Verdict == ToleranceVerdict.Answered;
        Assert.Equal(!told, said.CannotTell);
        Assert.Equal(!told, said.Sentence.StartsWith("Cannot tell", StringComparison.Ordinal));
        double? tighter = SideLimits.Smaller(
            answer.Quantities["toleranceWarmer"]?.Value,
            answer.Quantities["toleranceColder"]?.Value
        );
        Assert.Equal(
            told && tighter < 0.2,
            said.Sentence.StartsWith("No darks of another night", StringComparison.Ordinal)
        );
        if (!answer.SpreadKnown)
            return;
        Side(answer.Quantities["toleranceWarmer"]?.Value, "warmer", said.Sentence, note);
        Side(answer.Quantities["toleranceColder"]?.Value, "colder", said.Sentence, note);
        Match seconds = Seconds().Match(said.Reason);
        Assert.Equal(answer.Quantities["toleranceExposure"] is not null, seconds.Success);
        if (seconds.Success)
            Within(answer.Quantities["toleranceExposure"]!.Value, seconds, 0.01, note);
    }

    // what is said "at most" is never more than the limit, nor much less
    private static void Side(double? limit, string side, string sentence, string note)
    {
        if (limit is not double value)
        {
            Assert.Contains($"any amount {side}", sentence, StringComparison.Ordinal);
            return;
        }
        Match match = Regex.Match(sentence, $@"(at most |less than |or )([0-9.]+) °C {side}");
        Assert.True(match.Success, note);
        // "or 1.1 °C colder" leans on the "at most" before it
        Assert.True(match.Groups[1].Value != "or " || sentence.Contains("at most", StringComparison.Ordinal), note);
        Within(value, match, 0.1, note, 0.01);
    }

    private static void Within(double limit, Match match, double relative, string note, double absolute = 0)
    {
        double said = double.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture);
        if (match.Groups[1].Value == "less than ")
            Assert.True(limit < said, note);
        else
            Assert.True(
                said <= limit * (1 + 1e-9) && said >= limit * (1 - relative) - absolute,
                $"{said} for {limit}; {note}"
            );
    }

    private static void TablesAgree(ToleranceAnswer answer, AnswerDocument said, string note)
    {
        AnswerTable causes = said.Tables.Single(t => t.Title.StartsWith("What each cause", StringComparison.Ordinal));
        Assert.Equal(answer.Causes.Count, causes.Rows.Count);
        foreach ((CauseTolerance cause, IReadOnlyList<string> row) in answer.Causes.Zip(causes.Rows))
            Assert.True(
                row[1]
                    == (
                        !cause.Known ? "not known"
                        : cause.Warmer is null ? "no limit"
                        : QuantityText.Of(cause.Warmer)
                    ),
                note
            );
    }

    // up to the limit the loads of the curve stay within it, just beyond they do not
    private static void CurveAgrees(ToleranceAnswer answer, string note)
    {
        double warmer = answer.Quantities["toleranceWarmer"]?.Value ?? double.PositiveInfinity,
            colder = answer.Quantities["toleranceColder"]?.Value ?? double.PositiveInfinity;
        foreach (TolerancePoint point in answer.Curve)
        {
            double load = new[] { point.Typical ?? 0, point.HotPixels ?? 0, point.Glow, point.Level }.Max();
            bool inside = point.Mismatch < 0.999 * warmer && -point.Mismatch < 0.999 * colder;
            Assert.True(!inside || load <= 1 + 1e-9, $"{point} within {warmer} and {colder}; {note}");
        }
    }

    [GeneratedRegex(@"exposure may differ by (at most |less than )([0-9.]+) s")]
    private static partial Regex Seconds();
}
