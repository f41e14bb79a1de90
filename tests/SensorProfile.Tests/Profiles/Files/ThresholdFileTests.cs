using System.Text;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Tests.Profiles.Files;

public sealed class ThresholdFileTests
{
    [Fact]
    public void WhatIsNamedIsTakenAndTheRestStays()
    {
        var expected = new DefectThresholds { HotRate = 0.5, ColdShare = 0.3 };
        Assert.Equal((expected, null), Parse("""{ "hotRate": 0.5, "coldShare": 0.3 }"""));
        Assert.Equal((new DefectThresholds(), null), Parse("\uFEFF{}"));
    }

    [Fact]
    public void AProfileWhoseThresholdsMakeNoSenseLendsNone()
    {
        var profile = new CameraProfile
        {
            Modes =
            [
                new ModeProfile
                {
                    FixedPattern = new FixedPatternProfile { Thresholds = new DefectThresholds { Significance = -1 } },
                },
            ],
        };
        Assert.Equal(
            "profile.json: the thresholds of this profile make no sense: significance must be above 0. "
                + "Write for example { \"hotRate\": 0.5, \"warmRate\": 0.1 }, rates in e-/px/s.",
            Assert
                .Throws<ProfileFormatException>(() => ThresholdFile.Parse(ProfileFile.ToUtf8(profile), "profile.json"))
                .Message
        );
    }

    [Fact]
    public void AProfileLendsItsThresholdsAndTheirTemperature()
    {
        var used = new DefectThresholds
        {
            HotRate = 0.2,
            WarmRate = 0.04,
            Significance = 5,
        };
        var profile = new CameraProfile
        {
            Modes =
            [
                new ModeProfile(),
                new ModeProfile
                {
                    FixedPattern = new FixedPatternProfile { Thresholds = used, ReferenceTemperature = -10 },
                },
            ],
        };
        Assert.Equal((used, -10.0), ThresholdFile.Parse(ProfileFile.ToUtf8(profile), "profile.json"));

        CameraProfile two = profile with
        {
            Modes =
            [
                .. profile.Modes,
                new ModeProfile
                {
                    FixedPattern = new FixedPatternProfile
                    {
                        Thresholds = used with { HotRate = 0.3 },
                        ReferenceTemperature = -10,
                    },
                },
            ],
        };
        Assert.Contains(
            "several settings",
            Assert
                .Throws<ProfileFormatException>(() => ThresholdFile.Parse(ProfileFile.ToUtf8(two), "profile.json"))
                .Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "holds no thresholds",
            Assert
                .Throws<ProfileFormatException>(() =>
                    ThresholdFile.Parse(ProfileFile.ToUtf8(new CameraProfile()), "profile.json")
                )
                .Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(
        """{ "hotrate": 0.5 }""",
        "there is no threshold “hotrate”. The names are hotRate, warmRate, significance,"
    )]
    [InlineData("""{ "hotRate": "high" }""", "$.hotRate:")]
    [InlineData("""{ "hotRate": -1 }""", "hotRate and warmRate must be positive")]
    [InlineData("""{ "hotRate": 0.1, "warmRate": 0.2 }""", "warmRate lies above hotRate.")]
    [InlineData("""{ "significance": 0 }""", "significance must be above 0.")]
    [InlineData("""{ "noiseFactor": 1 }""", "noiseFactor must be above 1.")]
    [InlineData("""{ "flickerFalseAlarms": 0 }""", "flickerFalseAlarms must lie between")]
    [InlineData("""{ "coldShare": 1 }""", "coldShare must lie between")]
    [InlineData("""{ "noResponse": 0.6 }""", "noResponse must not lie above deadResponse")]
    [InlineData("[0.5]", "not a set of names and numbers. Write for example { \"hotRate\": 0.5")]
    [InlineData("hot", "this is not JSON")]
    public void WhatMakesNoSenseIsRefusedWithItsPlace(string json, string said) =>
        Assert.Contains(
            said,
            Assert.Throws<ProfileFormatException>(() => Parse(json)).Message,
            StringComparison.Ordinal
        );

    private static (DefectThresholds Thresholds, double? ReferenceTemperature) Parse(string json) =>
        ThresholdFile.Parse(Encoding.UTF8.GetBytes(json), "limits.json");
}
