using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace SensorProfile.Tests.Profiles;

/// <summary>
/// The summaries of records as plain text, read from the documentation file that the compiler writes beside the
/// library.
/// </summary>
internal static partial class CodeSummaries
{
    /// <summary>Keyed "Type" and "Type.field" (camelCase), sorted.</summary>
    public static SortedDictionary<string, string> Of(IEnumerable<Type> records)
    {
        string path = Path.ChangeExtension(typeof(Measurement).Assembly.Location, ".xml");
        var members = XDocument
            .Load(path)
            .Descendants("member")
            .ToDictionary(member => member.Attribute("name")!.Value);
        var texts = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (Type record in records)
        {
            XElement type = members[$"T:{record.FullName}"];
            texts[record.Name] = Text(type.Element("summary")!);
            foreach (PropertyInfo property in ProfileProperties.Find(record))
            {
                XElement? parameter = type.Elements("param")
                    .FirstOrDefault(p => p.Attribute("name")!.Value == property.Name);
                XElement described = parameter ?? Summary(members, $"P:{record.FullName}.{property.Name}");
                texts[$"{record.Name}.{JsonNamingPolicy.CamelCase.ConvertName(property.Name)}"] = Text(described);
            }
        }
        return texts;
    }

    private static XElement Summary(Dictionary<string, XElement> members, string name)
    {
        XElement member = members[name];
        return member.Element("inheritdoc")?.Attribute("cref") is { } other
            ? Summary(members, other.Value)
            : member.Element("summary")!;
    }

    private static string Text(XElement element)
    {
        IEnumerable<string> parts = element
            .Nodes()
            .Select(node =>
                node switch
                {
                    XElement { Name.LocalName: "see" } link => LastName(link.Attribute("cref")!.Value),
                    XElement { Name.LocalName: "paramref" } link => LastName(link.Attribute("name")!.Value),
                    XElement other => other.Value,
                    _ => node.ToString(SaveOptions.DisableFormatting),
                }
            );
        return Space().Replace(string.Concat(parts), " ").Trim();
    }

    private static string LastName(string reference) =>
        JsonNamingPolicy.CamelCase.ConvertName(reference[(reference.LastIndexOf('.') + 1)..]);

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
