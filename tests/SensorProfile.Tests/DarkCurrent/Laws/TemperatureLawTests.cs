using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Fitting.Models;
using SensorProfile.Tests.Fitting;

namespace SensorProfile.Tests.DarkCurrent.Laws;

/// <summary>
/// A maker's law of silicon as printed, half-gap and full-gap laws with Varshni's gap, recomputed with 40 digits;
/// properties of every law.
/// </summary>
public class TemperatureLawTests
{
    // A maker's silicon law 122·T³·exp(−6400/T) relative to 293 K, as printed: Arrhenius with m = 3 and E = 6400·k.
    private const double MakersEnergy = 6400 * PhysicalConstants.BoltzmannElectronVoltsPerKelvin;

    private static double MakersLaw(double celsius) =>
        new ArrheniusLaw(0, power: 3).Rate(
            celsius,
            [122 * Math.Pow(273.15, 3) * Math.Exp(-6400 / 273.15), MakersEnergy]
        );

    [Theory]
    [InlineData(20, 1.014349585966)]
    [InlineData(0, 0.16591738495732)]
    [InlineData(-10, 0.060899157302705)]
    [InlineData(-20, 0.020744252811572)]
    [InlineData(-30, 0.0064987576604562)]
    [InlineData(-40, 0.0018527721893893)]
    public void MakersLawAsPrinted(double celsius, double expected) =>
        Digits.Relative(expected, MakersLaw(celsius), 1e-12);

    [Fact]
    public void MakersLawIsNotOneAtItsReference()
    {
        double reference = MakersLaw(293 - 273.15);
        Digits.Relative(1.0015366382356, reference, 1e-12);
        Digits.Relative(0.16566282113215, MakersLaw(0) / reference, 1e-12);
        Digits.Relative(0.020712425306893, MakersLaw(-20) / reference, 1e-12);
        Digits.Printed(7.99823384647, MakersLaw(0) / MakersLaw(-20), 5e-12);
        Digits.Printed(6.11358228812, MakersLaw(20) / MakersLaw(0), 5e-12);
    }

    [Theory]
    [InlineData(20, 8.1828895778)]
    [InlineData(0, 7.1634751359)]
    [InlineData(-10, 6.6763107387)]
    [InlineData(-20, 6.2044267852)]
    [InlineData(-40, 5.3072750522)]
    public void MakersLawDoubling(double celsius, double expected) =>
        Digits.Printed(expected, new ArrheniusLaw(0, power: 3).Doubling(celsius, [1, MakersEnergy]), 5e-11);

    // The energy that pure Arrhenius needs for the same slope: k(6400 + 3T).
    [Theory]
    [InlineData(20, 0.6272944662)]
    [InlineData(0, 0.6221240662)]
    [InlineData(-20, 0.6169536662)]
    public void MakersLawActivationEnergy(double celsius, double expected)
    {
        double doubling = new ArrheniusLaw(0, power: 3).Doubling(celsius, [1, MakersEnergy]),
            kelvin = celsius + 273.15;
        Digits.Printed(
            expected,
            Math.Log(2) * PhysicalConstants.BoltzmannElectronVoltsPerKelvin * kelvin * kelvin / doubling,
            5e-11
        );
        Digits.Relative(doubling, new ArrheniusLaw(0).Doubling(celsius, [1, expected]), 1e-9);
    }

    [Theory]
    [InlineData(-10, 6.605382421)]
    [InlineData(20, 8.112095781)]
    [InlineData(0, 7.092260994)]
    [InlineData(-20, 6.134107535)]
    public void HalfAndFullGapDoubling(double celsius, double expected)
    {
        var law = new TwoProcessLaw(-10);
        Digits.Printed(expected, law.Doubling(celsius, [0, 1]), 1e-8);
        Digits.Relative(law.Doubling(celsius, [0, 1]) / 2, law.Doubling(celsius, [1, 0]), 1e-14);
    }

    [Fact]
    public void ConstantGapGivesAnotherDoubling()
    {
        Digits.Printed(6.963183751, new ArrheniusLaw(-10, power: 1.5).Doubling(-10, [1, 0.56]), 5e-10);
        Digits.Printed(7.3861321, new ArrheniusLaw(-10).Doubling(-10, [1, 0.56]), 5e-8);
        Digits.Printed(6.5860501, new ArrheniusLaw(-10, power: 3).Doubling(-10, [1, 0.56]), 5e-8);
    }

    [Theory]
    [InlineData(20, 6.218407517, 5e-10)]
    [InlineData(-10, 0.3632421691, 5e-11)]
    [InlineData(-20, 0.1222615409, 5e-11)]
    [InlineData(-40, 0.01060150503, 5e-12)]
    public void HalfGapRatioToZeroCelsius(double celsius, double expected, double halfUnit)
    {
        var law = new TwoProcessLaw(0);
        Digits.Printed(expected, law.Rate(celsius, [0, 1]), halfUnit);
        Digits.Relative(Math.Pow(law.Rate(celsius, [0, 1]), 2), law.Rate(celsius, [1, 0]), 1e-13);
    }

    [Theory]
    [InlineData(20, 22.443499783955)]
    [InlineData(10, 4.5916368868809)]
    [InlineData(-10, 0.24759352122516)]
    [InlineData(-20, 0.068604712624557)]
    [InlineData(-30, 0.019603209037726)]
    public void TwoEqualProcesses(double celsius, double expected) =>
        Digits.Relative(expected, new TwoProcessLaw(0).Rate(celsius, [0.5, 0.5]), 1e-12);

    [Theory]
    [InlineData(20, 4.3579087021)]
    [InlineData(0, 4.7281739959)]
    [InlineData(-10, 5.2156487382)]
    [InlineData(-20, 5.5314948149)]
    [InlineData(-30, 5.4791606170)]
    public void TwoEqualProcessesDoubling(double celsius, double expected) =>
        Digits.Printed(expected, new TwoProcessLaw(0).Doubling(celsius, [0.5, 0.5]), 5e-11);

    [Theory]
    [InlineData(0.56, 20, 9.166216695)]
    [InlineData(0.56, -20, 6.83543545)]
    [InlineData(1.12, 20, 4.583108348)]
    public void ArrheniusDoubling(double energy, double celsius, double expected) =>
        Digits.Printed(expected, new ArrheniusLaw(5).Doubling(celsius, [3, energy]), 5e-9);

    [Fact]
    public void FactorBetweenTwoTemperatures()
    {
        var law = new ArrheniusLaw(10);
        Digits.Relative(2.6383354630191, law.Rate(21, [1, 0.633]), 1e-12);
    }

    public static TheoryData<string, double[]> Laws =>
        new()
        {
            { "doubling", [0.06, 6.1] },
            { "arrhenius", [0.06, 0.65] },
            { "two-process", [0.02, 0.04] },
            { "doubling+floor", [0.06, 6.1, 0.01] },
            { "arrhenius+floor", [0.06, 0.65, 0.01] },
            { "two-process+floor", [0.02, 0.04, 0.01] },
        };

    [Theory, MemberData(nameof(Laws))]
    public void DoublingIsTheLocalSlopeAndRatesRise(string name, double[] parameters)
    {
        TemperatureLaw law = TemperatureLaw.Named(name, -10);
        Assert.Equal(name, law.Name);
        Assert.Equal(parameters.Length, law.Count);
        for (double t = -40; t <= 30; t += 5)
        {
            double slope = (Math.Log(law.Rate(t + 1e-3, parameters)) - Math.Log(law.Rate(t - 1e-3, parameters))) / 2e-3;
            Digits.Relative(Math.Log(2) / slope, law.Doubling(t, parameters), 1e-6);
            Assert.True(law.Rate(t + 1, parameters) > law.Rate(t, parameters));
            Assert.True(law.ThermalDoubling(t, parameters) <= law.Doubling(t, parameters));
        }
        Digits.Relative(
            name.EndsWith("floor", StringComparison.Ordinal) ? 0.07 : 0.06,
            law.Rate(-10, parameters),
            1e-14
        );
    }

    [Theory, MemberData(nameof(Laws))]
    public void GradientIsTheDerivative(string name, double[] parameters)
    {
        TemperatureLaw law = TemperatureLaw.Named(name, -10);
        var gradient = new double[law.Count];
        law.Gradient(-3, parameters, gradient);
        for (int j = 0; j < law.Count; j++)
        {
            double[] up = [.. parameters],
                down = [.. parameters];
            (up[j], down[j]) = (up[j] * 1.00001, down[j] * 0.99999);
            Digits.Relative((law.Rate(-3, up) - law.Rate(-3, down)) / (up[j] - down[j]), gradient[j], 1e-7);
        }
    }

    [Fact]
    public void DoublingLawDoubles()
    {
        var law = new DoublingLaw(-10);
        Digits.Relative(2 * law.Rate(-17.3, [0.06, 6.1]), law.Rate(-17.3 + 6.1, [0.06, 6.1]), 1e-15);
    }

    [Fact]
    public void AnUnknownLawIsRefusedByName() =>
        Assert.Contains(
            "No temperature law is called 'cubic'",
            Assert.Throws<ArgumentException>(() => TemperatureLaw.Named("cubic", 0)).Message,
            StringComparison.Ordinal
        );
}
