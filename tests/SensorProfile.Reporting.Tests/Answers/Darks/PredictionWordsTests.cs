using SensorProfile.Profiles.Darks;
using SensorProfile.Reporting.Answers.Darks;

namespace SensorProfile.Reporting.Tests.Answers.Darks;

/// <summary>Whether a dark can be computed, in one sentence.</summary>
public sealed class PredictionWordsTests
{
    private static readonly PredictionTest passed = new() { Passed = true, Sets = 3 };
    private static readonly PredictionTest failed = new() { Sets = 3, FailedBy = "hot" };

    [Fact]
    public void WithoutATrialNothingIsPromised() =>
        Assert.Contains(
            "too few sets of darks",
            PredictionWords.Verdict(new DarkPredictionProfile()),
            StringComparison.Ordinal
        );

    /// <summary>Only a trial across temperatures allows another temperature.</summary>
    [Theory]
    [InlineData(true, "at any temperature and exposure")]
    [InlineData(false, "of another exposure at a measured temperature")]
    public void TheSentenceReachesAsFarAsTheTrials(bool acrossTemperatures, string reach) =>
        Assert.Contains(
            reach,
            PredictionWords.Verdict(
                new DarkPredictionProfile
                {
                    Passed = true,
                    Coverage = 0.96,
                    ByExposure = passed,
                    ByTemperature = acrossTemperatures ? passed : null,
                }
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void WhatFailedIsNamedAndTheWayOutToo()
    {
        string said = PredictionWords.Verdict(
            new DarkPredictionProfile { ByExposure = failed, ByTemperature = passed }
        );
        Assert.Contains("hot pixels", said, StringComparison.Ordinal);
        Assert.EndsWith("Take real darks.", said, StringComparison.Ordinal);
    }
}
