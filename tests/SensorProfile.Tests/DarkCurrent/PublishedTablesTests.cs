using System.Globalization;
using System.Text.Json;
using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Fitting.Models;
using SensorProfile.Tests.Fitting;

namespace SensorProfile.Tests.DarkCurrent;

/// <summary>
/// Published tables of dark current, fitted without weights on the logarithm.
/// </summary>
public class PublishedTablesTests
{
    private static readonly double[] T = [-20, -30, -40, -50, -70, -77],
        Rates = [10, 3, 1, 0.3, 0.03, 0.016];

    private static double InverseEnergy(double celsius) =>
        -1 / (PhysicalConstants.BoltzmannElectronVoltsPerKelvin * (celsius + PhysicalConstants.ZeroCelsius));

    [Fact]
    public void DoublingOfASpaceCamera()
    {
        StraightLine line = StraightLine.Fit(T, [.. Rates.Select(r => Math.Log(r))]).Scaled();
        Digits.Printed(0.11381281037302, line.Slope, 5e-15);
        Digits.Printed(0.0013902549327, line.SlopeUncertainty, 5e-14);
        Digits.Printed(4.5366294500552, line.Intercept, 5e-14);
        Digits.Printed(0.069524331128, Math.Sqrt(line.ReducedChiSquared), 5e-13);
        (double doubling, double u) = ErrorPropagation.Propagate(
            p => Math.Log(2) / p[0],
            [line.Slope],
            new[,]
            {
                { line.SlopeVariance },
            }
        );
        Digits.Printed(6.0902386848, doubling, 5e-11);
        Digits.Printed(0.0743939487, u, 5e-11);
        double cold = Math.Exp(line.At(-88).Value);
        Digits.Printed(0.0041739274, cold, 5e-11);
        Assert.True(cold < 0.01); // the handbook: below 0.01 beyond −80 °C
    }

    [Fact]
    public void ArrheniusOfASpaceCameraAndTheChoice()
    {
        double[] logs = [.. Rates.Select(r => Math.Log(r))];
        StraightLine arrhenius = StraightLine.Fit([.. T.Select(InverseEnergy)], logs),
            doubling = StraightLine.Fit(T, logs);
        Digits.Printed(0.48168750974544, arrhenius.Slope, 5e-13);
        Digits.Printed(0.0206857314, arrhenius.Scaled().SlopeUncertainty, 5e-11);
        Digits.Printed(0.2435973727, Math.Sqrt(arrhenius.ReducedChiSquared), 5e-11);
        Digits.Printed(15.0460797, 6 * Math.Log(arrhenius.ChiSquared / doubling.ChiSquared), 5e-8);

        // The same with the errors such rounded figures have, about 7 %: the fit chooses the doubling law, and finds
        // the same doubling temperature.
        TemperatureFitResult result = TemperatureFit.Fit(
            [.. T.Zip(Rates, (t, r) => new TemperaturePoint(t, r, 0.07 * r))],
            -50
        );
        Assert.Equal("doubling", result.Selected);
        Assert.InRange(result.DoublingTemperature!.Value, 6.09 - 0.15, 6.09 + 0.15);
    }

    [DataTheory("published")]
    [InlineData("wfpc2-dark-temperature.csv")]
    [InlineData("college-ccd-dark-temperature.csv")]
    public void TablesOfDarkAgainstTemperature(string file)
    {
        (double[] t, double[] rate) = Columns(file);
        double[] logs = [.. rate.Select(r => Math.Log(r))];
        JsonElement expected = Expected(file);
        StraightLine doubling = StraightLine.Fit(t, logs).Scaled();
        (double value, double u) = ErrorPropagation.Propagate(
            p => Math.Log(2) / p[0],
            [doubling.Slope],
            new[,]
            {
                { doubling.SlopeVariance },
            }
        );
        Check(expected.GetProperty("doubling"), "doubling_k", value, u, Math.Sqrt(doubling.ReducedChiSquared), 5e-5);
        foreach (
            (string name, double power) in new[]
            {
                ("arrhenius_m0", 0.0),
                ("arrhenius_m1.5", 1.5),
                ("arrhenius_m3", 3.0),
            }
        )
        {
            StraightLine line = StraightLine
                .Fit(
                    [.. t.Select(InverseEnergy)],
                    [.. t.Zip(logs, (a, b) => b - power * Math.Log(a + PhysicalConstants.ZeroCelsius))]
                )
                .Scaled();
            Check(
                expected.GetProperty(name),
                "Ea_ev",
                line.Slope,
                line.SlopeUncertainty,
                Math.Sqrt(line.ReducedChiSquared),
                5e-6
            );
        }
    }

    [DataTheory("published")]
    [InlineData("model-t3-exponential.csv")]
    public void TableOfTheMakersLaw(string file)
    {
        (double[] kelvin, double[] relative) = Columns(file);
        var law = new ArrheniusLaw(0, power: 3);
        double amplitude =
            122 * Math.Pow(PhysicalConstants.ZeroCelsius, 3) * Math.Exp(-6400 / PhysicalConstants.ZeroCelsius);
        for (int i = 0; i < kelvin.Length; i++)
            Digits.Relative(
                relative[i],
                law.Rate(
                    kelvin[i] - PhysicalConstants.ZeroCelsius,
                    [amplitude, 6400 * PhysicalConstants.BoltzmannElectronVoltsPerKelvin]
                ),
                1e-9
            );
    }

    [DataTheory("published")]
    [InlineData("dark-photon-transfer-14bit-ccd.csv")]
    public void DarkSignalOfALaboratoryCamera(string file)
    {
        string[][] rows = [.. Rows(file).Take(8)];
        double[] t = [.. rows.Select(r => Number(r[0]))],
            mean = [.. rows.Select(r => Number(r[1]))],
            variance = [.. rows.Select(r => Math.Pow(Number(r[2]), 2))];
        JsonElement level = Expected(file).GetProperty("mean_on_exposure_first_8_points"),
            transfer = Expected(file).GetProperty("variance_on_mean_first_8_points");
        StraightLine line = StraightLine.Fit(t, mean).Scaled(),
            gain = StraightLine.Fit(mean, variance).Scaled();
        Digits.Printed(level.GetProperty("slope_adu_per_ms").GetDouble(), line.Slope, 5e-5);
        Digits.Printed(level.GetProperty("se").GetDouble(), line.SlopeUncertainty, 5e-5);
        Digits.Printed(level.GetProperty("intercept_adu").GetDouble(), line.Intercept, 5e-3);
        Digits.Printed(transfer.GetProperty("slope_adu_per_e").GetDouble(), gain.Slope, 5e-6);
        Digits.Printed(transfer.GetProperty("slope_se").GetDouble(), gain.SlopeUncertainty, 5e-6);
        Digits.Printed(transfer.GetProperty("intercept_adu2").GetDouble(), gain.Intercept, 5e-4);
    }

    private static void Check(
        JsonElement expected,
        string name,
        double value,
        double uncertainty,
        double scatter,
        double halfUnit
    )
    {
        Digits.Printed(expected.GetProperty(name).GetDouble(), value, halfUnit);
        Digits.Printed(expected.GetProperty("se").GetDouble(), uncertainty, halfUnit);
        Digits.Printed(expected.GetProperty("rms_ln").GetDouble(), scatter, 5e-5);
    }

    private static JsonElement Expected(string file) =>
        JsonDocument.Parse(File.ReadAllText(TestData.Path("published/expected.json"))).RootElement.GetProperty(file);

    private static IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(TestData.Path("published/" + file)).Skip(1).Select(l => l.Split(','));

    private static (double[] First, double[] Second) Columns(string file)
    {
        string[][] rows = [.. Rows(file)];
        return ([.. rows.Select(r => Number(r[0]))], [.. rows.Select(r => Number(r[1]))]);
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
