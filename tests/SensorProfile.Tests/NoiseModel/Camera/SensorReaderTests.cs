using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Tests.NoiseModel.Camera;

/// <summary>What a profile must hold before any decision is made from it, and what is said where it does not.</summary>
public class SensorReaderTests
{
    private readonly Tarn camera = new();

    [Fact]
    public void AProfileWithoutReadNoiseIsRefused()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() => Read(camera.Mode() with { ReadNoise = null }));
        Assert.Equal(
            "The profile has no read noise in electrons: add bias frames and flat pairs and characterise again.",
            refused.Message
        );
        Assert.Equal(RefusalKind.CannotTell, refused.Kind);
    }

    [Fact] // bias frames are there: they need not be taken again
    public void AProfileWithoutGainAsksForFlatsAlone() =>
        Assert.Equal(
            "The profile has no read noise in electrons: add flat pairs and characterise again.",
            Assert
                .Throws<DecisionRefusedException>(() =>
                    Read(camera.Mode() with { ReadNoise = null, ReadNoiseAdu = camera.Of(1.9, "ADU") })
                )
                .Message
        );

    [Fact]
    public void AProfileWithoutDarkCurrentIsRefused()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() => Read(camera.Mode() with { DarkCurrent = null }));
        Assert.Equal(
            "The profile has no dark current against temperature: add darks of three exposures at three "
                + "temperatures and characterise again.",
            refused.Message
        );
    }

    [Fact]
    public void AColourCameraWhoseChannelsDifferIsReadAsTheirMean()
    {
        ChannelProfile[] channels =
        [
            .. new[] { 1.4, 1.5, 1.5, 1.6 }.Select(
                (r, i) =>
                    new ChannelProfile
                    {
                        Name = $"C{i}",
                        ReadNoise = camera.Of(r, "e-"),
                        Gain = camera.Of(0.8, "e-/ADU"),
                    }
            ),
        ];
        SensorReader mean = Read(camera.Mode() with { ReadNoise = null, Gain = null, Channels = channels });
        SensorReader whole = Read(camera.Mode());
        Assert.Equal(whole.Best.ReadVariance, mean.Best.ReadVariance, 1e-9);
        Assert.Equal(whole.Best.QuantisationVariance, mean.Best.QuantisationVariance, 1e-9);
        Assert.Contains(mean.Notes, f => f.Code == "channels-averaged");
    }

    private SensorReader Read(ModeProfile mode) => SensorReader.Of(camera.Profile(), mode);
}
