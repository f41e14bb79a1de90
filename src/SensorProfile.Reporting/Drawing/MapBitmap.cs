using SkiaSharp;

namespace SensorProfile.Reporting.Drawing;

/// <summary>A map of the sensor as grey values: dark is low, bright is high, and what was not measured is the blue of no data.</summary>
internal static class MapBitmap
{
    private static readonly SKColor _notMeasured = new(Palette.SkyBlue.R, Palette.SkyBlue.G, Palette.SkyBlue.B);

    /// <summary>The picture as a bitmap.</summary>
    public static SKBitmap Of(MapPicture picture)
    {
        if (picture.Width < 1 || picture.Height < 1 || picture.Values.Count != (long)picture.Width * picture.Height)
            throw new ArgumentException($"The picture '{picture.Title}' of {picture.Width} × {picture.Height} px has {picture.Values.Count} values.", nameof(picture));
        var bitmap = new SKBitmap(picture.Width, picture.Height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        bitmap.Pixels = [.. picture.Values.Select(value => Shade(value, picture))];
        return bitmap;
    }

    /// <summary>The picture as a PNG file.</summary>
    public static byte[] Png(MapPicture picture)
    {
        using SKBitmap bitmap = Of(picture);
        using SKData data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    private static SKColor Shade(float value, MapPicture picture)
    {
        if (!float.IsFinite(value))
            return _notMeasured;
        double share = picture.High > picture.Low ? Math.Clamp((value - picture.Low) / (picture.High - picture.Low), 0, 1) : 0;
        byte grey = (byte)Math.Round(255 * share);
        return new SKColor(grey, grey, grey);
    }
}
