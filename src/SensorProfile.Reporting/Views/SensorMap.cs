using SensorProfile.Profiles;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Views;

/// <summary>A map of the sensor on disk that can be viewed part by part.</summary>
internal sealed class SensorMap
{
    private readonly string path;
    private readonly double outstanding;

    private SensorMap(MapPicture picture, string path, double outstanding)
    {
        Picture = picture;
        this.path = path;
        this.outstanding = outstanding;
    }

    /// <summary>The whole map, reduced.</summary>
    public MapPicture Picture { get; }

    /// <summary>The window that shows the whole map.</summary>
    public MapWindow Whole =>
        MapWindow.Whole(
            Picture.FrameWidth > 0 ? Picture.FrameWidth : Picture.Width,
            Picture.FrameHeight > 0 ? Picture.FrameHeight : Picture.Height
        );

    /// <summary>What black and white stand for; empty for a map of classes.</summary>
    public string Scale =>
        Picture.Classes.Count > 0
            ? ""
            : $"Black is {Text(Picture.Low)}, white {Text(Picture.High)}"
                + (Picture.Logarithmic ? "; equal steps for equal ratios." : ".");

    /// <summary>The classes with their colours, as the picture draws them.</summary>
    public IReadOnlyList<(string Name, string Colour)> Classes =>
        [
            .. Picture.Classes.Select(
                (name, i) =>
                {
                    OxyPlot.OxyColor colour = MapBitmap.ClassColour(i);
                    return (name, $"#{colour.R:x2}{colour.G:x2}{colour.B:x2}");
                }
            ),
        ];

    /// <summary>A part of the map as PNG, one point for each pixel where the part is small enough.</summary>
    /// <exception cref="IOException">The map is gone or cannot be read.</exception>
    public byte[] Png(MapWindow window) =>
        MapBitmap.Png(
            Picture.Classes.Count > 0
                ? DefectReduction.Part(path, Picture, window)
                : MapReduction.Part(path, Picture, window, outstanding)
        );

    /// <summary>The maps of a profile that exist and can be read.</summary>
    public static IReadOnlyList<SensorMap> Find(string folder, CameraProfile profile)
    {
        IReadOnlyList<string> modes = ModeLabel.Folders(profile.Modes);
        return
        [
            .. ReportMaps
                .Read(folder, profile)
                .Pictures.Select(picture => new SensorMap(
                    picture,
                    Path.Combine(folder, modes.Count > 1 ? modes[picture.Mode] : "", picture.Map + ".fits"),
                    picture.Logarithmic ? ReportMaps.HotFrom(profile.Modes[picture.Mode]) : double.PositiveInfinity
                )),
        ];
    }

    private string Text(double value) => $"{QuantityText.Number(value)} {QuantityText.Unit(Picture.Unit)}".TrimEnd();
}
