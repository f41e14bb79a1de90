using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Answers.Flats;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;
using SensorProfile.Reporting.Content.Sensor;

namespace SensorProfile.Reporting.Tests.Content.Nights;

public class InShortTests
{
    [Fact] // page 1 says what to do, word for word what the commands say, and the decisions' pages come next
    public void TheReportOpensWithTheSentencesOfTheCommands()
    {
        CameraProfile profile = TarnProfile.Build();
        NightAnswers answers = NightAnswers.Ask(profile, profile.Modes[0]);
        ReportDocument report = ReportContent.Build(profile, null, [answers]);
        IReadOnlyList<string> said = Assert.Single(report.Sections[0].Blocks.OfType<ListBlock>()).Items;
        string[] sentences =
        [
            SetpointDocument.Compose(answers.Setpoints[0]).Sentence,
            ExposureDocument.Compose(answers.Exposures[0]).Sentence,
            DarkCountWords.Phrase(answers.DitheredCounts[0]).Sentence,
            FlatPlanDocument.Compose(answers.DitheredFlats[0]).Sentence,
            ToleranceDocument.Compose(answers.Dithered[0]).Sentence,
            ToleranceDocument.Compose(answers.Still[0]).Sentence,
        ];
        Assert.Equal(sentences.Length, said.Count);
        Assert.All(said.Zip(sentences), pair =>
            Assert.EndsWith(": " + pair.Second, pair.First, StringComparison.Ordinal)
        );
        Assert.Equal("What this means for your nights", report.Sections[1].Title);
    }

    [Fact]
    public void WhatCannotBeAnsweredIsLeftOut()
    {
        CameraProfile profile = TarnProfile.Build();
        NightAnswers none = NightAnswers.Ask(
            profile,
            profile.Modes[0] with
            {
                DarkCurrent = null,
                FixedPattern = null,
                ReadNoise = null,
            }
        );
        Assert.Empty(InShort.Compose(none with { Exposures = [] }).OfType<ListBlock>());
    }
}
