using System.Globalization;
using SensorProfile.Decisions.Shots;
using SensorProfile.Frames;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Tables;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Reporting.Tests.Answers;

/// <summary>A shot list in words.</summary>
public class ShotsDocumentTests
{
    [Fact]
    public void ACooledListWarnsOfThermalShock() =>
        Assert.Contains(ShotsDocument.Compose(ShotList.Find(new ShotQuestion())).Cautions, c =>
            c.Contains("in steps", StringComparison.Ordinal)
        );

    [Fact]
    public void AnUncooledListSaysHowToReachItsTemperatures()
    {
        AnswerDocument said = ShotsDocument.Compose(
            ShotList.Find(
                new ShotQuestion
                {
                    Cooled = false,
                    AmbientCelsius = 4,
                    Minutes = 120,
                }
            )
        );
        Assert.Contains(said.Tables[0].Rows, row => row[^1].Contains("outside at night", StringComparison.Ordinal));
        Assert.Contains(said.Cautions, c => c.Contains("closed bag", StringComparison.Ordinal));
    }

    [Fact] // temperatures and exposures that no fresh list would choose
    public void ACompleteSessionLacksNothing()
    {
        double[] odd = [-18.3, -7.1, 1.9];
        AnswerDocument said = Beside([
            Sets.Of(FrameKind.Bias, 20, 0, -10),
            .. Enumerable.Range(1, 8).Select(i => Sets.Of(FrameKind.Flat, 2, i, -10)),
            .. odd.SelectMany(t => new[] { 33.0, 120, 240 }.Select(s => Sets.Of(FrameKind.Dark, 4, s, t))),
        ]);
        Assert.StartsWith(
            "Nothing is missing: characterise what you have. The most useful addition would be ",
            said.Sentence,
            StringComparison.Ordinal
        );
        Assert.Equal(
            "There are 20 bias frames, 8 flat pairs, and darks of 3 or more exposures at −18.5 °C, −7 °C, 2 °C.",
            said.Reason
        );
    }

    [Fact]
    public void FramesWithoutAKindAreSaidFirst() =>
        Assert.StartsWith(
            "Say what the frames are first: none says whether it is a bias, dark or flat. Take ",
            Beside([Sets.Of(FrameKind.Unknown, 12, 30, -10)]).Sentence,
            StringComparison.Ordinal
        );

    [Fact]
    public void TheTableHasOneRowPerShot()
    {
        ShotListAnswer answer = ShotList.Find(new ShotQuestion { Minutes = 90 });
        using var writer = new StringWriter(CultureInfo.InvariantCulture);
        DecisionTables.Write(answer, writer);
        Assert.Equal(answer.Shots.Count + 2, writer.ToString().Split("\r\n").Length);
    }

    private static AnswerDocument Beside(FrameSet[] sets) =>
        ShotsDocument.Compose(ShotList.Find(new ShotQuestion { Existing = Sets.Inventory(sets) }));
}
