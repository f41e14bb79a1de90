using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Fits a weighted straight line through a quantity's dates.</summary>
internal static class TrendFit
{
    internal const double DaysPerYear = 365.25;
    private const int ForecastSteps = 12;
    private const double Bent = 0.05;

    /// <summary>The trend; null with fewer than three dates or no spread in time.</summary>
    /// <remarks>
    /// Where the points scatter more than their uncertainties allow (χ² test at 5 %), the slope's uncertainty is
    /// multiplied by √(χ²/ν) (Birge 1932) and the slope is judged by Student's t with ν degrees of freedom.
    /// </remarks>
    public static DriftTrend? Fit(string quantity, string mode, IReadOnlyList<TrendPoint> points)
    {
        if (points.Count < 3)
            return null;
        DateTimeOffset origin = points[^1].DateUtc;
        double[] years = [.. points.Select(p => Years(origin, p.DateUtc))];
        double[] uncertainties = [.. points.Select(p => p.Value.StandardUncertainty)];
        if (!(years[^1] - years[0] > 0.05) || !uncertainties.All(u => u > 0))
            return null;
        StraightLine line = StraightLine.Fit(years, [.. points.Select(p => p.Value.Value)], uncertainties);
        bool straight = Probability.ChiSquaredTail(line.ChiSquared, line.DegreesOfFreedom) >= Bent;
        if (!straight)
            line = line.Scaled();
        double z = line.Slope / line.SlopeUncertainty;
        double reach = straight ? Probability.Normal95 : Probability.StudentQuantile(0.975, line.DegreesOfFreedom);
        Measurement last = points[^1].Value;
        return new DriftTrend
        {
            Quantity = quantity,
            Mode = mode,
            PerYear = new Measurement(
                line.Slope,
                line.SlopeUncertainty,
                last.Unit + " per year",
                points.Count,
                "weighted straight line over the dates"
            ),
            Z = z,
            P = straight ? Probability.NormalTwoSided(z) : Probability.StudentTwoSided(z, line.DegreesOfFreedom),
            Straight = straight,
            Points = points,
            Forecast = Forecast(line, origin, years[0], reach),
        };
    }

    /// <summary>Years of 365.25 days from one date to another.</summary>
    public static double Years(DateTimeOffset from, DateTimeOffset to) => (to - from).TotalDays / DaysPerYear;

    private static IReadOnlyList<ForecastPoint> Forecast(
        StraightLine line,
        DateTimeOffset origin,
        double firstYear,
        double reach
    ) =>
        [
            .. Enumerable
                .Range(0, 2 * ForecastSteps + 1)
                .Select(i =>
                {
                    // from the first date to as far again beyond the last one
                    double year = firstYear * (1 - (double)i / ForecastSteps);
                    (double value, double u) = line.At(year);
                    return new ForecastPoint(
                        origin.AddDays(year * DaysPerYear),
                        value,
                        value - reach * u,
                        value + reach * u,
                        year > 0
                    );
                }),
        ];
}
