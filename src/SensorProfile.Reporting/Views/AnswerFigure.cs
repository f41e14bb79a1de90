using System.Text;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Html;

namespace SensorProfile.Reporting.Views;

/// <summary>The curves of an answer, for a page that shows them as they change.</summary>
internal static class AnswerFigure
{
    /// <summary>The figure as markup; empty for an answer without one.</summary>
    /// <param name="reply">The answer.</param>
    /// <param name="number">Its number on the page, which keeps its element ids distinct from those of other figures.</param>
    public static string Html(AnswerDocument reply, int number)
    {
        if (reply.Figure?.Invoke() is not { } figure)
            return "";
        StringBuilder page = new();
        HtmlBlocks.Append(page, figure with { Number = number, Table = null });
        return page.ToString();
    }
}
