namespace SensorProfile.Reporting.Tests;

public sealed class ReportWriterTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("report-writer-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void WritesThePdfThePageAndTheTables()
    {
        IReadOnlyList<string> files = ReportWriter.Write(TarnProfile.Build(), _folder, new ReportOptions());
        Assert.Equal(files.Order(StringComparer.Ordinal), Directory.GetFiles(_folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal));
    }
}
