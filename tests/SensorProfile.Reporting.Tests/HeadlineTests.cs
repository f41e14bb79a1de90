using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Reporting.Tests;

public class HeadlineTests
{
    private static readonly ModeProfile _whole = new()
    {
        Settings = new ModeSettings { Gain = 100 },
        ReadNoise = new Measurement(1.52, 0.011, "e-", 20, ""),
        Gain = new Measurement(0.8, 0.0012, "e-/ADU", 14, ""),
        DarkCurrent = new DarkCurrentProfile
        {
            RateAtReference = new Measurement(0.0061, 0.00012, "e-/px/s", 7, ""),
            ReferenceTemperature = -10,
            DoublingTemperature = new Measurement(6.1, 0.11, "°C", 7, ""),
        },
    };

    [Fact]
    public void SaysTheNumbersOneActsOn() =>
        Assert.Equal(
            "Read noise 1.520 ± 0.011 e⁻, gain 0.8000 ± 0.0012 e⁻/ADU, dark current 0.00610 ± 0.00012 e⁻/px/s at "
                + "−10 °C, doubling every 6.10 ± 0.11 °C.",
            Headline.Sentence(new CameraProfile { Modes = [_whole] })
        );

    [Fact]
    public void SaysWhereTheNumbersHoldWhenThereAreSeveralSettings() =>
        Assert.Equal(
            "At gain 100: read noise 1.520 ± 0.011 e⁻. 2 other settings were measured too.",
            Headline.Sentence(
                new CameraProfile { Modes = [_whole with { Gain = null, DarkCurrent = null }, _whole, _whole] }
            )
        );

    [Fact]
    public void SaysReadNoiseInAduWhenTheGainIsUnknown() =>
        Assert.Equal(
            "Read noise 1.90 ± 0.10 ADU (the gain is unknown).",
            Headline.Sentence(new ModeProfile { ReadNoiseAdu = new Measurement(1.9, 0.1, "ADU", 20, "") })
        );

    // Seen: 8-bit frames, refused, and "31 hot pixels above 1·10⁻⁶ ADU/px/s." as the answer.
    [Fact]
    public void FramesThatAreNotRawGiveNoNumber()
    {
        var profile = new CameraProfile
        {
            Modes =
            [
                new ModeProfile
                {
                    ReadNoiseAdu = new Measurement(65.5, 0.1, "ADU", 20, ""),
                    DarkCurrentAdu = _whole.DarkCurrent,
                },
            ],
            Findings = [new Finding("response-not-raw", Severity.Refusal, "These flats do not answer to light.")],
        };
        Assert.Equal(
            "These frames are not raw, so nothing about this camera can be measured from them: take raw frames, 16 bits, without "
                + "any correction in camera or capture program.",
            Headline.Sentence(profile)
        );
        Assert.Equal("These flats do not answer to light.", ProfileDocument.Compose("report", profile, ".").Reason);
        Assert.Null(Headline.NotRaw(profile with { Modes = [.. profile.Modes, _whole] }));
    }

    [Fact] // it stands in the sentence in ADU
    public void WhatIsThereInAduIsMissingInElectronsOnly() =>
        Assert.Equal(
            ["read noise in electrons", "gain", "dark current in electrons"],
            Headline.Missing(
                new ModeProfile
                {
                    ReadNoiseAdu = new Measurement(1.9, 0.1, "ADU", 20, ""),
                    DarkCurrentAdu = _whole.DarkCurrent,
                }
            )
        );

    // With 0.006 of 0.0076 e-/px/s from a light leak the whole doubles every 23 °C, the sensor every 6.
    [Fact]
    public void WarnsOfALightLeakBeforeTheDoubling()
    {
        ModelParameter Parameter(string name, double value, string unit) => new(name, value, value / 20, unit, 7, "");
        string sentence = Headline.Sentence(
            _whole with
            {
                DarkCurrent = _whole.DarkCurrent! with
                {
                    DoublingTemperature = new Measurement(23.75, 0.9, "°C", 7, ""),
                    Selected = "doubling+floor",
                    Models =
                    [
                        new DarkCurrentModel
                        {
                            Name = "doubling+floor",
                            Parameters =
                            [
                                Parameter("rateAtReference", 0.0016, "e-/px/s"),
                                Parameter("doublingTemperature", 6, "°C"),
                                Parameter("floor", 0.006, "e-/px/s"),
                            ],
                            Covariance =
                            [
                                [6.4e-9, 0, 0],
                                [0, 0.09, 0],
                                [0, 0, 9e-8],
                            ],
                        },
                    ],
                },
            }
        );
        Assert.StartsWith(
            "Light leaks in, or the sensor glows: 79 % of the dark current at −10 °C does not fall with temperature. ",
            sentence,
            StringComparison.Ordinal
        );
        Assert.EndsWith("doubling every 6.00 ± 0.30 °C without it.", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("23.7", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void SaysTheRateOfANightWithoutAThermometer() =>
        Assert.Equal(
            "Dark current 0.310 ± 0.010 e⁻/px/s in a night of unknown sensor temperature.",
            Headline
                .Sentence(
                    new ModeProfile
                    {
                        ReadNoiseAdu = null,
                        DarkNights = [new DarkNight { TypicalRate = new Measurement(0.31, 0.01, "e-/px/s", 7, "") }],
                    }
                )
                .Replace(" (the gain is unknown)", "", StringComparison.Ordinal)
        );

    [Fact] // the cure first: both laboratory cameras have headers without a kind
    public void FramesOfUnknownKindAreToBeNamed() =>
        Assert.StartsWith(
            "Say what these frames are",
            Headline.Sentence(
                new CameraProfile { Findings = [new Finding("kind-missing", Severity.Warning, "No frame kind.")] }
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void SaysSoWhenNothingWasMeasured()
    {
        Assert.Equal("Nothing could be measured from these frames.", Headline.Sentence(new CameraProfile()));
        Assert.Equal(
            "None of read noise, gain and dark current could be measured.",
            Headline.Sentence(new ModeProfile())
        );
        Assert.Equal(
            ["read noise", "gain", "dark current", "doubling temperature"],
            Headline.Missing(new ModeProfile())
        );
        Assert.Empty(Headline.Missing(_whole));
    }
}
