using OxyPlot;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Tests.Plots.Sensor;

public sealed class PicturePlotTests
{
    [Theory, InlineData(400, 300, 1), InlineData(300, 400, 1), InlineData(400, 266, 2)]
    public void APixelIsAsHighAsItIsWide(int width, int height, int columns)
    {
        var picture = new MapPicture(0, "Glow", "e-/px/s", width, height, new float[width * height], 0, 1)
        {
            FrameWidth = 10 * width,
            FrameHeight = 10 * height,
        };
        Panel panel = PicturePlot.Draw(
            picture,
            [new PictureMarks("worst place", Palette.Orange, MarkerType.Circle, 5, false, [(10, 10)])],
            [],
            columns
        );
        double drawn = PicturePlot.DrawnWidth / columns;
        ((IPlotModel)panel.Model).Update(true);
        ((IPlotModel)panel.Model).Render(new PlotSvg("t"), new OxyRect(0, 0, drawn, drawn * panel.Aspect));
        Assert.Equal((double)width / height, panel.Model.PlotArea.Width / panel.Model.PlotArea.Height, 0.02);
    }
}
