using SensorProfile.Decisions.FlatPlan;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Flats;

namespace SensorProfile.Reporting.Tests.Answers.Flats;

public class FlatPlanDocumentTests
{
    private static readonly CameraProfile profile = TarnProfile.Build();

    [Fact]
    public void TheFirstSentenceCanBeFollowed()
    {
        AnswerDocument reply = FlatPlanDocument.Compose(Ask(4.5));
        Assert.Matches(
            @"^Take \d+ flats at about (half|\d+ %) of full well \(\d+.\d+ ADU\): fewer would cost this stack more than 5 %\.$",
            reply.Sentence
        );
        Assert.Equal("answered", reply.Verdict);
        Assert.False(reply.CannotTell);
        Assert.Contains("Dithered over 20 positions, 5 flats would do.", reply.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void HalfIsCalledSo() =>
        Assert.Contains(
            "flats at about half of full well (",
            FlatPlanDocument.Compose(Ask(4.5, level: 0.5)).Sentence,
            StringComparison.Ordinal
        );

    [Fact]
    public void WhereFewWouldDoThatIsTheReason() =>
        Assert.StartsWith("Take 5 flats at ", FlatPlanDocument.Compose(Ask(0.05)).Sentence, StringComparison.Ordinal);

    [Fact]
    public void WhereNoNumberIsEnoughTheWayOutComesFirst()
    {
        ModeProfile mode = profile.Modes[0] with
        {
            FlatResidual = new Measurement(0.3, 0.01, "%", 1, "invented"),
            FlatResidualOverAreas = new Measurement(0.4, 0.01, "%", 1, "invented"),
        };
        AnswerDocument reply = FlatPlanDocument.Compose(Ask(4.5, mode: mode));
        Assert.Equal("limited", reply.Verdict);
        Assert.Matches(
            @"^Dither and take \d+ flats at .*: the flat-field residual costs this stack \d+",
            reply.Sentence
        );
        Assert.Contains(reply.Findings, f => f.Code == "flat-gradient-left");
    }

    [Fact] // one of the levels is the one that is taken, and the numbers of its row are those of the sentence
    public void TheLevelsSayWhichIsTaken()
    {
        FlatPlanAnswer answer = Ask(4.5);
        AnswerDocument reply = FlatPlanDocument.Compose(answer);
        IReadOnlyList<string> row = Assert.Single(reply.Tables[0].Rows, r => r[^1] == "taken");
        Assert.Equal(QuantityText.Count(answer.Flats), row[2]);
        Assert.Equal(reply.Quantities.Single(q => q.Name == "flats").Value!.Value, answer.Flats);
    }

    private static FlatPlanAnswer Ask(double sky, double? level = null, ModeProfile? mode = null) =>
        FlatPlanAdvice.Find(
            profile,
            mode ?? profile.Modes[0],
            new FlatPlanQuestion
            {
                Sky = SkyRate.Given(sky),
                Level = level,
                TemperatureCelsius = -10,
                Limits = new LossLimits(),
            }
        );
}
