using System.Globalization;
using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Answers.Years;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Years;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Html;
using SensorProfile.Reporting.Pdf;
using SensorProfile.Reporting.Plots.Years;

namespace SensorProfile.Reporting.Tests.Content.Years;

/// <summary>The report of a comparison over the years.</summary>
public sealed class DriftReportTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("drift-report-").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public void ThreeYearsGiveAVerdictPagePlotsAndTables()
    {
        DriftAnswer answer = Compare(3);
        Assert.Equal(DriftVerdict.Changed, answer.Outcome);
        string sentence = DriftDocument.Compose(answer).Sentence;
        DriftReportWriter.Write(answer, folder);
        string page = File.ReadAllText(Path.Combine(folder, "drift.html"));
        Assert.Contains(Markup.Escape(sentence), page, StringComparison.Ordinal);
        Assert.Contains(Markup.Escape(RetakeWords.Phrase(answer)), page, StringComparison.Ordinal);
        Assert.Contains("WFPC2 98-03", page, StringComparison.Ordinal);
        Assert.True(
            page.IndexOf(Markup.Escape(sentence), StringComparison.Ordinal)
                < page.IndexOf("<svg", StringComparison.Ordinal),
            "the verdict stands before the first plot"
        );
        string[] points = File.ReadAllLines(Path.Combine(folder, "tables", "drift-points.csv"));
        Assert.Equal(3, points.Count(line => line.Contains(",readNoise,measured,", StringComparison.Ordinal)));
        Assert.Contains(points, line => line.Contains(",readNoise,forecast,", StringComparison.Ordinal));
        Assert.True(new FileInfo(Path.Combine(folder, "drift.pdf")).Length > 10_000);
    }

    [Fact]
    public void TheSameComparisonGivesTheSameBytes()
    {
        foreach (string name in (string[])["a", "b"])
            DriftReportWriter.Write(Compare(2), Path.Combine(folder, name));
        foreach (string file in Directory.GetFiles(Path.Combine(folder, "a"), "*", SearchOption.AllDirectories))
            Assert.Equal(
                File.ReadAllBytes(file),
                File.ReadAllBytes(
                    file.Replace(
                        $"{Path.DirectorySeparatorChar}a{Path.DirectorySeparatorChar}",
                        $"{Path.DirectorySeparatorChar}b{Path.DirectorySeparatorChar}",
                        StringComparison.Ordinal
                    )
                )
            );
    }

    /// <summary>A comparison that could not be made still says so on a page.</summary>
    [Fact]
    public void OneProfileAloneGivesAPageThatSaysSo()
    {
        DriftReportWriter.Write(Compare(1), folder);
        Assert.Contains("Cannot tell", File.ReadAllText(Path.Combine(folder, "drift.html")), StringComparison.Ordinal);
    }

    /// <summary>
    /// Numbers as long as real cameras give them: no word and no number of the table of changes is cut into two.
    /// </summary>
    [Fact]
    public void NoNumberOfTheTableOfChangesIsBroken()
    {
        Measurement dark = new(0.012599, 0.000075, "e-/px/s", 1, ""),
            step = new(-0.000613, 0.000119, "e-/px/s", 1, "");
        string[] quantities =
        [
            "darkRateByPixel",
            "darkRate",
            "hotPixelsAbove0.1",
            "responseNonuniformity",
            "saturationLevel",
            "readNoiseOfG1",
        ];
        DriftChange[] changes =
        [
            .. quantities.Select(q => new DriftChange(
                q,
                "gain 100",
                dark,
                dark with
                {
                    Value = 0.011986,
                },
                step,
                -11.04,
                1e-9,
                1e-9,
                true,
                0.00000743
            )),
            new DriftChange(
                "biasLevel",
                "gain 100",
                new(599.94, 0.36, "ADU", 1, ""),
                new(600.02, 0.34, "ADU", 1, ""),
                new(0.355, 0.5, "ADU", 1, ""),
                0.2,
                0.84,
                0.0123,
                false,
                2
            ),
        ];
        DateTimeOffset[] dates = [new(2031, 10, 14, 0, 0, 0, TimeSpan.Zero), new(2034, 10, 14, 0, 0, 0, TimeSpan.Zero)];
        var answer = new DriftAnswer
        {
            Outcome = DriftVerdict.Changed,
            Changes = changes,
            Dates = dates,
        };
        TableBlock table = DriftYearsSection
            .Compose(answer, "gain 100", null, new FigureCounter())!
            .Blocks.OfType<TableBlock>()
            .Single();
        Assert.Equal(1, table.Widths.Sum(), 9);
        foreach (IReadOnlyList<string> row in table.Rows.Prepend(table.Header))
            Assert.Equal(
                row.Select(NoBreak.Apply),
                PdfTable
                    .Wrap(table, row, ReferenceEquals(row, table.Header), PageSize.A4.Width - 2 * PageSize.A4.Margin)
                    .Select(lines => string.Join(' ', lines))
            );
        Assert.Contains(table.Rows, row => row[1] == "0.012599 ± 0.000075" && row[5] == "−11.0" && row[6] == "< 0.001");
    }

    /// <summary>Rows count downwards, as in the maps of the camera report.</summary>
    [Fact]
    public void TheFirstRowOfTheFileIsAtTheTopOfTheMap()
    {
        OxyPlot.PlotModel model = DriftMapPlot
            .Draw(
                new HotPixelDrift
                {
                    Mode = "gain 100",
                    Width = 640,
                    Height = 480,
                    Kept = 0,
                    New = 0,
                    Healed = 0,
                    Brighter = 0,
                    Fainter = 0,
                    Flickering = 0,
                    Threshold = 0.2,
                }
            )
            .Model;
        OxyPlot.Axes.Axis down = model.Axes.Single(a => a.Position == OxyPlot.Axes.AxisPosition.Left);
        Assert.Equal((1, 0, 0.5, 480.5), (down.StartPosition, down.EndPosition, down.Minimum, down.Maximum));
    }

    /// <summary>
    /// The published paces follow from the numbers their sources give, which stand beside them: (last/first)^(1/years)
    /// − 1, and slope over first count.
    /// </summary>
    [Fact]
    public void ThePublishedPacesFollowFromTheirNumbers()
    {
        static double PerYear(double first, double last, string from, string to) =>
            100
            * (
                Math.Pow(
                    last / first,
                    365.25
                        / (
                            DateTime.Parse(to, CultureInfo.InvariantCulture)
                            - DateTime.Parse(from, CultureInfo.InvariantCulture)
                        ).TotalDays
                ) - 1
            );
        (double Low, double High) Dark(string label) =>
            PublishedAgeing
                .DarkCurrent.Where(p => p.Label.StartsWith(label, StringComparison.Ordinal))
                .Select(p => (p.Low, p.High))
                .Single();
        (double Low, double High) Hot(string label) =>
            PublishedAgeing
                .HotPixels.Where(p => p.Label.StartsWith(label, StringComparison.Ordinal))
                .Select(p => (p.Low, p.High))
                .Single();
        Assert.Equal(Dark("space camera").Low, 100 * (Math.Pow(1.3, 1 / 2.75) - 1), 0.5);
        Assert.Equal(Dark("space camera").High, 100 * (Math.Pow(1.8, 1 / 2.75) - 1), 0.5);
        Assert.Equal(Dark("star tracker").Low, PerYear(10.2, 13.6, "1999-08-11", "2002-12-04"), 0.1);
        Assert.Equal(Dark("space spectrograph").Low, PerYear(0.00411, 0.005796, "2000-10-21", "2004-07-09"), 0.1);
        Assert.Equal(Dark("space spectrograph").High, PerYear(0.00411, 0.01289113, "2000-10-21", "2009-10-06"), 0.1);
        Assert.Equal(100 * (2654.2 - 287.8) / 15471, Hot("space spectrograph").Low, 0.5);
        Assert.Equal(100 * (2654.2 + 287.8) / 15471, Hot("space spectrograph").High, 0.5);
        Assert.Equal(100 * (16857.0 - 682) / 34346, Hot("star tracker").Low, 0.5);
        Assert.Equal(100 * (16857.0 + 682) / 34346, Hot("star tracker").High, 0.5);
    }

    private static DriftAnswer Compare(int years) =>
        DriftComparison.Run(
            [
                .. Enumerable
                    .Range(0, years)
                    .Select(y =>
                    {
                        CameraProfile profile = TarnProfile.Build();
                        ModeProfile mode = profile.Modes[0] with
                        {
                            ReadNoise = profile.Modes[0].ReadNoise! with { Value = 1.52 + 0.1 * y },
                        };
                        FrameSummary[] session =
                        [
                            .. profile.Frames.Session.Select(f => f with { StartUtc = f.StartUtc?.AddYears(y) }),
                        ];
                        return new ProfileOnDisk(
                            $"{2025 + y}/profile.json",
                            profile with
                            {
                                CreatedUtc = profile.CreatedUtc.AddYears(y),
                                Modes = [mode],
                                Frames = profile.Frames with { InputDigest = $"{y}", Session = session },
                            }
                        );
                    }),
            ],
            new DriftOptions { Layouts = 19 }
        );
}
