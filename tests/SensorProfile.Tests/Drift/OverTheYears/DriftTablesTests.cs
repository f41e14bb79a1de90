using System.Globalization;
using CsvHelper;
using SensorProfile.Drift.OverTheYears;

namespace SensorProfile.Tests.Drift.OverTheYears;

/// <summary>A comparison as a table that a spreadsheet reads.</summary>
public sealed class DriftTablesTests
{
    private static readonly DriftChange change = new(
        "readNoise",
        "gain 100, offset \"30\"", // a comma and quotes: RFC 4180 puts the cell in quotes and doubles those in it
        new Measurement(1.5, 0.01, "e-", 1, "test"),
        new Measurement(1.625, 0.02, "e-", 1, "test"),
        new Measurement(0.125, 0.0223606797749979, "e-", 1, "test"), // √(0.01² + 0.02²)
        5.59,
        2.3e-8,
        4.6e-8,
        Changed: true,
        Detectable: 0.06
    );

    [Fact]
    public void AChangeComesBackAsItWas()
    {
        string text = Written(new DriftAnswer { Outcome = DriftVerdict.Changed, Changes = [change] });
        using var csv = new CsvReader(new StringReader(text), CultureInfo.InvariantCulture);
        Assert.True(csv.Read() && csv.ReadHeader() && csv.Read());
        Assert.Equal(("change", change.Quantity, change.Mode), (csv["kind"], csv["quantity"], csv["mode"]));
        Assert.Equal(
            (1.5, 0.01, 1.625, 0.02),
            (
                csv.GetField<double>("from"),
                csv.GetField<double>("from_uncertainty"),
                csv.GetField<double>("to"),
                csv.GetField<double>("to_uncertainty")
            )
        );
        Assert.Equal(change.Change.StandardUncertainty, csv.GetField<double>("change_uncertainty"));
        Assert.Equal((change.P, "yes"), (csv.GetField<double>("p"), csv["changed"]));
        Assert.False(csv.Read());
    }

    [Fact]
    public void LinesEndAsTheStandardSaysInEveryCulture()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            string text = Written(new DriftAnswer { Outcome = DriftVerdict.Changed, Changes = [change] });
            Assert.Equal(2, text.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
            Assert.Contains(",1.625,", text, StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static string Written(DriftAnswer answer)
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture);
        DriftTables.WriteChanges(answer, writer);
        return writer.ToString();
    }
}
