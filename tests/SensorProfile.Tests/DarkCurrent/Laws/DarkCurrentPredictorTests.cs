using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Profiles.Darks;
using SensorProfile.Tests.Fitting;

namespace SensorProfile.Tests.DarkCurrent.Laws;

public class DarkCurrentPredictorTests
{
    private static readonly TemperatureFitResult Result = TemperatureFit.Fit(
        [
            .. new double[] { -25, -20, -15, -10, -5, 0 }.Select(t => new TemperaturePoint(
                t,
                0.06 * Math.Pow(2, (t + 10) / 6),
                0.003 * Math.Pow(2, (t + 10) / 6)
            )),
        ],
        -10,
        0.01
    );

    private static readonly DarkCurrentProfile Stored = new()
    {
        Models = Result.Models,
        Selected = Result.Selected,
        ReferenceTemperature = Result.ReferenceTemperature,
        MeasuredRange = Result.MeasuredRange,
    };

    [Fact]
    public void AStoredProfilePredictsWhatTheFitReported()
    {
        DarkCurrentPrediction atReference = DarkCurrentPredictor.FromProfile(Stored)!.At(-10);
        Digits.Relative(Result.RateAtReference!.Value, atReference.Rate.Value, 1e-14);
        Digits.Relative(Result.RateAtReference.StandardUncertainty, atReference.Rate.StandardUncertainty, 1e-12);
        Digits.Relative(Result.DoublingTemperature!.Value, atReference.DoublingTemperature.Value, 1e-14);
        Digits.Relative(
            Result.DoublingTemperature.StandardUncertainty,
            atReference.DoublingTemperature.StandardUncertainty,
            1e-12
        );
    }

    [Fact]
    public void OutsideTheMeasuredRangeIsMarkedAndLessCertain()
    {
        DarkCurrentPredictor predictor = DarkCurrentPredictor.FromProfile(Stored)!;
        Assert.False(predictor.At(-25).Extrapolated);
        Assert.False(predictor.At(0).Extrapolated);
        Assert.True(predictor.At(-25.01).Extrapolated);
        Assert.True(predictor.At(20).Extrapolated);
        double Relative(double t) => predictor.At(t).Rate.StandardUncertainty / predictor.At(t).Rate.Value;
        Assert.True(Relative(20) > 2 * Relative(0));
        Assert.True(Relative(-40) > 2 * Relative(-25));
        // The other possible laws widen the band beyond the doubling law's own.
        Assert.True(
            predictor.At(-40).Rate.StandardUncertainty
                > DarkCurrentLaw.FromModel(Result.Models[0], -10).RateAt(-40).StandardUncertainty
        );
    }

    [Fact]
    public void WithoutALawThereIsNoPrediction() =>
        Assert.Null(DarkCurrentPredictor.FromProfile(new DarkCurrentProfile()));

    [Fact]
    public void AForeignRecordIsRefusedWithItsReason()
    {
        DarkCurrentModel model = Result.Models[0];
        Assert.Contains(
            "lacks its parameter 'doublingTemperature'",
            Assert
                .Throws<ArgumentException>(() =>
                    DarkCurrentLaw.FromModel(model with { Parameters = [model.Parameters[0]] }, -10)
                )
                .Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "its covariance 0",
            Assert
                .Throws<ArgumentException>(() => DarkCurrentLaw.FromModel(model with { Covariance = [] }, -10))
                .Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ReferenceIsTheMeasuredTemperatureInTheMiddleOfWhatWasResolved()
    {
        Assert.Equal(-10, ReferenceTemperature.Choose([new(-20.1, 1, 0.1), new(-9.9, 2, 0.1), new(0.2, 4, 0.1)]));
        // the colder of two
        Assert.Equal(
            -15,
            ReferenceTemperature.Choose([new(-20, 1, 0.1), new(-15, 2, 0.1), new(-10, 2, 0.1), new(-5, 4, 0.1)])
        );
        Assert.Equal(
            0,
            ReferenceTemperature.Choose([
                new(-40, 0.01, 0.1),
                new(-30, 0.1, 0.1),
                new(-10, 1, 0.1),
                new(0, 2, 0.1),
                new(10, 4, 0.1),
            ])
        );
        Assert.Throws<ArgumentException>(() => ReferenceTemperature.Choose([]));
    }
}
