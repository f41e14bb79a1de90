using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Content.Sensor;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Html;

namespace SensorProfile.Reporting.Tests.Html;

public partial class HtmlReportTests
{
    private static readonly string _page = HtmlReport.Text(ReportContent.Build(TarnProfile.Build(), null));

    [Fact]
    public void ThePageIsWellFormedAndItsNamesAreUnique()
    {
        XDocument page = Parse(_page);
        string[] ids = [.. page.Descendants().Attributes("id").Select(id => id.Value)];
        Assert.NotEmpty(ids);
        Assert.Equal(ids.Length, ids.Distinct().Count());
        string[] used =
        [
            .. page.Descendants()
                .Attributes("clip-path")
                .Select(use => use.Value[5..^1])
                .Concat(page.Descendants("a").Select(a => a.Attribute("href")!.Value[1..])),
        ];
        Assert.All(used, id => Assert.Contains(id, ids));
    }

    [Fact]
    public void NothingIsFetchedAndNothingRuns()
    {
        string page = _page.Replace("xmlns=\"http://www.w3.org/2000/svg\"", "", StringComparison.Ordinal);
        Assert.DoesNotMatch("https?:|<script|<link|@import|url\\((?!#)| on[a-z]+=", page);
        Assert.DoesNotMatch("src=\"(?!data:)", page);
    }

    [Fact]
    public void EveryColourOfAPlotIsAVariableOfTheStyleSheetInLightAndDark()
    {
        Assert.DoesNotMatch("(fill|stroke):#", _page);
        string[] declared = [.. Declaration().Matches(_page).Select(match => match.Groups[1].Value)];
        Assert.All(Palette.CssNames.Values, name => Assert.Equal(2, declared.Count(d => d == name)));
        Assert.All(Use().Matches(_page).Select(match => match.Groups[1].Value).Distinct(), name =>
            Assert.Contains(name, declared)
        );
    }

    [Fact]
    public void TextOfTheUserIsShownNotInterpreted()
    {
        const string Name = "Kühl & <b>\"Größe\"</b> ☾\u0007";
        CameraProfile profile = new()
        {
            Camera = new CameraInfo { Name = Name },
            Findings = [new Finding("x", Severity.Note, "<script>alert('ß')</script>", ["a\ud800b.fits"])],
        };
        string page = HtmlReport.Text(ReportContent.Build(profile, null));

        Assert.Equal("Kühl & <b>\"Größe\"</b> ☾", Parse(page).Descendants("h1").Single().Value);
        Assert.DoesNotContain("<script>", page, StringComparison.Ordinal);
    }

    [Fact]
    public void PicturesStandInThePage()
    {
        var picture = new MapPicture(0, "Glow", "e-/px/s", 2, 2, [0, 1, float.NaN, 0.5f], 0, 1);
        string page = HtmlReport.Text(
            ReportContent.Build(new CameraProfile { Modes = [TarnProfile.Mode()] }, new ReportMaps([picture]))
        );
        byte[] png = Convert.FromBase64String(Regex.Match(page, "data:image/png;base64,([^\"]+)").Groups[1].Value);
        using SkiaSharp.SKBitmap bitmap = SkiaSharp.SKBitmap.Decode(png);
        // 0.5 is shade 32 of 0 … 63: 32·255/63 = 130
        Assert.Equal([0xFF000000, 0xFFFFFFFF, 0xFF56B4E9, 0xFF828282], bitmap.Pixels.Select(pixel => (uint)pixel));
    }

    private static XDocument Parse(string page)
    {
        using var reader = XmlReader.Create(
            new StringReader(page),
            new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore }
        );
        return XDocument.Load(reader);
    }

    [GeneratedRegex("--([a-z]+): ?#")]
    private static partial Regex Declaration();

    [GeneratedRegex(@"var\(--([a-z]+)\)")]
    private static partial Regex Use();
}
