using System.Globalization;
using System.Text;

namespace SensorProfile.Tests.HouseRules;

/// <summary>The picture of the rooms in DEVELOPERS.md, made from what the compiler sees.</summary>
/// <remarks>
/// Rooms that follow each other in the order and share their first name are one box. An arrow says "uses"; it is left
/// out
/// where a longer way says the same, and so is the root, which every room may use.
/// </remarks>
internal static class RoomGraph
{
    /// <summary>The graph in Mermaid's words, without the fence around it.</summary>
    public static string Of(IEnumerable<RoomArrow> arrows)
    {
        IReadOnlyDictionary<string, string> boxes = Boxes();
        ILookup<string, string> uses = arrows
            .Where(a => a.To != Rooms.Root && a.From != Rooms.Root)
            .Select(a => (From: boxes[a.From], To: boxes[a.To]))
            .Where(a => a.From != a.To)
            .Distinct()
            .ToLookup(a => a.From, a => a.To);
        var text = new StringBuilder("graph TD\n");
        string[] names = [.. boxes.Values.Distinct().Reverse()];
        foreach (string from in names)
        {
            foreach (string to in names.Where(n => uses[from].Contains(n)))
            {
                if (!uses[from].Any(other => other != to && Reaches(uses, other, to)))
                    text.Append(CultureInfo.InvariantCulture, $"    {Id(from)}[{from}] --> {Id(to)}[{to}]\n");
            }
        }
        return text.ToString();
    }

    private static Dictionary<string, string> Boxes()
    {
        var boxes = new Dictionary<string, string>();
        string box = "",
            last = "";
        foreach (string room in RoomOrder.Rooms.Where(r => r != Rooms.Root))
        {
            string first = room.Split('/')[0];
            if (first != last)
                box = boxes.ContainsValue(first) ? room : first;
            last = first;
            boxes[room] = box;
        }
        return boxes;
    }

    private static bool Reaches(ILookup<string, string> uses, string from, string to) =>
        uses[from].Any(next => next == to || Reaches(uses, next, to));

    private static string Id(string box) => box.Replace("/", "", StringComparison.Ordinal);
}
