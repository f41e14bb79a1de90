using System.Text;
using SensorProfile.Reporting.Tables;

namespace SensorProfile.Reporting.Tests.Tables;

public class CsvTextTests
{
    [Fact]
    public void FollowsRfc4180WithNumbersInFull()
    {
        var table = new DataTable(
            "t",
            ["file", "value"],
            [
                ["a, \"b\".fits", 0.1 + 0.2],
                [null, -1e-12],
                ["ü", true],
                [new DateTimeOffset(2025, 10, 12, 22, 15, 0, TimeSpan.FromHours(2)), 5L],
            ]
        );
        string csv = InCulture.Run("de-DE", () =>
        {
            using var stream = new MemoryStream();
            CsvText.Write(table, stream);
            return Encoding.UTF8.GetString(stream.ToArray());
        });
        Assert.Equal(
            "file,value\r\n\"a, \"\"b\"\".fits\",0.30000000000000004\r\n,-1E-12\r\nü,yes\r\n2025-10-12T20:15:00Z,5\r\n",
            csv
        );
    }
}
