using System.Globalization;
using CsvHelper;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Reporting.Content.Nights;
using SensorProfile.Reporting.Tables;

namespace SensorProfile.Reporting.Tests.Tables;

/// <summary>The tables hold the profile's own numbers, each in its column.</summary>
public sealed class ProfileTablesTests
{
    private static readonly CameraProfile profile = TarnProfile.Build();
    private static readonly ModeProfile mode = profile.Modes[0];

    /// <summary>Headings and cells are two lists written by hand: a cell too few moves all numbers by a column.</summary>
    [Fact]
    public void EveryRowHasACellForEveryHeading()
    {
        DataTable[] tables = [.. ModeTables.Of(mode), .. DecisionCurves.Of(NightAnswers.Ask(profile, mode))];
        Assert.True(tables.Length > 15);
        Assert.Equal(tables.Length, tables.Select(t => t.Name).Distinct().Count());
        Assert.All(tables, table =>
        {
            Assert.Equal(table.Columns.Count, table.Columns.Distinct().Count());
            Assert.All(table.Rows, row => Assert.Equal(table.Columns.Count, row.Count));
        });
    }

    [Fact]
    public void DarkRatesStandInTheirColumns()
    {
        DarkCurrentProfile dark = mode.DarkCurrent!;
        DataTable rates = Named(DarkTables.Of(dark), "dark-current");
        Assert.Equal(dark.Points.Select(p => (object?)p.Temperature), Column(rates, "temperature_c"));
        Assert.Equal(dark.Points.Select(p => (object?)p.TypicalRate?.Value), Column(rates, "typical_e_px_s"));
        Assert.Equal(
            dark.Points.Select(p => (object?)p.TypicalRate?.StandardUncertainty),
            Column(rates, "typical_uncertainty")
        );
        Assert.Equal(dark.Points.Select(p => (object?)p.MeanRate?.Value), Column(rates, "mean_e_px_s"));
        DataTable levels = Named(DarkTables.Of(dark), "dark-signal");
        Assert.Equal(
            dark.Points.SelectMany(p => p.Levels).Select(l => (object?)l.VarianceUncertainty),
            Column(levels, "variance_uncertainty_adu2")
        );
    }

    [Fact]
    public void QuantitiesStandWithTheirUncertaintyAndUnit()
    {
        DataTable table = Named(ModeTables.Of(mode), "quantities");
        IReadOnlyList<object?> gain = table.Rows.Single(r => r is ["", "gain", ..]);
        Assert.Equal([mode.Gain!.Value, mode.Gain.StandardUncertainty, mode.Gain.Unit], gain.Skip(2).Take(3));
    }

    [Fact]
    public void HotPixelsAreCountedWithTheirIntervals()
    {
        DataTable counts = Named(PatternTables.Of(mode.FixedPattern), "hot-pixels");
        Assert.Equal(mode.FixedPattern!.HotPixelCurve.Select(c => (object?)c.Count), Column(counts, "pixels"));
        Assert.All(counts.Rows, row => Assert.InRange(Number(row[1]), Number(row[2]), Number(row[3])));
    }

    /// <summary>A plan for a spreadsheet: a line for every master, as many cells as headings in each.</summary>
    [Fact]
    public void ThePlanHasALineForEveryMaster()
    {
        var question = new PlanQuestion
        {
            Lights =
            [
                new PlannedLights
                {
                    ExposureSeconds = 300,
                    StartCelsius = -10,
                    Lights = 40,
                },
            ],
        };
        PlanAnswer plan = DarksPlan.Find(profile, question);
        using var written = new StringWriter(CultureInfo.InvariantCulture);
        DecisionTables.Write(plan, written);
        using var csv = new CsvReader(new StringReader(written.ToString()), CultureInfo.InvariantCulture);
        Assert.True(csv.Read() && csv.ReadHeader());
        foreach (MasterPlan master in plan.Masters)
        {
            Assert.True(csv.Read());
            Assert.Equal(
                (master.Exposure, master.Temperature, master.Frames),
                (csv.GetField<double>("exposure_s"), csv.GetField<double>("temperature_c"), csv.GetField<int>("frames"))
            );
            Assert.Equal(csv.HeaderRecord!.Length, csv.Parser.Count);
        }
        Assert.False(csv.Read());
    }

    private static double Number(object? cell) => Convert.ToDouble(cell, CultureInfo.InvariantCulture);

    private static DataTable Named(IEnumerable<DataTable> tables, string name) => tables.Single(t => t.Name == name);

    private static IEnumerable<object?> Column(DataTable table, string name)
    {
        int at = table.Columns.ToList().IndexOf(name);
        Assert.True(at >= 0, name);
        return table.Rows.Select(r => r[at]);
    }
}
