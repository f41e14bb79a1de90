using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Tests.Decisions.Setpoint;

public class SetpointTests
{
    private static readonly Tarn hot = new()
    {
        Rate = 0.06,
        HotFrom = 0.3,
        Gain = 1e-6,
    }; // no quantisation

    [Theory] // I_max = ((1 + p)² − 1)·(S·t + R²)/t at S 0.5, t 300, R 1.5
    [InlineData(0.01, 0.01020075)]
    [InlineData(0.05, 0.05201875)]
    [InlineData(0.10, 0.106575)]
    public void ThermalAllowance(double loss, double expected) =>
        Assert.Equal(expected, SetpointAdvice.Allowance(loss, 0.5, 300, 2.25), 1e-9);

    [Theory] // −10 + 6·log₂(I_max/0.06), I_max as above
    [InlineData(0.01, -25.3377236)]
    [InlineData(0.05, -11.2355846)]
    [InlineData(0.10, -5.02699210)]
    public void WarmestSetpoint(double loss, double expected)
    {
        SetpointAnswer answer = Ask(hot, loss: loss);
        Assert.Equal(expected, answer.Quantities["setpointTypical"]!.Value, 1e-6);
    }

    [Theory] // every law: at the set point the law's rate is the allowance, and a degree warmer exceeds it
    [InlineData("arrhenius", 0.06, 0.6)]
    [InlineData("arrhenius+floor", 0.06, 0.6, 0.004)]
    [InlineData("doubling+floor", 0.06, 6.0, 0.004)]
    [InlineData("two-process", 0.02, 0.04)]
    [InlineData("two-process+floor", 0.02, 0.04, 0.004)]
    public void EveryLawIsSolved(string name, params double[] values)
    {
        var model = new DarkCurrentModel
        {
            Name = name,
            Parameters =
            [
                .. TemperatureLaw
                    .Named(name, Tarn.Reference)
                    .Parameters.Select(
                        (p, i) => new ModelParameter(p.Name, values[i], 0.02 * values[i], p.Unit, 6, "true value")
                    ),
            ],
            Covariance =
            [
                .. values.Select((v, i) => values.Select((_, j) => i == j ? Math.Pow(0.02 * v, 2) : 0).ToArray()),
            ],
        };
        ModeProfile mode = hot.Mode();
        mode = mode with { DarkCurrent = mode.DarkCurrent! with { Models = [model], Selected = name } };
        SetpointAnswer answer = SetpointAdvice.Find(
            hot.Profile() with
            {
                Modes = [mode],
            },
            mode,
            new SetpointQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(0.5) }
        );
        double setpoint = answer.Quantities["setpointTypical"]!.Value;
        DarkCurrentLaw law = DarkCurrentLaw.FromModel(model, Tarn.Reference);
        Assert.Equal(0.05201875, law.RateAt(setpoint).Value, 1e-8);
        Assert.True(law.RateAt(setpoint + 1).Value > 0.05201875);
        Assert.True(answer.Quantities["setpointTypical"]!.StandardUncertainty > 0);
    }

    [Fact] // f = √((1 + p)² − 1)
    public void SpreadFactor()
    {
        Assert.Equal(0.320156211872, new LossLimits { NoiseLoss = 0.05 }.SpreadFactor, 5e-13);
        Assert.Equal(0.458257569496, new LossLimits { NoiseLoss = 0.10 }.SpreadFactor, 5e-13);
    }

    [Fact] // N² = (S + I)·t + R² + q² by hand: 0.5 e-/px/s, 300 s, 1.5 e-, 0.8 e-/ADU; I = 0.006·2^((T + 10)/6)
    public void TheNoiseAtTheSetPointIsSaidSourceBySource()
    {
        SetpointAnswer answer = SetpointAdvice.Find(
            new Tarn().Profile(),
            new Tarn().Mode(),
            new SetpointQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(0.5) }
        );
        LightNoise noise = answer.Noise!;
        double dark = 0.006 * Math.Pow(2, (answer.Quantities["setpoint"]!.Value + 10) / 6) * 300,
            read = 2.25,
            quantisation = 0.64 / 12,
            all = 150 + dark + read + quantisation;
        Assert.Equal(answer.Quantities["setpoint"]!.Value, noise.Temperature);
        foreach (
            (string name, double variance) in new[]
            {
                ("sky", 150),
                ("dark current", dark),
                ("read noise", read),
                ("quantisation", quantisation),
            }
        )
        {
            LightNoiseTerm term = Assert.Single(noise.Terms, t => t.Name == name);
            Assert.Equal(Math.Sqrt(variance), term.Noise.Value, 1e-9);
            Assert.Equal(variance / all, term.Share, 1e-9);
        }
        Assert.Equal(Math.Sqrt(all), noise.Total.Value, 1e-9);
        Assert.Equal(Math.Sqrt((dark + read + quantisation) / 20), noise.MasterDark.Value, 1e-9);
        Assert.Equal(answer.Quantities["extraTypical"]!.Value, 100 * (Math.Sqrt(all / (all - dark)) - 1), 1e-9);
        Assert.Equal(
            answer.Quantities["extra99"]!.Value,
            100 * (noise.AtShare!.Value / Math.Sqrt(all - dark) - 1),
            1e-9
        );
        // 2 % of 1.5 e-; half the 68 % interval of 120 draws: ± 10 %, at two of these
        Assert.Equal(0.02 * 1.5, noise.Terms.Single(t => t.Name == "read noise").Noise.StandardUncertainty, 0.006);
        Assert.Null(noise.AtShareWithFlicker);
    }

    [Fact]
    public void TheNoiseKnowsJumpingPixelsGlowAndFullOnes()
    {
        var camera = new Tarn
        {
            HotShare = 0.03,
            HotFrom = 1,
            Well = 1000,
            Glow =
            [
                new GlowRegion
                {
                    Where = "upper left corner",
                    Peak = new Tarn().Of(0.2, "e-/px/s"),
                    DoublingTemperature = new Tarn().Of(12, "°C"),
                },
            ],
        };
        ModeProfile mode = camera.Mode();
        // a tenth of the pixels
        mode = mode with
        {
            FixedPattern = mode.FixedPattern! with
            {
                Flicker = [new FlickerClass(false, 900_000, camera.Of(40, "e-"), null)],
            },
        };
        LightNoise noise = SetpointAdvice
            .Find(
                camera.Profile() with
                {
                    Modes = [mode],
                },
                mode,
                new SetpointQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(0.5) }
            )
            .Noise!;
        Assert.Equal(Math.Sqrt(0.2 * Math.Pow(2, (noise.Temperature + 10) / 12) * 300), noise.GlowPeak!.Value, 1e-9);
        Assert.True(noise.AtShareWithFlicker!.Value > 40 / 1.5, "the jumps make the 99 % pixel");
        Assert.InRange(noise.FullPixels!.Value, 0.01, 3);
    }

    [Fact]
    public void TheAdviceIsTheColderOfTheTwoInWholeDegrees()
    {
        SetpointAnswer answer = Ask(new Tarn());
        double typical = answer.Quantities["setpointTypical"]!.Value,
            share = answer.Quantities["setpoint99"]!.Value;
        Assert.True(share < typical);
        Assert.Equal(Math.Floor(share), answer.Quantities["setpoint"]!.Value);
        Assert.Equal((SetpointVerdict.Holds, SetpointBound.Loss), (answer.Verdict, answer.Bound));
    }

    [Fact]
    public void TheCoolerLimitsTheAdvice()
    {
        SetpointAnswer answer = Ask(hot, loss: 0.01, ambient: [new("July", 22)], difference: 35);
        Assert.Equal(-10, answer.Quantities["setpoint"]!.Value); // 22 − 35 + 3 in reserve
        Assert.Equal(
            (SetpointVerdict.Limited, SetpointLimit.Cooler, SetpointBound.Cooler),
            (answer.Verdict, answer.Limit, answer.Bound)
        );
    }

    [Fact]
    public void NoSkyAnswersThreeSideBySide()
    {
        SetpointAnswer answer = SetpointAdvice.Find(
            new Tarn().Profile(),
            new Tarn().Mode(),
            new SetpointQuestion { ExposureSeconds = 300 }
        );
        Assert.Equal(
            ["suburban sky, broad band", "suburban sky, narrow band"],
            answer.OtherSkies.Select(a => a.Sky.Name)
        );
        Assert.True(answer.OtherSkies[0].Quantities["setpoint"]!.Value > answer.Quantities["setpoint"]!.Value);
        Assert.True(answer.OtherSkies[1].Quantities["setpoint"]!.Value < answer.Quantities["setpoint"]!.Value);
    }

    [Fact]
    public void TheIntervalHoldsTheTruthAsOftenAsItSays()
    {
        // Profiles whose values are drawn from their own uncertainties around the truth: the 95 % interval of
        // setpointTypical must hold the true
        // setpoint in about 95 of 100. Binomial, 3 standard deviations of 6.5 below 95, and the draws' own 120 samples:
        // 85 is the floor.
        double truth = Ask(hot).Quantities["setpointTypical"]!.Value;
        var random = new Random(5);
        int held = 0;
        for (int i = 0; i < 100; i++)
        {
            double Off() => 1 + hot.Relative * SensorReader.Deviate(random);
            Tarn drawn = hot with
            {
                Rate = hot.Rate * Off(),
                Doubling = hot.Doubling * Off(),
                ReadNoise = hot.ReadNoise * Off(),
                Distribution = false,
            };
            Interval interval = Ask(drawn).Intervals["setpointTypical"];
            if (interval.Low < truth && truth < interval.High)
                held++;
        }
        Assert.InRange(held, 85, 100);
    }

    [Theory]
    [InlineData(
        0,
        "The sky must be a rate above 0 e⁻/px/s, not 0: give it as a number, measure it on your lights, or leave it out for a usual one."
    )]
    [InlineData(
        -0.5,
        "The sky must be a rate above 0 e⁻/px/s, not −0.5: give it as a number, measure it on your lights, or leave it out for a usual one."
    )]
    public void ASkyThatIsNotPositiveIsABadArgument(double sky, string message)
    {
        var refused = Assert.Throws<DecisionRefusedException>(() => SkyRate.Given(sky));
        Assert.Equal((RefusalKind.BadArgument, message), (refused.Kind, refused.Message));
    }

    [Fact]
    public void AnExposureOutsideTheProfileCannotBeTold()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() => Ask(new Tarn(), exposure: 3600));
        Assert.Equal(RefusalKind.CannotTell, refused.Kind);
        Assert.Equal(
            "An exposure of 3600 s is far beyond the darks of this profile, which end at 300 s: add darks of 3600 "
                + "s and characterise again.",
            refused.Message
        );
    }

    [Fact]
    public void ASetPointFarOutsideTheProfileCannotBeTold()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() =>
            Ask(new Tarn(), ambient: [new("July", 55)], difference: 20)
        );
        Assert.Equal(
            "The set point of 38 °C is more than 10 °C outside the measured range, −20 °C to 5 °C: add darks near "
                + "38 °C and characterise again.",
            refused.Message
        );
    }

    [Fact]
    public void AReserveLargerThanTheCoolersReachAndANegativeSelfHeatingAreBadArguments()
    {
        var usual = new SetpointQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(0.5) };
        foreach (
            (SetpointQuestion wrong, string code) in new[]
            {
                (usual with { MaximumDifference = 5, Margin = 6 }, "difference-too-small"),
                (usual with { Cooled = false, SelfHeating = -1 }, "self-heating-negative"),
            }
        )
        {
            var refused = Assert.Throws<DecisionRefusedException>(() =>
                SetpointAdvice.Find(hot.Profile(), hot.Mode(), wrong)
            );
            Assert.Equal((RefusalKind.BadArgument, code), (refused.Kind, refused.Code));
        }
    }

    private static SetpointAnswer Ask(
        Tarn camera,
        double loss = 0.05,
        double exposure = 300,
        IReadOnlyList<AmbientTemperature>? ambient = null,
        double? difference = null
    ) =>
        SetpointAdvice.Find(
            camera.Profile(),
            camera.Mode(),
            new SetpointQuestion
            {
                ExposureSeconds = exposure,
                Sky = SkyRate.Given(0.5),
                Loss = loss,
                Ambient = ambient ?? [],
                MaximumDifference = difference,
            }
        );
}
