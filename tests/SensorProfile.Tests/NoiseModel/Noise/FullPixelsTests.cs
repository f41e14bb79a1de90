using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.FlatPlan;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Tests.NoiseModel.Noise;

public class FullPixelsTests
{
    private static readonly Tarn camera = new()
    {
        Rate = 0.02,
        HotFrom = 0.1,
        HotPower = 0.7,
        HotTo = 3,
        HotShare = 0.01,
        Well = 15000,
    };

    // share above r: 0.01·(r/0.1)^−0.7, with r the rate at −10 °C that fills 15 000 e- beside 0.5 e-/px/s of sky
    [Theory]
    [InlineData(25, 240)]
    [InlineData(30, 240)]
    [InlineData(30, 120)]
    public void TheirShareIsThatOfThePixelsThatFill(double celsius, double exposure)
    {
        double rate = (15000 / exposure - 0.5) / Math.Pow(2, (celsius + 10) / 7);
        double share = 0.01 * Math.Pow(rate / 0.1, -0.7);
        // classes of 6 % of the tail each
        Assert.InRange(
            SensorReader.Of(camera.Profile(), camera.Mode()).Best.ShareFull(0.5, exposure, celsius) / share,
            0.95,
            1.05
        );
    }

    [Fact]
    public void AColdCameraHasNone() =>
        Assert.Equal(0, SensorReader.Of(camera.Profile(), camera.Mode()).Best.ShareFull(0.5, 300, -10));

    [Fact]
    public void AProfileWithoutAFullWellHasNone()
    {
        var mode = camera.Mode() with { FullWell = null };
        Assert.Equal(0, SensorReader.Of(camera.Profile(), mode).Best.ShareFull(0.5, 300, 60));
    }

    [Fact] // 100 e-/px/s for 300 s is twice the full well: nothing is left to dither or to reject
    public void ALightThatTheSkyFillsIsToBeShorter()
    {
        var sky = SkyRate.Given(100);
        Action[] questions =
        [
            () =>
                SetpointAdvice.Find(
                    camera.Profile(),
                    camera.Mode(),
                    new SetpointQuestion { ExposureSeconds = 300, Sky = sky }
                ),
            () =>
                DarkTolerance.Find(
                    camera.Profile(),
                    camera.Mode(),
                    new ToleranceQuestion { ExposureSeconds = 300, Sky = sky }
                ),
            () =>
                DarkCountAdvice.Find(
                    camera.Profile(),
                    camera.Mode(),
                    new DarkCountQuestion
                    {
                        ExposureSeconds = 300,
                        TemperatureCelsius = -10,
                        Sky = sky,
                    }
                ),
            () =>
                FlatPlanAdvice.Find(
                    camera.Profile(),
                    camera.Mode(),
                    new FlatPlanQuestion { ExposureSeconds = 300, Sky = sky }
                ),
            () => DarksPlan.Find(camera.Profile(), new PlanQuestion { Lights = [PlannedLights.Usual(-10)], Sky = sky }),
        ];
        foreach (Action question in questions)
        {
            var refused = Assert.Throws<DecisionRefusedException>(question);
            Assert.Equal("well-fills", refused.Code);
            Assert.Equal(
                "The sky alone fills the full well of 15000 e⁻ within 150 s, so lights of 300 s are white: no temperature, "
                    + "dark or flat can rescue them. Expose shorter.",
                refused.Message
            );
        }
    }

    [Fact] // 9.9 e-/px/s of sky and 0.02·2^(24/7) = 0.22 e-/px/s of dark current: 15 180 e- in 1500 s
    public void SkyAndDarkCurrentTogetherFillLights()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() =>
            DarkTolerance.Find(
                camera.Profile(),
                camera.Mode(),
                new ToleranceQuestion
                {
                    ExposureSeconds = 1500,
                    TemperatureCelsius = 14,
                    Sky = SkyRate.Given(9.9),
                }
            )
        );
        Assert.StartsWith(
            "At 14 °C sky and dark current fill the full well of 15000 e⁻ within",
            refused.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AskedUnderNamedSkiesOnlyThoseAreShownWhoseLightsAreNotWhite()
    {
        // the suburban broad-band sky of 4.5 e-/px/s fills 1000 e- within 300 s; the other two do not
        var small = camera with { Well = 1000 };
        SetpointAnswer answer = SetpointAdvice.Find(
            small.Profile(),
            small.Mode(),
            new SetpointQuestion { ExposureSeconds = 300 }
        );
        string[] skies = [.. new[] { answer }.Concat(answer.OtherSkies).Select(a => a.Sky.Name)];
        Assert.Equal(["dark sky, broad band", "suburban sky, narrow band"], skies);
    }

    [Fact]
    public void DarksOfWhiteLightsAreNotJudged()
    {
        MatchAnswer answer = DarkMatching.Find(
            camera.Profile(),
            new MatchQuestion
            {
                Lights = [Sets.Of(FrameKind.Light, 20, 300, -10)],
                Darks = [Sets.Of(FrameKind.Dark, 20, 300, -10)],
                Stack = new StackDescription { Sky = SkyRate.Given(100) },
            }
        );
        LightMatch match = Assert.Single(answer.Matches);
        Assert.Equal((MatchVerdict.CannotTell, MatchGround.White), (match.Verdict, match.Reason.Ground));
        Assert.Empty(match.Settling);
    }

    [Fact]
    public void AnUncooledCameraIsToldHowMany()
    {
        SetpointAnswer answer = SetpointAdvice.Find(
            camera.Profile(),
            camera.Mode(),
            new SetpointQuestion
            {
                ExposureSeconds = 1200,
                Sky = SkyRate.Given(0.5),
                Cooled = false,
                Ambient = [new("July", 14)],
            }
        );
        Finding finding = Assert.Single(answer.Findings, f => f.Code == "pixels-full");
        Assert.StartsWith("At 14 °C about 0.19 % of the pixels (", finding.Message, StringComparison.Ordinal);
        Assert.EndsWith(
            "are full after 1200 s: their light is lost, and no dark brings it back. Dither and reject outliers, "
                + "or expose shorter.",
            finding.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(Severity.Warning, finding.Severity);
        // (15 000/1200 − 0.5)/2^(24/7) = 1.114 e-/px/s: 0.01·11.14^−0.7 = 0.185 %
    }

    [Fact]
    public void DarkMatchingTellsThemApart()
    {
        // A pixel that is full in light and dark leaves −sky·t of itself: the sky's 600 e- stand far above the noise of
        // the stack. No dark brings it back, so that of the same temperature fits; it was told to take just such a dark.
        MatchAnswer answer = DarkMatching.Find(
            camera.Profile(),
            new MatchQuestion
            {
                Lights = [Sets.Of(FrameKind.Light, 20, 1200, 14)],
                Darks = [Sets.Of(FrameKind.Dark, 400, 1200, 14)],
                Stack = new StackDescription { Sky = SkyRate.Given(0.5) },
            }
        );
        Assert.InRange(answer.Matches[0].FullPixels!.Value, 0.17, 0.2);
        Assert.Equal(MatchVerdict.Fits, answer.Worst);
        Assert.Equal(0, answer.Matches[0].Reason.Limit!.Share, 1e-9);
    }

    [Fact]
    public void TheToleranceSaysSoToo()
    {
        ToleranceAnswer answer = DarkTolerance.Find(
            camera.Profile(),
            camera.Mode(),
            new ToleranceQuestion
            {
                ExposureSeconds = 1200,
                TemperatureCelsius = 14,
                Lights = 20,
                Sky = SkyRate.Given(0.5),
            }
        );
        Assert.Contains(answer.Findings, f => f.Code == "pixels-full");
    }
}
