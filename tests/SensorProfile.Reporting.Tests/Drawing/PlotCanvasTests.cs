using OxyPlot;
using SensorProfile.Reporting.Drawing;
using SkiaSharp;

namespace SensorProfile.Reporting.Tests.Drawing;

/// <summary>Lines, areas and text come where and in which colour a plot wants them.</summary>
public sealed class PlotCanvasTests
{
    [Fact]
    public void ALineRunsFromPointToPoint()
    {
        using SKBitmap picture = Drawn(canvas =>
            canvas.DrawLine(
                [new ScreenPoint(10, 50), new ScreenPoint(90, 50)],
                OxyColors.Red,
                4,
                EdgeRenderingMode.Automatic,
                null!,
                LineJoin.Miter
            )
        );
        Assert.Equal(SKColors.Red, picture.GetPixel(50, 50));
        Assert.Equal(SKColors.White, picture.GetPixel(50, 40)); // 10 px beside a line 4 px wide
        Assert.Equal(SKColors.White, picture.GetPixel(5, 50));
    }

    [Fact]
    public void AnAreaIsFilledInsideItsEdge()
    {
        using SKBitmap picture = Drawn(canvas =>
            canvas.DrawPolygon(
                [new ScreenPoint(20, 20), new ScreenPoint(80, 20), new ScreenPoint(80, 80), new ScreenPoint(20, 80)],
                OxyColors.Blue,
                OxyColors.Undefined,
                0,
                EdgeRenderingMode.Automatic,
                null!,
                LineJoin.Miter
            )
        );
        Assert.Equal(SKColors.Blue, picture.GetPixel(50, 50));
        Assert.Equal(SKColors.White, picture.GetPixel(10, 50));
    }

    /// <summary>Room for a text is found before it is drawn: twice the text is twice as wide, to the kerning.</summary>
    [Fact]
    public void TextIsMeasuredInTheFontsOfTheProgram()
    {
        using var bitmap = new SKBitmap(10, 10);
        using var canvas = new SKCanvas(bitmap);
        var plot = new PlotCanvas(canvas);
        OxySize one = plot.MeasureText("noise", "any font", 12, 400),
            two = plot.MeasureText("noisenoise", "any font", 12, 400);
        Assert.InRange(two.Width / one.Width, 1.9, 2.1);
        Assert.InRange(plot.MeasureText("noise", "any font", 24, 400).Width / one.Width, 1.95, 2.05);
    }

    private static SKBitmap Drawn(Action<PlotCanvas> draw)
    {
        var bitmap = new SKBitmap(100, 100);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        draw(new PlotCanvas(canvas));
        canvas.Flush();
        return bitmap;
    }
}
