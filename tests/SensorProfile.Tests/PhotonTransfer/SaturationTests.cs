using SensorProfile.PhotonTransfer;
using SensorProfile.Profiles.Response;

namespace SensorProfile.Tests.PhotonTransfer;

public sealed class SaturationTests
{
    [Fact]
    public void TheVariancePeakIsFoundAndThePileUpNamesTheConverter()
    {
        // Derived: levels 0 … 16000 by 1000 ADU, everything above 15000 set to 15000; at 15000 half the pixels
        // are clipped and the variance is 0.3408450569 of its value.
        FlatPairPoint[] points =
        [
            .. Enumerable
                .Range(0, 17)
                .Select(i =>
                {
                    double level = 1000.0 * i,
                        variance = 2.25 + 0.5 * level;
                    return i < 15 ? Point(level, variance)
                        : i == 15 ? Point(15000, variance * 0.3408450569, 0.5)
                        : Point(15000, 0, 1);
                }),
        ];
        SaturationLevel found = Saturation.Find(points, topCodeSignal: 15000, codeStep: 1)!;
        Assert.Equal(14000, found.PeakSignal);
        Assert.Equal(SaturationCause.Adc, found.By);
        Assert.Equal(15000, found.SignalAdu);
    }

    [Fact]
    public void APlateauBelowTheTopCodeIsThePixelsOwn()
    {
        FlatPairPoint[] points =
        [
            Point(5000, 2505),
            Point(10000, 5005),
            Point(20000, 10005),
            Point(29000, 14505),
            Point(30010, 60),
            Point(30012, 8),
        ];
        SaturationLevel found = Saturation.Find(points, topCodeSignal: 65000, codeStep: 1)!;
        Assert.Equal(SaturationCause.Pixel, found.By);
        Assert.Equal(30011, found.SignalAdu, 1e-9);
        Assert.InRange(found.StandardUncertaintyAdu, 1, 10);
    }

    /// <summary>Half the pixels at the top code pull the mean below it: the codes end at the top, not at that mean.</summary>
    [Fact]
    public void TheCodesEndAtTheTopNotAtTheMeanOfTheFullestFlat()
    {
        SaturationLevel found = Saturation.Find(
            [Point(5000, 2505), Point(14_000, 7005), Point(14_600, 2000, topShare: 0.5)],
            topCodeSignal: 15_000,
            codeStep: 4
        )!;
        Assert.Equal(
            (SaturationCause.Adc, 15_000, 4 / Math.Sqrt(12)),
            (found.By, found.SignalAdu, found.StandardUncertaintyAdu)
        );
    }

    /// <summary>
    /// Between the peak at 20000 and the brightest flat at 26000 any value is as likely: their middle ± 6000/√12.
    /// </summary>
    [Fact]
    public void AFallingVarianceWithoutAPlateauLeavesTheRangeOpen()
    {
        SaturationLevel found = Saturation.Find(
            [Point(10_000, 5005), Point(20_000, 10_005), Point(24_000, 7000), Point(26_000, 4000)],
            topCodeSignal: 65_000,
            codeStep: 1
        )!;
        Assert.Equal(SaturationCause.Pixel, found.By);
        Assert.Equal(23_000, found.SignalAdu, 1e-9);
        Assert.Equal(6000 / Math.Sqrt(12), found.StandardUncertaintyAdu, 1e-9);
    }

    [Fact]
    public void ASeriesThatNeverSaturatesSaysSo() =>
        Assert.Null(Saturation.Find([Point(5000, 2505), Point(10000, 5005), Point(20000, 10005)], 65000, 1));

    [Fact]
    public void NoiseOnTheVarianceIsNoPeak() =>
        Assert.Null(Saturation.Find([Point(5000, 2505), Point(20000, 10100), Point(20500, 10005)], 65000, 1));

    private static FlatPairPoint Point(double signal, double variance, double topShare = 0) =>
        new()
        {
            Signal = signal,
            MeanSignal = signal,
            Variance = variance,
            Pixels = 10000,
            TopCodeShare = topShare,
        };
}
