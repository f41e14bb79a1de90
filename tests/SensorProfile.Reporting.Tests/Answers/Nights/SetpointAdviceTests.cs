using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using OxyPlot.Annotations;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Reporting.Plots.Nights;
using SensorProfile.Tests.Data;

namespace SensorProfile.Reporting.Tests.Answers.Nights;

/// <summary>
/// Over cameras, skies and nights at random: sentence, verdict, numbers, table and plot say the same, and what they say
/// is physical.
/// </summary>
public sealed partial class SetpointAdviceTests
{
    private static readonly int Cases = LongRuns.Of(150, 1300);

    [Fact]
    public void AnswersAgreeWithThemselves()
    {
        int answered = 0;
        var seen = new HashSet<string>();
        for (int seed = 0; seed < Cases; seed++)
        {
            var given = new RandomCase(seed);
            if (Ask(given, given.Question) is not { } answer)
                continue;
            answered++;
            AnswerDocument said = SetpointDocument.Compose(answer);
            seen.Add($"{said.Verdict} {answer.Limit} {answer.Bound} {answer.Uncooled}");
            string note = $"seed {seed}: {said.Sentence}";
            NumbersAgree(given, answer, note);
            SentenceAgrees(answer, said.Sentence, note);
            OneNumber(answer, said);
            VerdictAgrees(given.Question, answer, said, note);
            LimitsArePhysical(given.Question, answer, note);
            if (seed % 40 == 0)
                JsonAndPlotAgree(answer, said, note);
        }
        Assert.True(answered >= 0.77 * Cases, $"only {answered} answered");
        foreach (
            string kind in (string[])
                [
                    "limited Glow",
                    "limited Cooler",
                    "limited Range",
                    "holds  Air",
                    "holds  Loss",
                    "holds  WarmestMeasured",
                    "uncooled",
                    "cannot-tell",
                ]
        )
            Assert.Contains(seen, each => each.StartsWith(kind, StringComparison.Ordinal));
    }

    // a brighter sky, a shorter light or a larger loss never ask for a colder sensor
    [Fact]
    public void TheAdviceIsMonotone()
    {
        int cases = LongRuns.Of(40, 100),
            compared = 0;
        for (int seed = 0; seed < cases; seed++)
        {
            var given = new RandomCase(seed);
            SetpointQuestion question = given.Question;
            if (Ask(given, question) is not { } answer || answer.Quantities["setpoint"] is null)
                continue;
            compared++;
            foreach (
                SetpointQuestion easier in new[]
                {
                    question with
                    {
                        Sky = SkyRate.Given(1.3 * question.Sky!.Rate.Value),
                    },
                    question with
                    {
                        ExposureSeconds = 0.7 * question.ExposureSeconds,
                    },
                    question with
                    {
                        Loss = Math.Min(1.2 * question.Loss, 0.9),
                    },
                }
            )
                Assert.True(
                    Ask(given, easier)!.At.Temperature >= answer.At.Temperature,
                    $"seed {seed}: {SetpointDocument.Compose(answer).Sentence}"
                );
        }
        Assert.True(compared > 0.6 * cases, $"only {compared} compared");
    }

    private static SetpointAnswer? Ask(RandomCase given, SetpointQuestion question)
    {
        try
        {
            return SetpointAdvice.Find(given.Profile, given.Mode, question);
        }
        catch (DecisionRefusedException refusal)
        {
            // nights or a cooler that leave the sensor more than 10 °C outside the darks
            Assert.Equal((RefusalKind.CannotTell, "temperature-outside-profile"), (refusal.Kind, refusal.Code));
            return null;
        }
    }

    private static void NumbersAgree(RandomCase given, SetpointAnswer answer, string note)
    {
        Assert.Equal(answer.Curve.Single(point => point.Temperature == answer.At.Temperature), answer.At);
        foreach (SetpointPoint point in answer.Curve)
            Assert.True(
                Math.Abs(point.ExtraTypical - given.TrueExtra(point.Temperature)) <= 1e-7 * (1 + point.ExtraTypical),
                note
            );
        if (answer.Quantities["setpoint"] is { } setpoint)
            Assert.Equal(answer.At.Temperature, setpoint.Value);
        Assert.Equal(answer.At.ExtraTypical, answer.Quantities["extraTypical"]!.Value);
        Assert.Equal(answer.At.ExtraAtShare, answer.Quantities["extra99"]?.Value);
        Assert.Equal(answer.At.Temperature, answer.Noise!.Temperature);
        // the curve never falls with temperature
        Assert.All(answer.Curve.Zip(answer.Curve.Skip(1)), pair =>
            Assert.True(pair.First.ExtraTypical <= pair.Second.ExtraTypical, note)
        );
    }

    private static void SentenceAgrees(SetpointAnswer answer, string sentence, string note)
    {
        Assert.Contains(
            QuantityText.Degrees(answer.At.Temperature - answer.SelfHeating),
            sentence,
            StringComparison.Ordinal
        );
        double curve = Math.Max(answer.At.ExtraTypical, answer.At.ExtraAtShare ?? 0);
        Match atMost = AtMost().Match(sentence);
        if (answer.Uncertain is not null)
            return;
        Assert.Equal(answer.At.ExtraAtShare is not null && curve >= 0.01, atMost.Success);
        if (atMost.Success)
            Assert.InRange(Number(atMost), curve * (1 - 1e-9), curve * 1.0101); // rounded up in the third digit
        else if (curve >= 0.01)
            Assert.InRange(Number(Adds().Match(sentence)), curve * (1 - 1e-9), curve * 1.0101);
        Assert.True(
            !answer.At.Extrapolated || sentence.Contains("outside the measured range", StringComparison.Ordinal),
            note
        );
        Assert.Equal(
            answer.Limit == SetpointLimit.Glow && answer.Quantities["setpoint"] is not null,
            sentence.Contains("this is glow", StringComparison.Ordinal)
        );
    }

    // "at most 0.637 %" stood above "0.636 %"
    private static void OneNumber(SetpointAnswer answer, AnswerDocument said)
    {
        string typical = AddedNoise.Of(answer.At.ExtraTypical),
            deciding = AddedNoise.Of(Math.Max(answer.At.ExtraTypical, answer.At.ExtraAtShare ?? 0));
        if (answer.Uncertain is null)
            Assert.Contains(deciding, said.Sentence, StringComparison.Ordinal);
        if (!answer.Uncooled)
            Assert.Contains($"adds {typical} to the noise", said.Reason, StringComparison.Ordinal);
        AnswerTable curve = said.Tables.Single(t => t.Title.StartsWith("Noise that dark", StringComparison.Ordinal));
        if (answer.At.Temperature % 5 != 0)
            return;
        IReadOnlyList<string> row = curve.Rows.Single(r => r[0] == QuantityText.Temperature(answer.At.Temperature));
        Assert.Equal(typical, row[1]);
        Assert.Equal(answer.At.ExtraAtShare is { } share ? AddedNoise.Of(share) : "", row[3]);
    }

    private static void VerdictAgrees(
        SetpointQuestion question,
        SetpointAnswer answer,
        AnswerDocument said,
        string note
    )
    {
        double extra = Math.Max(answer.At.ExtraTypical, answer.At.ExtraAtShare ?? 0);
        bool kept = extra <= 100 * question.Loss * (1 + 1e-9);
        Assert.True(kept == answer.Limit is null, note);
        bool told =
            answer.Uncertain is null && answer.NightsBeyond.Count == 0 && answer.Quantities["setpoint"] is not null;
        string expected =
            !told ? "cannot-tell"
            : !kept ? "limited"
            : question.Cooled ? "holds"
            : "uncooled";
        Assert.Equal(expected, said.Verdict);
        Assert.Equal(!told, said.CannotTell);
        Assert.True(answer.Limit != SetpointLimit.Glow || answer.GlowExtra > 100 * question.Loss, note);
        // darks are named unless cooler or law ask for next to nothing beyond those that are there
        double asked = Math.Max(answer.LawAsks ?? -60, answer.ColdestHeld ?? -60);
        Assert.True(
            answer.Limit != SetpointLimit.Range || answer.Settling.Count > 0 || asked > answer.MeasuredFrom - 1.6,
            note
        );
        Assert.All(answer.Ambient, night =>
            Assert.Equal(
                Math.Max(night.ExtraTypical, night.ExtraAtShare ?? 0) <= 100 * question.Loss * (1 + 1e-9),
                night.WithinLoss
            )
        );
    }

    private static void LimitsArePhysical(SetpointQuestion question, SetpointAnswer answer, string note)
    {
        bool bounded = question.Cooled && question.Ambient.Count > 0;
        if (bounded && answer.Quantities["setpoint"] is { } setpoint)
        {
            double air = question.Ambient.Max(night => night.Celsius);
            Assert.True(setpoint.Value <= air, note);
            Assert.True(
                question.MaximumDifference is not double reach
                    || setpoint.Value >= Math.Min(air - reach + question.Margin, air) - 1e-9,
                note
            );
        }
        foreach (AmbientCost night in answer.Ambient)
        {
            if (question.Cooled)
                Assert.True(night.Sensor <= night.Ambient, note);
            else
                Assert.Equal(night.Ambient + question.SelfHeating, night.Sensor);
            if (question.MaximumDifference is double reach)
                Assert.True(
                    night.Sensor >= Math.Min(night.Ambient - reach + question.Margin, night.Ambient) - 1e-9,
                    note
                );
        }
        bool inside =
            answer.At.Temperature >= answer.MeasuredFrom - 0.0501
            && answer.At.Temperature <= answer.MeasuredTo + 0.0501;
        Assert.Equal(!inside, answer.At.Extrapolated);
        if (!inside)
            Assert.True(answer.Bound is SetpointBound.Air or SetpointBound.Cooler, note);
    }

    private static void JsonAndPlotAgree(SetpointAnswer answer, AnswerDocument said, string note)
    {
        JsonElement json = JsonDocument.Parse(AnswerJson.Of(said)).RootElement;
        Assert.Equal(said.Sentence, json.GetProperty("sentence").GetString());
        Assert.Equal(said.Verdict, json.GetProperty("verdict").GetString());
        Assert.Equal(answer.At.Temperature, json.GetProperty("at").GetProperty("temperature").GetDouble());
        Assert.Contains(json.GetProperty("assumptions").EnumerateArray(), each =>
            each.GetProperty("name").GetString() == "sky" && each.GetProperty("source").GetString() == "option"
        );
        if (answer.Quantities["setpoint"] is not null)
            Assert.True(
                SetpointPlot
                    .Draw([answer])!
                    .Model.Annotations.OfType<LineAnnotation>()
                    .Any(line => line.X == answer.At.Temperature),
                note
            );
    }

    private static double Number(Match match) => double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"at most ([0-9.]+) %")]
    private static partial Regex AtMost();

    [GeneratedRegex(@"adds ([0-9.]+) %")]
    private static partial Regex Adds();
}
