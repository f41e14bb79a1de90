using System.Globalization;

namespace SensorProfile.Cli;

/// <summary>Lets people write <c>--ambient -8</c>: the parser would take −8 for an option.</summary>
internal static class NegativeNumbers
{
    public static string[] Bind(IReadOnlyList<string> arguments)
    {
        List<string> bound = [];
        foreach (string argument in arguments)
        {
            // a minus sign copied from a report
            string plain = argument.StartsWith('−') ? "-" + argument[1..] : argument;
            bool negative =
                plain.StartsWith('-')
                && double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
            if (
                negative
                && bound.Count > 0
                && bound[^1].StartsWith("--", StringComparison.Ordinal)
                && !bound[^1].Contains('=')
            )
                bound[^1] += "=" + plain;
            else
                bound.Add(argument);
        }
        return [.. bound];
    }
}
