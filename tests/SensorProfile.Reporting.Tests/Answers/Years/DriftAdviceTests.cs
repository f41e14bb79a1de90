using System.Globalization;
using System.Text.RegularExpressions;
using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Years;
using SensorProfile.Tests.Data;
using SensorProfile.Tests.Drift;

namespace SensorProfile.Reporting.Tests.Answers.Years;

/// <summary>
/// Over cameras that age, or do not, at random: sentence, verdict, numbers, advice and table of a comparison say the
/// same.
/// </summary>
public sealed partial class DriftAdviceTests
{
    private static readonly int Cases = LongRuns.Of(100, 1000);

    [Fact]
    public void ComparisonsAgreeWithThemselves()
    {
        var seen = new HashSet<DriftVerdict>();
        for (int seed = 0; seed < Cases; seed++)
        {
            DriftAnswer answer = Compare(seed);
            AnswerDocument said = DriftDocument.Compose(answer);
            string advice = RetakeWords.Phrase(answer),
                note = $"seed {seed}: {said.Sentence} {advice}";
            seen.Add(answer.Outcome);
            bool changed = answer.Changes.Any(c => c.Changed) || answer.Trends.Any(t => t.Changed);
            Assert.Equal(changed ? DriftVerdict.Changed : DriftVerdict.Unchanged, answer.Outcome);
            Assert.Equal(changed, said.Sentence.StartsWith("The sensor has changed", StringComparison.Ordinal));
            Assert.Equal(changed ? 0 : 1, Regex.Count(said.Sentence, "^No change beyond the errors|^Keep the darks"));
            Assert.Equal(said.CannotTell, answer.Outcome is DriftVerdict.CannotTell or DriftVerdict.AnotherSensor);
            Assert.Equal(answer.Retake.Count > 0, advice.Contains("Retake", StringComparison.Ordinal));
            Assert.True(answer.Retake.Count == 0 || changed, note);
            Numbers(answer, said, note);
            foreach (DriftChange change in answer.Changes)
            {
                Assert.Equal(
                    change.To.Value - change.From.Value,
                    change.Change.Value,
                    1e-9 * Math.Abs(change.To.Value)
                );
                Assert.True(change.AdjustedP >= change.P, note);
                if (change.Changed)
                    Assert.True(Math.Abs(change.Z) > 2 || change.Quantity is "newLessHealed" or "growingPatch", note);
            }
            AnswerTable table = said.Tables.Single(t => t.Title == "First against last");
            Assert.Equal(answer.Changes.Select(c => c.Changed ? "yes" : "no"), table.Rows.Select(row => row[^1]));
        }
        Assert.Equal(2, seen.Count);
    }

    // "the dark current is up by 20 %": sign and size of the change in the table
    private static void Numbers(DriftAnswer answer, AnswerDocument said, string note)
    {
        foreach (Match part in Moved().Matches(said.Sentence))
        {
            bool up = part.Groups[2].Value == "up";
            double percent = double.Parse(part.Groups[3].Value, CultureInfo.InvariantCulture);
            Assert.True(
                answer.Changes.Any(c =>
                    c.Changed
                    && QuantityWords.WithArticle(c.Quantity) == part.Groups[1].Value
                    && c.Change.Value > 0 == up
                    && Math.Abs(100 * Math.Abs(c.Change.Value / c.From.Value) - percent) <= 0.051 * percent
                ),
                $"{part.Value}; {note}"
            );
        }
        Match seen = Detectable().Match(said.Sentence);
        if (seen.Success)
        {
            DriftChange dark = answer.Changes.Single(c => c.Quantity == "darkRate");
            double percent = 100 * dark.Detectable / dark.From.Value;
            Assert.InRange(
                double.Parse(seen.Groups[1].Value, CultureInfo.InvariantCulture),
                0.949 * percent,
                1.051 * percent
            );
        }
    }

    private static DriftAnswer Compare(int seed)
    {
        var random = new Random(60_000 + seed);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        var camera = new TarnYears { DarkRate = Between(0.002, 0.1), ReadNoise = Between(1, 5) };
        bool ages = random.Next(2) == 0;
        var profiles = new List<ProfileOnDisk>();
        int years = random.Next(2, 5);
        for (int year = 0; year < years; year++)
        {
            profiles.Add(camera.Measure(2031 + year, random));
            if (ages)
                camera = camera with
                {
                    DarkRate = camera.DarkRate * Between(0.9, 1.3),
                    ReadNoise = camera.ReadNoise * Between(0.98, 1.03),
                    HotPixels = camera.HotPixels * Between(1, 1.4),
                    Glow = camera.Glow * Between(0.9, 1.2),
                };
        }
        return DriftComparison.Run(profiles, (_, _) => (null, null), new DriftOptions { Stack = null, Layouts = 19 });
    }

    [GeneratedRegex(@"(the [^,:;]*?) is (up|down) by ([0-9.]+) %")]
    private static partial Regex Moved();

    [GeneratedRegex(@"a change of the dark current by ([0-9.]+) % would have been seen")]
    private static partial Regex Detectable();
}
