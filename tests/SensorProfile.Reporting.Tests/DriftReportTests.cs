using System.Globalization;
using SensorProfile.Drift;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Content;
using SensorProfile.Reporting.Html;

namespace SensorProfile.Reporting.Tests;

/// <summary>The report of a comparison over the years.</summary>
public sealed class DriftReportTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("drift-report-").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public void ThreeYearsGiveAVerdictPagePlotsAndTables()
    {
        DriftAnswer answer = Compare(3);
        Assert.Equal("changed", answer.Verdict);
        DriftReportWriter.Write(answer, folder);
        string page = File.ReadAllText(Path.Combine(folder, "drift.html"));
        Assert.Contains(Markup.Escape(answer.Sentence), page, StringComparison.Ordinal);
        Assert.Contains(Markup.Escape(answer.Advice), page, StringComparison.Ordinal);
        Assert.Contains("WFPC2 98-03", page, StringComparison.Ordinal);
        Assert.True(page.IndexOf(Markup.Escape(answer.Sentence), StringComparison.Ordinal) < page.IndexOf("<svg", StringComparison.Ordinal), "the verdict stands before the first plot");
        string[] points = File.ReadAllLines(Path.Combine(folder, "tables", "drift-points.csv"));
        Assert.Equal(3, points.Count(line => line.Contains(",readNoise,measured,", StringComparison.Ordinal)));
        Assert.Contains(points, line => line.Contains(",readNoise,forecast,", StringComparison.Ordinal));
        Assert.True(new FileInfo(Path.Combine(folder, "drift.pdf")).Length > 10_000);
    }

    [Fact]
    public void TheSameComparisonGivesTheSameBytes()
    {
        foreach (string name in (string[])["a", "b"]) DriftReportWriter.Write(Compare(2), Path.Combine(folder, name));
        foreach (string file in Directory.GetFiles(Path.Combine(folder, "a"), "*", SearchOption.AllDirectories))
            Assert.Equal(File.ReadAllBytes(file), File.ReadAllBytes(file.Replace($"{Path.DirectorySeparatorChar}a{Path.DirectorySeparatorChar}", $"{Path.DirectorySeparatorChar}b{Path.DirectorySeparatorChar}", StringComparison.Ordinal)));
    }

    /// <summary>A comparison that could not be made still says so on a page.</summary>
    [Fact]
    public void OneProfileAloneGivesAPageThatSaysSo()
    {
        DriftReportWriter.Write(Compare(1), folder);
        Assert.Contains("Cannot tell", File.ReadAllText(Path.Combine(folder, "drift.html")), StringComparison.Ordinal);
    }

    /// <summary>The published paces follow from the numbers their sources give, which stand beside them: (last/first)^(1/years) − 1, and slope over first count.</summary>
    [Fact]
    public void ThePublishedPacesFollowFromTheirNumbers()
    {
        static double PerYear(double first, double last, string from, string to) =>
            100 * (Math.Pow(last / first, 365.25 / (DateTime.Parse(to, CultureInfo.InvariantCulture) - DateTime.Parse(from, CultureInfo.InvariantCulture)).TotalDays) - 1);
        (double Low, double High) Dark(string label) => PublishedAgeing.DarkCurrent.Where(p => p.Label.StartsWith(label, StringComparison.Ordinal)).Select(p => (p.Low, p.High)).Single();
        (double Low, double High) Hot(string label) => PublishedAgeing.HotPixels.Where(p => p.Label.StartsWith(label, StringComparison.Ordinal)).Select(p => (p.Low, p.High)).Single();
        Assert.Equal(Dark("WFPC2").Low, 100 * (Math.Pow(1.3, 1 / 2.75) - 1), 0.5);
        Assert.Equal(Dark("WFPC2").High, 100 * (Math.Pow(1.8, 1 / 2.75) - 1), 0.5);
        Assert.Equal(Dark("Star tracker").Low, PerYear(10.2, 13.6, "1999-08-11", "2002-12-04"), 0.1);
        Assert.Equal(Dark("STIS").Low, PerYear(0.00411, 0.005796, "2000-10-21", "2004-07-09"), 0.1);
        Assert.Equal(Dark("STIS").High, PerYear(0.00411, 0.01289113, "2000-10-21", "2009-10-06"), 0.1);
        Assert.Equal(100 * (2654.2 - 287.8) / 15471, Hot("STIS").Low, 0.5);
        Assert.Equal(100 * (2654.2 + 287.8) / 15471, Hot("STIS").High, 0.5);
        Assert.Equal(100 * (16857.0 - 682) / 34346, Hot("Star tracker").Low, 0.5);
        Assert.Equal(100 * (16857.0 + 682) / 34346, Hot("Star tracker").High, 0.5);
    }

    private static DriftAnswer Compare(int years) => DriftComparison.Run([.. Enumerable.Range(0, years).Select(y =>
    {
        CameraProfile profile = TarnProfile.Build();
        ModeProfile mode = profile.Modes[0] with { ReadNoise = profile.Modes[0].ReadNoise! with { Value = 1.52 + 0.1 * y } };
        FrameSummary[] session = [.. profile.Frames.Session.Select(f => f with { StartUtc = f.StartUtc?.AddYears(y) })];
        return new ProfileOnDisk($"{2025 + y}/profile.json", profile with { CreatedUtc = profile.CreatedUtc.AddYears(y), Modes = [mode], Frames = profile.Frames with { InputDigest = $"{y}", Session = session } });
    })], new DriftOptions { Layouts = 19 });
}
