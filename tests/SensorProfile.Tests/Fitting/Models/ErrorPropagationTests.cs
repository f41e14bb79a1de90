using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Fitting.Models;

/// <summary>
/// Examples H.1 and H.2 of the GUM (JCGM 100:2008); a covariance matrix is symmetric and positive semidefinite.
/// </summary>
public class ErrorPropagationTests
{
    private static readonly Func<double[], double>[] Impedance =
    [
        v => v[0] / v[1] * Math.Cos(v[2]),
        v => v[0] / v[1] * Math.Sin(v[2]),
        v => v[0] / v[1],
    ];

    [Fact]
    public void ImpedanceFromFiveSimultaneousReadings()
    {
        double[][] readings =
        [
            [5.007, 4.994, 5.005, 4.990, 4.999],
            [19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3],
            [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
        ];
        double[] means = [.. readings.Select(r => r.Average())];
        var covariance = new double[3, 3];
        for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            // of the means: n(n − 1)
            covariance[i, j] = readings[i].Zip(readings[j], (a, b) => (a - means[i]) * (b - means[j])).Sum() / 20;
        Check(
            means,
            covariance,
            [0.0710714074, 0.2955816774, 0.2363361301],
            [-0.58842978, -0.48525922, 0.99251165],
            5e-10
        );
        Digits.Printed(127.732169928, Impedance[0](means), 5e-10);
        Digits.Printed(219.846511913, Impedance[1](means), 5e-10);
        Digits.Printed(254.259701948, Impedance[2](means), 5e-10);
    }

    [Fact]
    public void ImpedanceFromRoundedInputs()
    {
        double[] values = [4.999, 19.661e-3, 1.04446],
            r = [-.36, .86, -.65];
        double[,] covariance = Covariance([0.0032, 9.5e-6, 7.5e-4], (i, j) => r[i + j - 1]);
        Check(
            values,
            covariance,
            [0.06997872799, 0.2957168268, 0.2366029718],
            [-0.59148461, -0.49062391, 0.99279747],
            5e-10
        );
    }

    [Fact]
    public void EndGauge()
    {
        const double length = 50000623;
        double[] u = [25, 5.8, 3.9, 6.7, length * 0.1e-6 / Math.Sqrt(3), length * 11.5e-6 * 0.05 / Math.Sqrt(3)];
        Digits.Printed(31.663879111, Math.Sqrt(u.Sum(v => v * v)), 5e-10);
        // The last part's uncertain expansion coefficient is taken as exactly known here, as in the row; u(5) = 2.8868
        // belongs to ν = 50, u(6) = 16.599 to ν = 2.
        double freedom = ErrorPropagation.EffectiveDegreesOfFreedom(u, [18, 24, 5, 8, 50, 2]);
        Digits.Printed(16.751855738, freedom, 5e-10);
        Assert.Equal(93, Math.Round(Probability.StudentQuantile(0.995, Math.Floor(freedom)) * 32));
    }

    [Fact]
    public void CertainPartsLeaveNoLimitToTheDegreesOfFreedom() =>
        Assert.Equal(
            double.PositiveInfinity,
            ErrorPropagation.EffectiveDegreesOfFreedom([1, 2], [double.PositiveInfinity, double.PositiveInfinity])
        );

    [Fact]
    public void ASumOfPerfectlyAnticorrelatedPartsHasNoUncertainty()
    {
        double[,] covariance = Covariance([0.3, 0.3], (_, _) => -1);
        Assert.Equal(0, ErrorPropagation.Variance([1, 1], covariance), 15);
        Assert.True(ErrorPropagation.Variance([1, 1], covariance) >= 0);
    }

    [Fact]
    public void CovarianceRowsGoThereAndBack()
    {
        double[,] covariance = Covariance([1, 2, 3], (i, j) => 0.1 * (i + j));
        Assert.Equal(covariance, CovarianceMatrix.FromRows(CovarianceMatrix.ToRows(covariance)));
        Assert.Throws<ArgumentException>(() =>
            CovarianceMatrix.FromRows([
                [1.0, 2.0],
                [3.0],
            ])
        );
    }

    private static void Check(
        double[] values,
        double[,] covariance,
        double[] uncertainties,
        double[] correlations,
        double halfUnit
    )
    {
        double[] found = [.. Impedance.Select(z => ErrorPropagation.Propagate(z, values, covariance).Uncertainty)];
        for (int i = 0; i < 3; i++)
            Digits.Printed(uncertainties[i], found[i], halfUnit);
        Digits.Printed(correlations[0], Correlation(0, 1), 5e-9);
        Digits.Printed(correlations[1], Correlation(0, 2), 5e-9);
        Digits.Printed(correlations[2], Correlation(1, 2), 5e-9);

        // u²(a + b) = u²(a) + u²(b) + 2·r·u(a)·u(b)
        double Correlation(int a, int b)
        {
            double both = ErrorPropagation
                .Propagate(v => Impedance[a](v) + Impedance[b](v), values, covariance)
                .Uncertainty;
            return (both * both - found[a] * found[a] - found[b] * found[b]) / (2 * found[a] * found[b]);
        }
    }

    private static double[,] Covariance(double[] uncertainties, Func<int, int, double> correlation)
    {
        int n = uncertainties.Length;
        var covariance = new double[n, n];
        for (int i = 0; i < n; i++)
        for (int j = 0; j < n; j++)
            covariance[i, j] =
                (i == j ? 1 : correlation(Math.Min(i, j), Math.Max(i, j))) * uncertainties[i] * uncertainties[j];
        return covariance;
    }
}
