using System.Globalization;
using System.Text;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Html;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Views;

/// <summary>A plot of the report as a separate file, to download.</summary>
/// <param name="Name">"figure-3.svg".</param>
/// <param name="Label">"Figure 3".</param>
/// <param name="Table">Table of the results that holds its numbers; null when there is none.</param>
internal sealed record FigureFile(string Name, string Label, string? Table)
{
    private const double DrawnWidth = 640;

    private readonly Func<string> draw = () => "";

    private FigureFile(string name, string label, string? table, Func<string> draw)
        : this(name, label, table) => this.draw = draw;

    /// <summary>The files of a figure, one for each of its panels.</summary>
    public static IEnumerable<FigureFile> Of(FigureBlock figure)
    {
        for (int i = 0; i < figure.Panels.Count; i++)
        {
            Panel panel = figure.Panels[i];
            string part = figure.Panels.Count > 1 ? ((char)('a' + i)).ToString() : "";
            yield return new FigureFile(
                string.Create(CultureInfo.InvariantCulture, $"figure-{figure.Number}{part}.svg"),
                string.Create(CultureInfo.InvariantCulture, $"Figure {figure.Number}{part}"),
                i == 0 ? figure.Table : null,
                () => Draw(panel, figure.Caption)
            );
        }
    }

    /// <summary>The drawing, with its colours embedded.</summary>
    public byte[] Svg() => Encoding.UTF8.GetBytes(draw());

    private static string Draw(Panel panel, string caption)
    {
        string drawing = SvgPlot.Text(panel, DrawnWidth, 1, "f", "figure", Markup.Escape(caption));
        int head = drawing.IndexOf('>', StringComparison.Ordinal) + 1;
        string colours = string.Join(
            ';',
            Palette.CssNames.Select(c => $"--{c.Value}:#{c.Key.R:x2}{c.Key.G:x2}{c.Key.B:x2}")
        );
        return drawing.Insert(
            head,
            $"<style>svg{{{colours};background:#fff;font-family:\"DejaVu Sans\",Verdana,sans-serif}}</style>"
        );
    }
}
