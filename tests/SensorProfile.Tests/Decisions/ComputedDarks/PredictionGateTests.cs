using SensorProfile.Decisions.ComputedDarks;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Tests.Decisions.ComputedDarks;

/// <summary>Which questions for a computed dark the trials on left-out darks let through.</summary>
public sealed class PredictionGateTests
{
    private static readonly PredictionTest passed = new()
    {
        Passed = true,
        Sets = 6,
        Typical = Figures(0.95),
    };
    private static readonly PredictionTest failed = new()
    {
        Sets = 6,
        Typical = Figures(0.95),
        Hot = Figures(0.4),
        FailedBy = "hot",
    };

    [Theory]
    [InlineData(-10.3, PredictionProof.Exposure)]
    [InlineData(-12, PredictionProof.Temperature)]
    [InlineData(-22, PredictionProof.Beyond)]
    [InlineData(4, PredictionProof.Beyond)]
    public void TheTrialThatSpeaksForTheTemperatureIsAsked(double celsius, PredictionProof proof)
    {
        var (_, _, found, findings) = Pass(Trials(), celsius, 100);
        Assert.Equal(proof, found);
        Assert.Equal(proof == PredictionProof.Beyond, findings.Any(f => f.Code == "extrapolated"));
    }

    [Theory]
    [InlineData(-12, 0, "exposure-not-positive")]
    [InlineData(-12, double.PositiveInfinity, "exposure-not-positive")]
    [InlineData(double.NaN, 60, "temperature-not-a-number")]
    [InlineData(-31, 60, "temperature-outside-profile")]
    [InlineData(11, 60, "temperature-outside-profile")]
    [InlineData(-12, 601, "exposure-outside-profile")]
    public void WhatNoTrialSpeaksForIsRefused(double celsius, double seconds, string code) =>
        Assert.Equal(code, Assert.Throws<DecisionRefusedException>(() => Pass(Trials(), celsius, seconds)).Code);

    [Fact]
    public void AFailedTrialRefusesWhatRestsOnItAndNothingElse()
    {
        DarkPredictionProfile outside = Trials() with { Beyond = failed },
            inside = Trials() with { ByTemperature = failed };
        Assert.Equal(PredictionProof.Temperature, Pass(outside, -12, 100).Proof);
        DecisionRefusedException refusal = Assert.Throws<DecisionRefusedException>(() => Pass(outside, -22, 100));
        Assert.Equal((RefusalKind.CannotTell, "prediction-failed"), (refusal.Kind, refusal.Code));
        Assert.Contains("40 % of the hot pixels", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(PredictionProof.Exposure, Pass(inside, -10, 100).Proof);
        Assert.Throws<DecisionRefusedException>(() => Pass(inside, -12, 100));
        Assert.Throws<DecisionRefusedException>(() => Pass(Trials() with { ByExposure = failed }, -10, 100));
    }

    [Fact]
    public void WithTwoTemperaturesTheTrialBeyondSpeaksForTheOneBetween() =>
        Assert.Equal(
            PredictionProof.Temperature,
            Pass(Trials() with { ByTemperature = null }, -5, 100, [-10, 0]).Proof
        );

    [Fact]
    public void WithOneTemperatureOnlyItsOwnIsAnswered()
    {
        DarkPredictionProfile one = Trials() with { ByTemperature = null, Beyond = null };
        Assert.Equal(PredictionProof.Exposure, Pass(one, -10.2, 100, [-10]).Proof);
        Assert.Equal(
            "prediction-not-validated",
            Assert.Throws<DecisionRefusedException>(() => Pass(one, -8, 100, [-10])).Code
        );
    }

    [Fact]
    public void AProfileWithoutTrialsSaysWhatToRun() =>
        Assert.Contains(
            "laws of single pixels included",
            Assert.Throws<DecisionRefusedException>(() => Pass(null, -10, 100)).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void ACutOffBlackLevelHasNoPedestal() =>
        Assert.Equal(
            "pedestal-unknown",
            Assert
                .Throws<DecisionRefusedException>(() =>
                    PredictionGate.Pass(
                        new CameraProfile { Findings = [new Finding("black-clipped", Severity.Refusal, "test")] },
                        Mode(Trials(), [-10]) with
                        {
                            ReadNoiseAdu = null,
                        },
                        Question(-10, 60)
                    )
                )
                .Code
        );

    private static (
        DarkPredictionProfile Trials,
        PredictionTest Test,
        PredictionProof Proof,
        IReadOnlyList<Finding> Findings
    ) Pass(DarkPredictionProfile? trials, double celsius, double seconds, double[]? temperatures = null) =>
        PredictionGate.Pass(
            new CameraProfile(),
            Mode(trials, temperatures ?? [-20, -15, -10, -5, 0]),
            Question(celsius, seconds)
        );

    private static DarkPredictionQuestion Question(double celsius, double seconds) =>
        new()
        {
            TemperatureCelsius = celsius,
            ExposureSeconds = seconds,
            MapsFolder = "",
        };

    private static ModeProfile Mode(DarkPredictionProfile? trials, double[] temperatures) =>
        new()
        {
            ReadNoiseAdu = new Measurement(2, 0.1, "ADU", 10, "test"),
            DarkCurrent = new DarkCurrentProfile
            {
                Points = [.. temperatures.Select(t => new DarkCurrentPoint { Temperature = t })],
            },
            FixedPattern = new FixedPatternProfile { DarkPrediction = trials },
        };

    private static DarkPredictionProfile Trials() =>
        new()
        {
            Passed = true,
            ByExposure = passed,
            ByTemperature = passed,
            Beyond = passed,
            ExposureRange = [10, 300],
        };

    private static PredictionFigures Figures(double coverage) =>
        new(1000, coverage, new Measurement(2, 0.1, "e-", 1000, "test"), 1.5, 2);
}
