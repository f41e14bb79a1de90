using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>A picture of the sensor with pixel axes, the key to its greys, and marks at the worst places.</summary>
internal static class PicturePlot
{
    /// <summary>Layout width of the plot, points: other widths would stretch the picture.</summary>
    public const double DrawnWidth = 499;

    private const double Left = 46,
        Top = 8,
        Bottom = 34,
        KeyRoom = 62,
        NoKeyRoom = 14;

    /// <summary>The plot.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="marks">Series of marks; may be empty.</param>
    /// <param name="words">Labels on the picture; may be empty.</param>
    /// <param name="columns">Pictures side by side in the figure.</param>
    public static Panel Draw(
        MapPicture picture,
        IReadOnlyList<PictureMarks> marks,
        IReadOnlyList<PictureWords> words,
        int columns = 1
    )
    {
        bool classes = picture.Classes.Count > 0;
        double frameWidth = picture.FrameWidth > 0 ? picture.FrameWidth : picture.Width,
            frameHeight = picture.FrameHeight > 0 ? picture.FrameHeight : picture.Height;
        double right = classes ? NoKeyRoom : KeyRoom,
            width = DrawnWidth / columns,
            inside = width - Left - right;
        PlotModel model = PlotBase.New();
        if (columns == 1)
            PlotBase.AddLegend(model);
        model.PlotMargins = new OxyThickness(Left, Top, right, Bottom);
        model.Padding = new OxyThickness(0);
        Axis across = PlotBase.AddLinear(model, AxisPosition.Bottom, "Column, px", new Span(0, frameWidth)),
            down = PlotBase.AddLinear(model, AxisPosition.Left, "Row, px", new Span(0, frameHeight));
        (across.Minimum, across.Maximum, down.Minimum, down.Maximum) = (0.5, frameWidth + 0.5, 0.5, frameHeight + 0.5);
        // the first row of the file is at the top
        (down.StartPosition, down.EndPosition) = (1, 0);
        across.MajorGridlineStyle = down.MajorGridlineStyle = LineStyle.None;
        model.Annotations.Add(
            new ImageAnnotation
            {
                ImageSource = new OxyImage(MapBitmap.Png(picture)),
                X = new PlotLength(0.5, PlotLengthUnit.Data),
                Y = new PlotLength(0.5, PlotLengthUnit.Data),
                Width = new PlotLength(frameWidth, PlotLengthUnit.Data),
                Height = new PlotLength(frameHeight, PlotLengthUnit.Data),
                HorizontalAlignment = HorizontalAlignment.Left,
                VerticalAlignment = VerticalAlignment.Top,
                Interpolate = false,
                Layer = AnnotationLayer.BelowSeries,
            }
        );
        if (classes)
            AddClasses(model, picture);
        else
            AddKey(model, picture);
        foreach (PictureMarks mark in marks)
            Add(model, mark);
        foreach (PictureWords text in words)
            Add(model, text);
        if (model.Series.Count == 0)
            model.Series.Add(new ScatterSeries { RenderInLegend = false });
        return new Panel(model, Aspect(model, inside * frameHeight / frameWidth, width));
    }

    /// <summary>
    /// Height over width at which pixels are square: the space for the legend is known only after the plot was
    /// laid out.
    /// </summary>
    private static double Aspect(PlotModel model, double wanted, double width)
    {
        double height = wanted + Top + Bottom;
        ((IPlotModel)model).Update(true);
        ((IPlotModel)model).Render(new PlotSvg("layout"), new OxyRect(0, 0, width, height));
        return (height + wanted - model.PlotArea.Height) / width;
    }

    private static void AddKey(PlotModel model, MapPicture picture)
    {
        if (!(picture.High > picture.Low))
            return;
        OxyPalette greys = OxyPalette.Interpolate(
            MapBitmap.Greys,
            OxyColor.FromRgb(0, 0, 0),
            OxyColor.FromRgb(255, 255, 255)
        );
        string unit = QuantityText.Unit(picture.Unit);
        Axis key = picture.Logarithmic
            ? new LogarithmicColorAxis
            {
                Palette = greys,
                LabelFormatter = AxisLabels.Power,
                PowerPadding = false,
            }
            : new LinearColorAxis { Palette = greys, LabelFormatter = AxisLabels.Plain };
        (key.Position, key.Minimum, key.Maximum, key.Title) = (AxisPosition.Right, picture.Low, picture.High, unit);
        (key.FontSize, key.TitleFontSize, key.AxisDistance, key.AxisTitleDistance, key.IntervalLength) = (
            7.5,
            7.5,
            6,
            4,
            36
        );
        (key.TextColor, key.TitleColor, key.TicklineColor) = (Palette.Ink, Palette.Ink, Palette.Faint);
        model.Axes.Add(key);
    }

    private static void AddClasses(PlotModel model, MapPicture picture)
    {
        for (int k = 0; k < picture.Classes.Count; k++)
        {
            float value = k + 1;
            if (!picture.Values.Contains(value))
                continue;
            model.Series.Add(
                new ScatterSeries
                {
                    Title = picture.Classes[k],
                    MarkerType = MarkerType.Square,
                    MarkerSize = 3.2,
                    MarkerFill = MapBitmap.ClassColour(k),
                    RenderInLegend = true,
                }
            );
        }
    }

    private static void Add(PlotModel model, PictureMarks mark)
    {
        // Points of a scatter series would take the colours of the key.
        var series = new LineSeries
        {
            Title = mark.Title,
            LineStyle = LineStyle.None,
            MarkerType = mark.Marker,
            MarkerSize = mark.Size,
            MarkerFill = mark.Filled ? mark.Colour : OxyColors.Transparent,
            MarkerStroke = mark.Colour,
            MarkerStrokeThickness = 1.6,
            RenderInLegend = true,
        };
        series.Points.AddRange(mark.Places.Select(p => new DataPoint(p.X, p.Y)));
        model.Series.Add(series);
    }

    private static void Add(PlotModel model, PictureWords words) =>
        model.Annotations.Add(
            new TextAnnotation
            {
                Text = words.Text,
                TextPosition = new DataPoint(words.X, words.Y),
                TextColor = Palette.Ink,
                FontSize = 8,
                StrokeThickness = 0,
                Background = OxyColor.FromAColor(215, Palette.Paper),
                Padding = new OxyThickness(3, 1, 3, 1),
                TextHorizontalAlignment = HorizontalAlignment.Center,
                TextVerticalAlignment = VerticalAlignment.Middle,
            }
        );
}
