using SensorProfile.Cli.Terminal;

namespace SensorProfile.Cli.Tests.Printing;

/// <summary>Names may hold what a terminal obeys: it is shown, not sent.</summary>
public sealed class PrintableTests
{
    [Theory]
    [InlineData("dark_0012.fits", "dark_0012.fits")]
    [InlineData("Gerät −10 °C ± 1 ½ …", "Gerät −10 °C ± 1 ½ …")]
    [InlineData("a\u001b[2Jb", "a␛[2Jb")]
    [InlineData("a\nsensorprofile: all is well\r\t", "a␊sensorprofile: all is well␍␉")]
    [InlineData("a\u009b31mb\u007f", "a\uFFFD31mb\uFFFD")]
    [InlineData("stif\u202Egnp", "stif\uFFFDgnp")]
    [InlineData("\u2066a\u2069\u200F\u061C\u2028", "\uFFFDa\uFFFD\uFFFD\uFFFD\uFFFD")]
    public void ControlCharactersAreShownNotSent(string text, string shown) =>
        Assert.Equal(shown, Printable.Escape(text));
}
