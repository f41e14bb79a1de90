using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Raw;

namespace SensorProfile.Tests.Decisions.DarkMatch;

public class DarkMatchingTests
{
    private static readonly FrameSet lights = Sets.Of(FrameKind.Light, 20, 300, -10);

    [Fact]
    public void DarksOfTheSameTemperatureAndExposureFit()
    {
        MatchAnswer answer = Match(lights, Sets.Of(FrameKind.Dark, 60, 300, -10));
        Assert.Equal(MatchVerdict.Fits, answer.Worst);
        // 20 lights, 60 darks of the same temperature: √(1 + N_d²·20/(N²·60)) − 1
        double dark = 1.8 + 2.25 + 0.64 / 12,
            light = dark + 150;
        Assert.Equal(100 * (Math.Sqrt(1 + dark / light * 20 / 60) - 1), answer.Matches[0].Loss!.Value, 1e-9);
    }

    [Fact]
    public void TheVerdictTurnsAtTheToleranceOfTheProfile()
    {
        double tolerance = Tolerance();
        Assert.Equal(MatchVerdict.Fits, Match(lights, Sets.Of(FrameKind.Dark, 60, 300, -10 + tolerance - 0.05)).Worst);
        MatchAnswer beyond = Match(lights, Sets.Of(FrameKind.Dark, 60, 300, -10 + tolerance + 0.05));
        Assert.Equal(MatchVerdict.Usable, beyond.Worst);
        Assert.Equal(BindingCause.HotPixels, beyond.Matches[0].BindingCause);
        Assert.True(beyond.Matches[0].Reason.Limit is { Share: > 1, DarksNeeded: > 0 });
    }

    private static double Tolerance() =>
        DarkTolerance
            .Find(
                new Tarn().Profile(),
                new Tarn().Mode(),
                new ToleranceQuestion
                {
                    ExposureSeconds = 300,
                    TemperatureCelsius = -10,
                    Lights = 20,
                    Sky = SkyRate.Given(0.5),
                }
            )
            .Quantities["toleranceWarmer"]!.Value;

    // darks beyond the tolerance of a stack that stays; dithered and clipped it bears them
    [Fact]
    public void TheSameDarksAreJudgedDitheredBesideUndithered()
    {
        double tolerance = Tolerance();
        FrameSet warm = Sets.Of(FrameKind.Dark, 60, 300, -10 + tolerance + 0.3);
        MatchQuestion question = new()
        {
            Lights = [lights],
            Darks = [warm],
            Stack = new StackDescription { Sky = SkyRate.Given(0.5) },
        };
        MatchAnswer still = DarkMatching.Find(new Tarn().Profile(), question),
            dithered = DarkMatching.Find(
                new Tarn().Profile(),
                question with
                {
                    Stack = question.Stack with { DitherPositions = 20, Rejection = Rejection.SigmaClip },
                }
            );
        Assert.Equal(dithered.Worst, still.Dithered!.Worst);
        Assert.Equal(dithered.Matches[0].Loss, still.Dithered.Matches[0].Loss);
        Assert.True(still.Dithered.Worst < still.Worst, $"{still.Worst} {still.Dithered.Worst}");
        Assert.Null(dithered.Dithered);
    }

    // lights and darks of SET-TEMP −10 whose readings scatter are of one temperature; a tolerance of 0.2 °C is not
    // used up by that
    [Fact]
    public void LightsAndDarksOfOneSetPointAgreeWhateverTheirReadingsScatter()
    {
        FrameSet At(FrameKind kind, int frames, double read) =>
            Sets.Of(kind, frames, 300, read, drift: 0.4) is var set
                ? set with
                {
                    Frames = [.. set.Frames.Select(f => f with { SetTemperatureCelsius = -10 })],
                }
                : null!;
        MatchAnswer answer = DarkMatching.Find(
            new Tarn().Profile(),
            Question(
                [At(FrameKind.Light, 10, -10.5), At(FrameKind.Light, 10, -9.6)],
                [At(FrameKind.Dark, 30, -10.4), At(FrameKind.Dark, 30, -9.5)]
            )
        );
        LightMatch match = Assert.Single(answer.Matches);
        Assert.Equal((MatchVerdict.Fits, -10.0, 0.0), (match.Verdict, match.SetPoint, match.TemperatureDifference));
        Assert.Equal((60, -10.0), (match.Darks!.Frames, match.Darks.Temperature));
        Assert.Equal(0, match.Night!.Beyond);
    }

    [Fact]
    public void FarDarksDoNotFit()
    {
        MatchAnswer answer = Match(lights, Sets.Of(FrameKind.Dark, 60, 300, 5));
        Assert.Equal(MatchVerdict.DoesNotFit, answer.Worst);
    }

    [Fact]
    public void AnotherExposureDoesNotFitUnlessScaled()
    {
        FrameSet shorter = Sets.Of(FrameKind.Light, 20, 60, -10),
            darks = Sets.Of(FrameKind.Dark, 60, 300, -10);
        Assert.NotEqual(MatchVerdict.Fits, Match(shorter, darks).Worst);
        MatchAnswer scaled = DarkMatching.Find(
            new Tarn().Profile(),
            Question([shorter], [darks]) with
            {
                BiasFrames = 50,
            }
        );
        Assert.Equal(MatchVerdict.Fits, scaled.Worst);
        Assert.True(scaled.Matches[0].Scaled);
    }

    [Theory]
    [InlineData(0, 3000, "Tarn-9M")]
    [InlineData(100, 1500, "Tarn-9M")]
    [InlineData(100, 3000, "Fell-24C")]
    public void OtherSettingsSizeOrCameraDoNotFit(double gain, int width, string camera)
    {
        MatchAnswer answer = Match(
            lights,
            Sets.Of(FrameKind.Dark, 60, 300, -10, gain: gain, width: width, camera: camera)
        );
        Assert.Equal(MatchVerdict.DoesNotFit, answer.Worst);
        Assert.Equal(MatchGround.NoneAlike, answer.Matches[0].Reason.Ground);
    }

    // raw files say where on the sensor their pixels lie: a crop of the same size elsewhere has other hot pixels
    [Fact]
    public void DarksOfAnotherPartOfTheSensorDoNotFit()
    {
        static FrameSet From(FrameSet set, int top) =>
            set with
            {
                Frames =
                [
                    .. set.Frames.Select(f =>
                        f with
                        {
                            Sensor = new SensorArea(new RawArea(top, 0, top + 3000, 3000), [], false),
                        }
                    ),
                ],
            };
        FrameSet darks = Sets.Of(FrameKind.Dark, 60, 300, -10);
        Assert.Equal(MatchVerdict.Fits, Match(From(lights, 20), From(darks, 20)).Worst);
        MatchAnswer answer = Match(From(lights, 20), From(darks, 500));
        Assert.Equal(MatchVerdict.DoesNotFit, answer.Worst);
        Assert.Equal(MatchGround.NoneAlike, answer.Matches[0].Reason.Ground);
    }

    [Fact]
    public void AnUnknownTemperatureCannotBeTold()
    {
        MatchAnswer answer = Match(lights, Sets.Of(FrameKind.Dark, 60, 300, null));
        Assert.Equal(MatchVerdict.CannotTell, answer.Worst);
        // one dark against one light (1.8 + 2.25 + 0.053)/154.1, 20 lights, 5 %: 6 darks of 302 s with read-out
        Assert.Equal(UnknownOfPair.DarkTemperature, answer.Matches[0].Reason.Unknown);
        Assert.Equal(new SettlingFrames(FrameKind.Dark, 300, -10, 6, 6 * 302), Assert.Single(answer.Settling));
    }

    [Fact]
    public void WithoutAProfileOnlyEqualDarksFit()
    {
        Assert.Equal(
            MatchVerdict.Fits,
            DarkMatching.Find(null, Question([lights], [Sets.Of(FrameKind.Dark, 60, 300, -10.3)])).Worst
        );
        Assert.Equal(
            MatchVerdict.CannotTell,
            DarkMatching.Find(null, Question([lights], [Sets.Of(FrameKind.Dark, 60, 300, -12)])).Worst
        );
    }

    [Fact]
    public void ADriftingNightIsJudgedByItsMeanDarkCurrent()
    {
        FrameSet drifting = Sets.Of(FrameKind.Light, 21, 300, -10, drift: 6);
        MatchAnswer answer = Match(drifting, Sets.Of(FrameKind.Dark, 60, 300, -10));
        Assert.Equal(6, answer.Matches[0].Drift!.Value, 1e-9);
        Assert.Null(answer.Matches[0].SetPoint);
        // temperatures −13 … −7 in steps of 0.3: variance 3.3 °C²; the mean dark current is that of −10 + 3.3·ln 2/12
        double variance = Enumerable.Range(0, 21).Select(i => Math.Pow(0.3 * (i - 10), 2)).Average();
        Assert.Equal(-variance * Math.Log(2) / 12, answer.Matches[0].TemperatureDifference!.Value, 1e-9);
        double exact = 6 * Math.Log2(Enumerable.Range(0, 21).Average(i => Math.Pow(2, 0.3 * (i - 10) / 6)));
        Assert.Equal(exact, -answer.Matches[0].TemperatureDifference!.Value, 0.002);
    }

    [Fact]
    public void TheBestOfSeveralDarkSetsIsTaken()
    {
        MatchAnswer answer = DarkMatching.Find(
            new Tarn().Profile(),
            Question(
                [lights],
                [
                    Sets.Of(FrameKind.Dark, 60, 300, 0),
                    Sets.Of(FrameKind.Dark, 60, 300, -10),
                    Sets.Of(FrameKind.Dark, 60, 60, -10),
                ]
            )
        );
        MatchedSet best = answer.Matches[0].Darks!;
        Assert.Equal((60, 300.0, -10.0), (best.Frames, best.Exposure, best.Temperature));
    }

    [Fact]
    public void TooFewDarksAreNamedAsTheCause()
    {
        MatchAnswer answer = Match(Sets.Of(FrameKind.Light, 100, 60, -10), Sets.Of(FrameKind.Dark, 20, 60, -10));
        Assert.Equal(MatchVerdict.Usable, answer.Worst);
        Assert.Equal(BindingCause.NumberOfDarks, answer.Matches[0].BindingCause);
        Assert.Equal(100, answer.Matches[0].Reason.Limit!.StackLights);
    }

    [Fact]
    public void NoLightsIsRefused()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() => DarkMatching.Find(null, Question([], [lights])));
        Assert.Equal(
            "No light frames were found: give the folder of the lights, or name the kind of its "
                + "frames in the capture table.",
            refused.Message
        );
    }

    private static MatchAnswer Match(FrameSet light, FrameSet dark) =>
        DarkMatching.Find(new Tarn().Profile(), Question([light], [dark]));

    private static MatchQuestion Question(FrameSet[] light, FrameSet[] dark) =>
        new()
        {
            Lights = light,
            Darks = dark,
            Stack = new StackDescription { Sky = SkyRate.Given(0.5) },
        };
}
