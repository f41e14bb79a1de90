using OxyPlot;
using SkiaSharp;

namespace SensorProfile.Reporting.Drawing;

/// <summary>
/// A map of the sensor as grey values: dark is low, bright is high, and what was not measured is the blue of no data.
/// </summary>
internal static class MapBitmap
{
    /// <summary>
    /// Number of greys from black to white: more than an eye can tell apart, few enough to keep pictures of noise small.
    /// </summary>
    public const int Greys = 64;

    private static readonly SKColor _notMeasured = new(Palette.SkyBlue.R, Palette.SkyBlue.G, Palette.SkyBlue.B);

    private static readonly OxyColor[] _classes =
    [
        Palette.Ink,
        Palette.Blue,
        Palette.Vermillion,
        Palette.Purple,
        Palette.Green,
        Palette.Orange,
    ];

    /// <summary>The picture as a bitmap.</summary>
    public static SKBitmap Draw(MapPicture picture)
    {
        if (picture.Width < 1 || picture.Height < 1 || picture.Values.Count != (long)picture.Width * picture.Height)
            throw new ArgumentException(
                $"The picture '{picture.Title}' of {picture.Width} × {picture.Height} px has "
                    + $"{picture.Values.Count} values.",
                nameof(picture)
            );
        var bitmap = new SKBitmap(picture.Width, picture.Height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        bitmap.Pixels = [.. picture.Values.Select(value => Shade(value, picture))];
        return bitmap;
    }

    /// <summary>The picture as a PNG file; one byte for each point where all are greys.</summary>
    public static byte[] Png(MapPicture picture)
    {
        using SKBitmap coloured = Draw(picture);
        bool grey = picture.Classes.Count == 0 && picture.Values.All(float.IsFinite);
        using SKBitmap bitmap = grey ? coloured.Copy(SKColorType.Gray8) : coloured;
        using SKData data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    private static SKColor Shade(float value, MapPicture picture)
    {
        if (picture.Classes.Count > 0)
            return Opaque(value >= 1 ? ClassColour((int)value - 1) : Palette.Paper);
        if (!float.IsFinite(value))
            return _notMeasured;
        byte grey = (byte)Math.Round(Math.Round((Greys - 1) * Share(value, picture)) * 255 / (Greys - 1));
        return new SKColor(grey, grey, grey);
    }

    /// <summary>Colour of the n-th class of a picture of classes.</summary>
    public static OxyColor ClassColour(int index) => _classes[index % _classes.Length];

    private static double Share(float value, MapPicture picture)
    {
        if (!(picture.High > picture.Low))
            return 0;
        double share = picture.Logarithmic
            ? Math.Log(Math.Max(value, picture.Low) / picture.Low) / Math.Log(picture.High / picture.Low)
            : (value - picture.Low) / (picture.High - picture.Low);
        return Math.Clamp(share, 0, 1);
    }

    private static SKColor Opaque(OxyColor colour) => new(colour.R, colour.G, colour.B);
}
