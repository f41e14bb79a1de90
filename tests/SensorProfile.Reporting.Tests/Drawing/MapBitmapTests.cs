using SensorProfile.Reporting.Drawing;
using SkiaSharp;

namespace SensorProfile.Reporting.Tests.Drawing;

public sealed class MapBitmapTests
{
    [Theory, InlineData(0.5f, SKColorType.Gray8), InlineData(float.NaN, SKColorType.Rgba8888)]
    public void OnlyAPictureOfGreysIsStoredAsGreys(float middle, SKColorType stored)
    {
        var picture = new MapPicture(0, "Glow", "e-/px/s", 3, 1, [0, middle, 1], 0, 1);
        using SKBitmap read = Decoded(MapBitmap.Png(picture), stored);
        using SKBitmap drawn = MapBitmap.Draw(picture);
        Assert.Equal(drawn.Pixels, read.Pixels);
        Assert.Equal((new SKColor(0, 0, 0), new SKColor(255, 255, 255)), (read.GetPixel(0, 0), read.GetPixel(2, 0)));
        Assert.Equal(float.IsNaN(middle), read.GetPixel(1, 0).Red != read.GetPixel(1, 0).Blue);
    }

    private static SKBitmap Decoded(byte[] png, SKColorType expected)
    {
        using var codec = SKCodec.Create(new MemoryStream(png));
        Assert.Equal(expected == SKColorType.Gray8, codec.Info.ColorType == SKColorType.Gray8);
        return SKBitmap.Decode(codec, codec.Info.WithColorType(SKColorType.Rgba8888));
    }
}
