using SensorProfile.Drift.OverTheYears;
using SensorProfile.Reporting.Tables;

namespace SensorProfile.Reporting.Tests.Tables;

/// <summary>The numbers behind the plots of a drift report.</summary>
public sealed class DriftReportTablesTests
{
    [Fact]
    public void APointOfATrendStandsWithItsDateAndUncertainty()
    {
        DateTimeOffset[] dates =
        [
            .. Enumerable.Range(2030, 3).Select(y => new DateTimeOffset(y, 10, 1, 0, 0, 0, TimeSpan.Zero)),
        ];
        var answer = new DriftAnswer
        {
            Outcome = DriftVerdict.Unchanged,
            Dates = dates,
            Trends =
            [
                new DriftTrend
                {
                    Quantity = "readNoise",
                    Mode = "gain 100",
                    PerYear = new Measurement(0.01, 0.02, "e-", 3, "test"),
                    Z = 0.5,
                    P = 0.6,
                    Points =
                    [
                        .. dates.Select(
                            (d, i) => new TrendPoint(d, new Measurement(1.5 + 0.1 * i, 0.05, "e-", 1, "test"))
                        ),
                    ],
                },
            ],
        };
        DataTable[] tables = [.. DriftReportTables.Of(answer)];
        Assert.All(tables, t => Assert.All(t.Rows, row => Assert.Equal(t.Columns.Count, row.Count)));
        DataTable points = tables.Single(t => t.Name == "drift-points");
        int value = points.Columns.ToList().IndexOf("value"),
            uncertainty = points.Columns.ToList().IndexOf("uncertainty");
        Assert.Equal([1.5, 1.6, 1.7], points.Rows.Select(r => Math.Round((double)r[value]!, 9)));
        Assert.All(points.Rows, row => Assert.Equal(0.05, row[uncertainty]));
    }
}
