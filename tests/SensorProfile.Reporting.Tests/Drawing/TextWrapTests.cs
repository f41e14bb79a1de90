using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Tests.Drawing;

public class TextWrapTests
{
    [Fact]
    public void LinesFitAndNothingIsLost()
    {
        const string Text =
            "Take bias frames between the darks, since "
            + "d41d8cd98f00b204e9800998ecf8427ed41d8cd98f00b204e9800998ecf8427e moved by 1.8 ± 0.2 ADU.";
        IReadOnlyList<string> lines = TextWrap.Lines(Text, 9, bold: false, width: 120);
        Assert.True(lines.Count > 3);
        Assert.All(lines, line => Assert.True(ReportFonts.Width(line, 9, false) <= 120, line));
        Assert.Equal(
            Text.Replace(" ", "", StringComparison.Ordinal),
            string.Concat(lines)
                .Replace(" ", "", StringComparison.Ordinal)
                .Replace("\u00A0", "", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void AValueStaysWithItsUncertainty() =>
        Assert.Contains(TextWrap.Lines("doubling every 6.07 ± 0.12 °C", 10, bold: true, width: 105), line =>
            line.Contains("6.07\u00A0±\u00A00.12", StringComparison.Ordinal)
        );

    [Fact]
    public void EveryCharacterThatReportsUseIsInTheFonts()
    {
        const string Used = "ABCxyz 0123456789 ±−–·×µσχΔ²³⁰¹⁴⁵⁶⁷⁸⁹⁻°e⁻≤≥→“”’ÄÖÜäöüßéŁşЖλ\u00A0\u202F";
        using SkiaSharp.SKFont regular = ReportFonts.Font(10, false),
            bold = ReportFonts.Font(10, true);
        Assert.True(regular.ContainsGlyphs(Used));
        Assert.True(bold.ContainsGlyphs(Used));
    }
}
