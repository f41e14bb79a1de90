using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Content.Sensor;
using SensorProfile.Reporting.Pdf;

namespace SensorProfile.Reporting.Tests.Pdf;

public sealed class PdfReportTests : IDisposable
{
    private readonly string _file = Path.Combine(Directory.CreateTempSubdirectory("pdf-").FullName, "r.pdf");

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(_file)!, recursive: true);

    [ToolFact("pdftotext")]
    public void ItsTextCanBeReadAndSearched()
    {
        string text = TextOf(TarnProfile.Build());
        string[] expected =
        [
            "Tarn-9M",
            "KEEP, WITH CARE",
            "Read noise 1.5234 ± 0.0041 e⁻",
            "0.80120 ± 0.00090",
            "Dark current against temperature",
            "measured range",
            "Sensor temperature, °C",
            "pedestal-drift",
            "flats/flat_0007.fits",
            "Cautions",
            "two processes",
        ];
        Assert.All(expected, words => Assert.Contains(words, text, StringComparison.Ordinal));
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
    }

    [ToolFact("pdfinfo")]
    public void ItsPropertiesAreThoseOfTheProfileAndNameNobody()
    {
        Write(TarnProfile.Build());
        string properties = Tool.Run("pdfinfo", "-isodates", _file);
        Assert.Matches(@"Title: +Tarn-9M: camera profile of 2025-10-13", properties);
        Assert.Matches(@"CreationDate: +2025-10-13T01:42:07Z", properties);
        Assert.DoesNotContain("Author", properties, StringComparison.Ordinal);
        Assert.Matches(@"Page size: +595\.\d+ x 841\.\d+ pts \(A4\)", properties);
    }

    [ToolFact("pdffonts")]
    public void ItsFontsAreTheProgramsOwnAndInside()
    {
        Write(TarnProfile.Build());
        string[] fonts = [.. Tool.Run("pdffonts", _file).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2)];
        // only the glyphs in use are inside: six letters and a plus mark such a part of a font (ISO 32000, 9.6.4)
        Assert.Equal(
            ["DejaVuSans", "DejaVuSans-Bold"],
            fonts.Select(line => line.Split(' ')[0].Split('+')[^1]).Order(StringComparer.Ordinal)
        );
        Assert.All(fonts, line =>
            Assert.Contains("CID TrueType      Identity-H       yes", line, StringComparison.Ordinal)
        );
    }

    [ToolFact("pdftotext")]
    public void LongNamesAndManyRowsFlowOverThePages()
    {
        string name = string.Concat(Enumerable.Repeat("Großfeldkamera-Ümläut_", 12));
        CameraProfile profile = TarnProfile.Build() with
        {
            Camera = new CameraInfo { Name = name },
            Findings =
            [
                .. Enumerable
                    .Range(0, 120)
                    .Select(i => new Finding(
                        $"finding-{i}",
                        Severity.Warning,
                        string.Concat(Enumerable.Repeat("A sentence that goes on. ", 9)),
                        [name + ".fits"]
                    )),
            ],
            Frames = new FramesInfo
            {
                Rejected = [.. Enumerable.Range(0, 60).Select(i => new RejectedFile($"{name}{i}.fits", "Torn."))],
            },
        };
        string text = TextOf(profile);
        Assert.Contains("finding-119", text, StringComparison.Ordinal);
        Assert.Contains("and 20 more", text, StringComparison.Ordinal);
    }

    private void Write(CameraProfile profile) =>
        File.WriteAllBytes(_file, PdfReport.Bytes(ReportContent.Build(profile, null)));

    private string TextOf(CameraProfile profile)
    {
        Write(profile);
        return Tool.Run("pdftotext", "-layout", _file, "-").Replace('\u00A0', ' ');
    }
}
