using SensorProfile.Frames;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Reporting.Tests.Answers;

/// <summary>A survey says in its first sentence what to do about the frames.</summary>
public sealed class SurveyDocumentTests
{
    /// <summary>Nothing but one pair of bias frames: everything else is named, in the order of measuring.</summary>
    [Fact]
    public void WhatIsMissingIsNamed()
    {
        AnswerDocument said = Of(Set(FrameKind.Bias, 0, 2));
        Assert.Equal(
            "Shoot more before you rely on every number: pixel noise map, gain, linearity, dark current, temperature law "
                + "still lack frames.",
            said.Sentence
        );
        var fields = (SurveyFields)said.Fields!;
        Assert.Equal(
            ["pixel-noise-map", "gain", "linearity", "dark-current", "temperature-law"],
            fields.Lacks.Select(l => l.Measurement)
        );
        Assert.Equal("bias", Assert.Single(fields.Sets).Kind);
    }

    [Fact]
    public void FramesOfUnknownKindComeFirst() =>
        Assert.StartsWith(
            "Say what these frames are",
            Of(Set(FrameKind.Unknown, 300, 3), Set(FrameKind.Bias, 0, 2)).Sentence,
            StringComparison.Ordinal
        );

    private static AnswerDocument Of(params FrameSet[] sets)
    {
        var inventory = new Inventory
        {
            Frames = [.. sets.SelectMany(s => s.Frames)],
            Sets = sets,
            Rejected = [],
            Findings = [],
        };
        return SurveyDocument.Compose(inventory, "");
    }

    private static FrameSet Set(FrameKind kind, double exposure, int frames) =>
        new()
        {
            Kind = kind,
            Settings = new ModeSettings(),
            Width = 4,
            Height = 2,
            ExposureSeconds = exposure,
            TemperatureCelsius = -10,
            Frames =
            [
                .. Enumerable
                    .Range(0, frames)
                    .Select(i => new Frame
                    {
                        Path = $"/{i}",
                        Name = $"{i}",
                        Kind = kind,
                    }),
            ],
        };
}
