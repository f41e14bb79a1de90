using SensorProfile.Reporting.Content;
using SensorProfile.Reporting.Drawing;
using SkiaSharp;

namespace SensorProfile.Reporting.Pdf;

/// <summary>Pictures of the sensor.</summary>
internal static class PdfPicture
{
    private const double MaximumHeight = 300;

    /// <summary>Writes the picture with its caption.</summary>
    public static void Write(PdfPages pages, PictureBlock block)
    {
        double height = Height(block), width = height * block.Picture.Width / block.Picture.Height;
        pages.Need(height + 26);
        using SKBitmap bitmap = MapBitmap.Of(block.Picture);
        using var image = SKImage.FromBitmap(bitmap);
        pages.Canvas.DrawImage(image, new SKRect((float)PdfPages.Margin, (float)pages.Y, (float)(PdfPages.Margin + width), (float)(pages.Y + height)));
        pages.Y += height + 4;
        pages.Paragraph($"Figure {block.Number}. {block.Caption}", PdfPages.Margin, PdfPages.Width, 8, false, Palette.Faint);
    }

    /// <summary>Height of the picture alone.</summary>
    public static double Height(PictureBlock block) => Math.Min(MaximumHeight, PdfPages.Width * block.Picture.Height / block.Picture.Width);
}
