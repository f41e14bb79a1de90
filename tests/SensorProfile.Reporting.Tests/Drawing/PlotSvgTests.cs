using OxyPlot;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting.Tests.Drawing;

public sealed class PlotSvgTests
{
    private static readonly ScreenPoint[] line = [new(1, 2), new(3, 4.5)];

    [Fact]
    public void ShapesPaintedAlikeShareOneStyle()
    {
        var svg = new PlotSvg("p");
        svg.DrawLine(line, OxyColors.Red, 1, EdgeRenderingMode.Automatic, null!, LineJoin.Miter);
        svg.DrawEllipse(new OxyRect(0, 0, 4, 4), OxyColors.Transparent, OxyColors.Red, 1, EdgeRenderingMode.Automatic);
        svg.DrawLine(line, OxyColors.Red, 2, EdgeRenderingMode.Automatic, null!, LineJoin.Miter);
        Assert.Equal(
            "<g style=\"fill:none;stroke:#ff0000\" stroke-width=\"1\">\n<path d=\"M1 2L3 4.5\"/>\n<circle "
                + "cx=\"2\" cy=\"2\" r=\"2\"/>\n</g>\n"
                + "<path d=\"M1 2L3 4.5\" style=\"fill:none;stroke:#ff0000\" stroke-width=\"2\"/>\n",
            svg.Elements
        );
    }

    // A word or a clip in between must keep its place in the order of drawing.
    [Fact]
    public void WhatIsDrawnInBetweenKeepsItsPlace()
    {
        var svg = new PlotSvg("p");
        svg.DrawLine(line, OxyColors.Red, 1, EdgeRenderingMode.Automatic, null!, LineJoin.Miter);
        svg.PushClip(new OxyRect(0, 0, 9, 9));
        svg.DrawLine(line, OxyColors.Red, 1, EdgeRenderingMode.Automatic, null!, LineJoin.Miter);
        svg.PopClip();
        Assert.Matches(
            "^<path [^>]*/>\n<clipPath id=\"p0\"><rect [^>]*/></clipPath><g clip-path=\"url\\(#p0\\)\">\n<path "
                + "[^>]*/>\n</g>\n$",
            svg.Elements
        );
    }
}
