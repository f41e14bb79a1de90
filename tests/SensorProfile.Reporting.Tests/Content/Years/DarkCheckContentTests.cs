using SensorProfile.Drift.MasterDarks;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Years;
using static SensorProfile.Reporting.Tests.Answers.Darks.DarkLibraryDocumentTests;

namespace SensorProfile.Reporting.Tests.Content.Years;

/// <summary>The pages of a check say what its answer says, a line for every master.</summary>
public sealed class DarkCheckContentTests
{
    private static readonly DarkLibraryAnswer answer = Answer(
        Master(CheckVerdict.CannotTell, new(MasterGround.Unreadable) { Problem = "the file ends early" }, "torn.fits"),
        Master(CheckVerdict.Keep, new(MasterGround.Residual)) with
        {
            Parts =
            [
                new(ResidualKind.Typical, new Measurement(0.2, 0.01, "e-", 1, "test"), 1, CheckVerdict.Keep),
                new(ResidualKind.Hot, new Measurement(0.0001, 0.00001, "1", 1, "test"), 0.001, CheckVerdict.Keep),
            ],
        }
    );

    private static readonly ReportDocument report = DarkCheckContent.Build(answer, DateTimeOffset.UnixEpoch);

    [Fact]
    public void TheFirstPageBeginsWithTheAnswer()
    {
        AnswerBlock first = Assert.IsType<AnswerBlock>(report.Sections[0].Blocks[0]);
        Assert.Equal(Verdict.CannotTell, first.Verdict);
        Assert.Equal(DarkLibraryDocument.Compose(answer).Sentence, first.Sentence);
    }

    [Fact]
    public void EveryMasterHasItsLineAndItsVerdict()
    {
        TableBlock masters = report.Sections[0].Blocks.OfType<TableBlock>().First();
        Assert.Equal([("torn.fits", "cannot tell"), ("master.fits", "keep")], masters.Rows.Select(r => (r[0], r[1])));
    }

    /// <summary>What is left is told of the masters that were measured, one table each.</summary>
    [Fact]
    public void TheKindsAreThoseThatWereMeasured() =>
        Assert.Equal(
            answer.Masters.Where(m => m.Parts.Count > 0).Select(m => m.Parts.Count),
            report.Sections.Skip(1).SelectMany(s => s.Blocks.OfType<TableBlock>()).Select(t => t.Rows.Count)
        );
}
