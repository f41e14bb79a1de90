using OxyPlot;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Pdf;
using SensorProfile.Reporting.Plots.Drawing;
using SkiaSharp;

namespace SensorProfile.Reporting.Tests.Pdf;

/// <summary>Where figures and sections go when a page is nearly full.</summary>
public sealed class PdfBlocksTests : IDisposable
{
    private const double Aspect = 0.5;

    private readonly MemoryStream stream = new();
    private readonly SKDocument document;
    private readonly PdfPages pages;

    public PdfBlocksTests()
    {
        document = SKDocument.CreatePdf(stream);
        pages = new PdfPages(document, "footer", Reporting.Pdf.PageSize.A4);
        pages.NewPage();
    }

    public void Dispose()
    {
        pages.EndPage();
        document.Close();
        document.Dispose();
        stream.Dispose();
    }

    [Theory]
    [InlineData(1.01, true)] // fits whole
    [InlineData(0.8, true)] // lower
    [InlineData(0.62, true)]
    [InlineData(0.5, false)] // too low to read
    public void APlotMayBeLowerRatherThanBeginAPage(double room, bool stays)
    {
        double before = LeaveRoomFor(room);
        PdfBlocks.Write(pages, [Figure(keepsShape: false)]);
        Assert.Equal(stays, pages.Y > before);
        Assert.True(pages.Room > -11, "only the gap after a figure reaches below the page");
    }

    [Theory]
    [InlineData(1.01, true)]
    [InlineData(0.8, false)]
    public void APictureKeepsItsShape(double room, bool stays)
    {
        double before = LeaveRoomFor(room);
        PdfBlocks.Write(pages, [Figure(keepsShape: true)]);
        Assert.Equal(stays, pages.Y > before);
    }

    [Fact] // a heading alone at the foot of a page announces nothing
    public void AHeadingGoesWithItsFigure()
    {
        double before = LeaveRoomFor(0.55);
        PdfBlocks.Write(pages, [new SubheadingBlock("Heading"), Figure(keepsShape: false)]);
        Assert.True(pages.Y < before);
    }

    [Fact] // 0.6 of the plot, what stands before it, and nothing of what follows
    public void TheLeastHeightOfASectionEndsWithItsFirstFigure()
    {
        Block text = new TextBlock("Some words.");
        double least = PdfBlocks.LeastHeight(pages, [text, Figure(keepsShape: false), Figure(keepsShape: true)]);
        double whole = PdfBlocks.Height(pages, [text, Figure(keepsShape: false)]);
        Assert.InRange(least, whole - 0.4 * Aspect * pages.Width - 10.1, whole - 0.4 * Aspect * pages.Width + 0.1);
    }

    /// <summary>Room for so much of the plot, with its caption; where the next block begins.</summary>
    private double LeaveRoomFor(double share)
    {
        double caption = PdfBlocks.Height(pages, [Figure(keepsShape: false)]) - 10 - Aspect * pages.Width;
        pages.Y += pages.Room - caption - share * Aspect * pages.Width;
        return pages.Y;
    }

    private static FigureBlock Figure(bool keepsShape) =>
        new(1, "Caption.", [new Panel(new PlotModel(), Aspect)]) { KeepsShape = keepsShape };
}
