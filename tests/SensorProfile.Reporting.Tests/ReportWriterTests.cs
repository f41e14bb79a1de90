using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Tests;

public sealed class ReportWriterTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("report-writer-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string In(string name) => Path.Combine(_folder, name);

    [Fact]
    public void WritesThePdfThePageAndTheTablesAndNothingElse()
    {
        IReadOnlyList<string> files = ReportWriter.Write(TarnProfile.Build(), In("new/ö folder"), new ReportOptions());

        Assert.Equal(
            files,
            Directory.GetFiles(In("new/ö folder"), "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
        );
        Assert.Contains(In("new/ö folder/report.pdf"), files);
        Assert.Contains(In("new/ö folder/report.html"), files);
        Assert.Contains(In("new/ö folder/tables/photon-transfer.csv"), files);
        Assert.True(new FileInfo(In("new/ö folder/report.pdf")).Length < 1 << 20);
    }

    [Fact]
    public void TheSameProfileGivesTheSameBytesInEveryCulture()
    {
        ReportWriter.Write(TarnProfile.Build(), In("a"), new ReportOptions());
        IReadOnlyList<string> files = InCulture.Run("de-DE", () =>
            ReportWriter.Write(TarnProfile.Build(), In("b"), new ReportOptions())
        );

        foreach (string file in files)
            Assert.True(
                File.ReadAllBytes(file)
                    .AsSpan()
                    .SequenceEqual(File.ReadAllBytes(file.Replace(In("b"), In("a"), StringComparison.Ordinal))),
                file
            );
    }

    [Fact]
    public void ModesHaveFoldersOfTheirOwn()
    {
        ReportWriter.Write(TarnProfile.Fell(), _folder, new ReportOptions());

        Assert.Equal(["iso-1600", "iso-800"], Directory.GetDirectories(In("tables")).Select(Path.GetFileName).Order());
        Assert.True(File.Exists(In("tables/iso-800/photon-transfer.csv")));
        Assert.False(File.Exists(In("tables/iso-1600/photon-transfer.csv")));
    }

    [Fact]
    public void AFileThatIsInTheWayIsAnErrorThatNamesTheFolderAndLeavesNothing()
    {
        Directory.CreateDirectory(In("report.pdf")); // a folder of that name cannot be replaced by a file
        File.WriteAllText(In("profile.json"), "kept");

        Exception? problem = Record.Exception(() =>
            ReportWriter.Write(new CameraProfile(), _folder, new ReportOptions())
        );

        Assert.True(problem is IOException or UnauthorizedAccessException, problem?.ToString());
        Assert.DoesNotContain(Directory.GetFileSystemEntries(_folder), path =>
            path.EndsWith(".partial", StringComparison.Ordinal)
        );
        Assert.Equal("kept", File.ReadAllText(In("profile.json")));
    }
}
