using System.Reflection;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Sensor;
using SensorProfile.Reporting.Html;
using SensorProfile.Reporting.Pdf;

namespace SensorProfile.Reporting.Tests.Content.Sensor;

public class ReportContentTests
{
    public static TheoryData<string, CameraProfile> Gaps
    {
        get
        {
            var data = new TheoryData<string, CameraProfile>
            {
                { "nothing at all", new CameraProfile() },
                { "a mode without anything", With(new ModeProfile()) },
                {
                    "records without content",
                    With(
                        new ModeProfile
                        {
                            DarkCurrent = new(),
                            FixedPattern = new(),
                            PhotonTransfer = new(),
                            NoiseDistribution = new(),
                        }
                    )
                },
                {
                    "lists of empty records",
                    With(
                        new ModeProfile
                        {
                            DarkCurrent = new()
                            {
                                Points = [new(), new() { Levels = [new()] }],
                                Models = [new()],
                                Selected = "no such law",
                                ReferenceTemperature = -10,
                            },
                            FixedPattern = new()
                            {
                                Glow = [new()],
                                HotPixelCurve = [new(0, 0, 0, 0), new(1, 1, 0, 5)],
                                Defects = new(),
                            },
                            PhotonTransfer = new() { Curves = [new() { Points = [new()] }] },
                            NoiseDistribution = new() { BinEdges = [0, 1, 2], Counts = [0, 0, 0] },
                            Channels = [new()],
                        }
                    )
                },
                {
                    "one point of each",
                    With(
                        new ModeProfile
                        {
                            DarkCurrent = new()
                            {
                                Points =
                                [
                                    new()
                                    {
                                        Temperature = 20,
                                        TypicalRate = new Measurement(1e-9, 1, "e-/px/s", 1, ""),
                                        Levels = [new() { Exposure = 1, Median = -5 }],
                                    },
                                ],
                            },
                            PhotonTransfer = new()
                            {
                                Curves =
                                [
                                    new()
                                    {
                                        Points =
                                        [
                                            new()
                                            {
                                                Signal = 100,
                                                Variance = 125,
                                                LinearityDeviation = 0,
                                            },
                                        ],
                                        Slope = new Measurement(1.25, 0, "ADU/e-", 1, ""),
                                    },
                                ],
                            },
                            NoiseDistribution = new() { BinEdges = [1, 2], Counts = [1, 0] },
                        }
                    )
                },
            };
            foreach (
                PropertyInfo property in typeof(ModeProfile)
                    .GetProperties()
                    .Where(p => p.Name is not "Settings" and not "Channels")
            )
            {
                ModeProfile mode = TarnProfile.Mode();
                property.SetValue(mode, null);
                data.Add("without " + property.Name, With(mode));
            }
            return data;
        }
    }

    private static CameraProfile With(ModeProfile mode) => new() { Modes = [mode] };

    [Theory, MemberData(nameof(Gaps))]
    public void AProfileWithGapsGivesAReportWithoutEmptyPlots(string what, CameraProfile profile)
    {
        ReportDocument report = ReportContent.Build(profile, null);

        Assert.All(report.Sections, section => Assert.True(section.Blocks.Count > 0, what + ": " + section.Title));
        Assert.All(Figures(report).SelectMany(figure => figure.Panels), panel => Assert.NotEmpty(panel.Model.Series));
        Assert.Contains("</html>", HtmlReport.Text(report), StringComparison.Ordinal);
        Assert.NotEmpty(PdfReport.Bytes(report));
    }

    [Fact]
    public void WhatIsMissingIsSaidWithTheFindingThatSaysWhy()
    {
        ModeProfile mode = TarnProfile.Mode() with { PhotonTransfer = null, Gain = null };
        ReportDocument report = ReportContent.Build(
            new CameraProfile
            {
                Modes = [mode],
                Findings = [new Finding("lacks-gain", Severity.Refusal, "There are no flats.")],
            },
            null
        );

        ReportSection section = report.Sections.Single(s => s.Title == "Gain, full well and linearity");
        Assert.StartsWith(
            "There is no photon-transfer curve. Gain and full well need",
            Assert.IsType<TextBlock>(section.Blocks[0]).Text,
            StringComparison.Ordinal
        );
        Assert.Equal("There are no flats.", Assert.IsType<FindingsBlock>(section.Blocks[1]).Findings.Single().Message);
    }

    // The rates were measured, and the report said that dark current was not.
    [Fact]
    public void DarksOfUnknownTemperatureStandInATable()
    {
        ReportDocument content = ReportContent.Build(
            With(
                new ModeProfile
                {
                    Gain = new Measurement(0.8, 0.01, "e-/ADU", 40, ""),
                    DarkNights =
                    [
                        new DarkNight
                        {
                            StartUtc = new DateTimeOffset(2031, 10, 21, 17, 52, 0, TimeSpan.Zero),
                            AboveColdest = new Measurement(8.4, 1.4, "°C", 12, ""),
                            RateFromVariance = new Measurement(0.31, 0.01, "e-/px/s", 7, ""),
                            Exposures = [15, 60, 180],
                            Frames = 12,
                        },
                    ],
                }
            ),
            null
        );
        ReportSection current = content.Sections.Single(s => s.Title == "Dark current against temperature");
        TableBlock table = Assert.Single(current.Blocks.OfType<TableBlock>());
        Assert.Equal(["2031-10-21 17:52", "8.4 ± 1.4", "–", "0.310 ± 0.010", "3, to 180", "12"], table.Rows.Single());
        Assert.DoesNotContain(current.Blocks.OfType<TextBlock>(), t =>
            t.Text.Contains("was not measured", StringComparison.Ordinal)
        );
    }

    // "Where the sensor is bad" stood alone on its page, and "No glow was found" where nobody had looked.
    [Fact]
    public void WithoutRatesOfPixelsNothingIsSaidOfGlowOrBadPlaces()
    {
        ReportDocument report = ReportContent.Build(
            With(
                new ModeProfile
                {
                    FixedPattern = new FixedPatternProfile { BiasStability = new Measurement(1, 0.1, "e-", 8, "") },
                }
            ),
            new ReportMaps([new MapPicture(0, "Read noise", "e-", 2, 2, [3, 3, 4, 3], 3, 4) { Map = "read-noise" }])
        );
        Assert.All(report.Sections, section => Assert.NotEmpty(section.Blocks));
        Assert.DoesNotContain(report.Sections, section => section.Title == "Where the sensor is bad");
        Assert.DoesNotContain("No glow", HtmlReport.Text(report), StringComparison.Ordinal);
    }

    [Fact]
    public void FiguresAreNumberedInOrderAndEveryAxisNamesItsUnit()
    {
        ReportDocument report = ReportContent.Build(TarnProfile.Build(), null);
        Assert.Equal(Enumerable.Range(1, 12), Figures(report).Select(figure => figure.Number));
        string[] counted =
        [
            "Pixels in each step",
            "Pixels above that rate",
            "Darks in the master",
            "Flats in the master",
            "Times the limit",
        ];
        foreach (
            OxyPlot.Axes.Axis axis in Figures(report)
                .SelectMany(figure => figure.Panels)
                .SelectMany(panel => panel.Model.Axes)
        )
            Assert.True(
                counted.Contains(axis.Title)
                    || axis.Title.Contains(", ", StringComparison.Ordinal)
                    || axis.Title.StartsWith("Hours after", StringComparison.Ordinal),
                axis.Title
            );
    }

    [Fact]
    public void EveryTableThatAFigureNamesIsWritten()
    {
        string folder = Directory.CreateTempSubdirectory("report-tables-").FullName;
        try
        {
            foreach (CameraProfile profile in new[] { TarnProfile.Build(), TarnProfile.Fell() })
            {
                ReportWriter.Write(profile, folder, new ReportOptions());
                Assert.All(Figures(ReportContent.Build(profile, null)), figure =>
                    Assert.True(File.Exists(Path.Combine(folder, figure.Table!)), figure.Table)
                );
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static IEnumerable<FigureBlock> Figures(ReportDocument report) =>
        report.Sections.SelectMany(section => section.Blocks).OfType<FigureBlock>();
}
