using OxyPlot;

namespace SensorProfile.Reporting.Drawing;

/// <summary>The colours of every plot and page.</summary>
/// <remarks>
/// Data colours: Okabe and Ito, "Color Universal Design: how to make figures and presentations that are friendly to
/// colorblind people",
/// 2002, revised 2008 (https://jfly.uni-koeln.de/color/). Its black is drawn in the ink of the page, so that it turns
/// light on a dark one;
/// its yellow is left out, for it cannot be seen on white.
/// </remarks>
internal static class Palette
{
    /// <summary>Text, axes, and Okabe and Ito's black.</summary>
    public static readonly OxyColor Ink = OxyColor.FromRgb(0x1B, 0x20, 0x26);

    /// <summary>Secondary text.</summary>
    public static readonly OxyColor Faint = OxyColor.FromRgb(0x5A, 0x63, 0x6E);

    /// <summary>Grid lines and rules.</summary>
    public static readonly OxyColor Grid = OxyColor.FromRgb(0xDD, 0xE1, 0xE6);

    /// <summary>Shading of ranges and of panels.</summary>
    public static readonly OxyColor Shade = OxyColor.FromRgb(0xF1, 0xF3, 0xF6);

    /// <summary>The page.</summary>
    public static readonly OxyColor Paper = OxyColor.FromRgb(0xFF, 0xFF, 0xFF);

    /// <summary>Okabe and Ito's blue.</summary>
    public static readonly OxyColor Blue = OxyColor.FromRgb(0x00, 0x72, 0xB2);

    /// <summary>Okabe and Ito's vermillion.</summary>
    public static readonly OxyColor Vermillion = OxyColor.FromRgb(0xD5, 0x5E, 0x00);

    /// <summary>Okabe and Ito's bluish green.</summary>
    public static readonly OxyColor Green = OxyColor.FromRgb(0x00, 0x9E, 0x73);

    /// <summary>Okabe and Ito's orange.</summary>
    public static readonly OxyColor Orange = OxyColor.FromRgb(0xE6, 0x9F, 0x00);

    /// <summary>Okabe and Ito's sky blue.</summary>
    public static readonly OxyColor SkyBlue = OxyColor.FromRgb(0x56, 0xB4, 0xE9);

    /// <summary>Okabe and Ito's reddish purple.</summary>
    public static readonly OxyColor Purple = OxyColor.FromRgb(0xCC, 0x79, 0xA7);

    /// <summary>Each colour with the name of its variable in the HTML page's style sheet.</summary>
    public static readonly IReadOnlyDictionary<OxyColor, string> CssNames = new Dictionary<OxyColor, string>
    {
        [Ink] = "ink",
        [Faint] = "faint",
        [Grid] = "grid",
        [Shade] = "shade",
        [Paper] = "paper",
        [Blue] = "blue",
        [Vermillion] = "vermillion",
        [Green] = "green",
        [Orange] = "orange",
        [SkyBlue] = "sky",
        [Purple] = "purple",
    };

    private static readonly OxyColor[] _series = [Blue, Vermillion, Green, Purple, Orange, SkyBlue, Ink];
    private static readonly MarkerType[] _markers =
    [
        MarkerType.Circle,
        MarkerType.Square,
        MarkerType.Triangle,
        MarkerType.Diamond,
    ];

    /// <summary>Colour of the n-th series of a plot.</summary>
    public static OxyColor Series(int index) => _series[index % _series.Length];

    /// <summary>Marker of the n-th series: colour and shape do not repeat together within 28 series.</summary>
    public static MarkerType Marker(int index) => _markers[index % _markers.Length];
}
