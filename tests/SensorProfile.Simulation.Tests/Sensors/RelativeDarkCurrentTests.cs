using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation.Tests.Sensors;

/// <summary>
/// Values recomputed at 40 digits from the published forms (Varshni gap with the constants of Janesick 2001; Widenhorn
/// et al. 2002).
/// </summary>
public class RelativeDarkCurrentTests
{
    private static DarkCurrentParameters TwoProcesses(double share, double reference = 0) =>
        new()
        {
            RateAtReference = 1,
            ReferenceTemperature = reference,
            DiffusionShare = share,
        };

    [
        Theory,
        InlineData(-10, 6.605382421),
        InlineData(20, 8.112095781),
        InlineData(0, 7.092260994),
        InlineData(-20, 6.134107535)
    ]
    public void DepletionDoublesOverItsOwnRise(double celsius, double expected) =>
        Assert.Equal(expected, RelativeDarkCurrent.Doubling(TwoProcesses(0), celsius), 1e-7);

    [Fact]
    public void DiffusionDoublesInHalfOfIt() =>
        Assert.Equal(3.302691211, RelativeDarkCurrent.Doubling(TwoProcesses(1), -10), 1e-7);

    [
        Theory,
        InlineData(20, 6.218407517),
        InlineData(-10, 0.3632421691),
        InlineData(-20, 0.1222615409),
        InlineData(-40, 0.01060150503)
    ]
    public void DepletionRelativeToZeroCelsius(double celsius, double expected)
    {
        Assert.Equal(expected, RelativeDarkCurrent.Factor(TwoProcesses(0), celsius), expected * 1e-9);
        Assert.Equal(
            expected * expected,
            RelativeDarkCurrent.Factor(TwoProcesses(1), celsius),
            expected * expected * 1e-8
        );
    }

    [
        Theory,
        InlineData(20, 22.443499783955),
        InlineData(10, 4.5916368868809),
        InlineData(-10, 0.24759352122516),
        InlineData(-20, 0.068604712624557),
        InlineData(-30, 0.019603209037726)
    ]
    public void BothInEqualParts(double celsius, double expected) =>
        Assert.Equal(expected, RelativeDarkCurrent.Factor(TwoProcesses(0.5), celsius), expected * 1e-11);

    [Theory, InlineData(20, 4.3579087021), InlineData(-10, 5.2156487382), InlineData(-30, 5.4791606170)]
    public void BothInEqualPartsDouble(double celsius, double expected) =>
        Assert.Equal(expected, RelativeDarkCurrent.Doubling(TwoProcesses(0.5), celsius), 1e-6);

    [Theory, InlineData(0.56, 20, 9.166216695), InlineData(0.56, -20, 6.83543545), InlineData(1.12, 20, 4.583108348)]
    public void ArrheniusDoubles(double energy, double celsius, double expected) =>
        Assert.Equal(
            expected,
            RelativeDarkCurrent.Doubling(new DarkCurrentParameters { ActivationEnergy = energy }, celsius),
            1e-6
        );

    [Fact]
    public void ArrheniusFactorBetweenTwoTemperatures()
    {
        var dark = new DarkCurrentParameters { ReferenceTemperature = 10, ActivationEnergy = 0.633 };
        Assert.Equal(2.6383354630191, RelativeDarkCurrent.Factor(dark, 21), 1e-12);
    }

    [Fact]
    public void ConstantGapAndExponent()
    {
        DarkCurrentParameters gap = TwoProcesses(0) with { BandGap = 1.12 };
        Assert.Equal(6.963183751, RelativeDarkCurrent.Doubling(gap, -10), 1e-7);
        var arrhenius = new DarkCurrentParameters { ActivationEnergy = 0.56, TemperatureExponent = 1.5 };
        Assert.Equal(6.963183751, RelativeDarkCurrent.Doubling(arrhenius, -10), 1e-7);
    }

    [Fact]
    public void DoublingLawDoubles()
    {
        var dark = new DarkCurrentParameters { ReferenceTemperature = -10, DoublingTemperature = 6 };
        Assert.Equal(1, RelativeDarkCurrent.Factor(dark, -10), 15);
        Assert.Equal(2, RelativeDarkCurrent.Factor(dark, -4), 15);
        Assert.Equal(0.25, RelativeDarkCurrent.Factor(dark, -22), 15);
        Assert.Equal(6, RelativeDarkCurrent.Doubling(dark, 3));
    }
}
