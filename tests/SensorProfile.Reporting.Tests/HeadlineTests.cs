using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Session;

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
