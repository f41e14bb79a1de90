using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Defects;
using Xunit.Abstractions;
using static System.FormattableString;

namespace SensorProfile.Tests.FixedPattern;

/// <summary>A table of completeness and purity against the size of a defect, written to the test's output.</summary>
internal static class DefectCurve
{
    /// <summary>Heads the table.</summary>
    public static string Heading(string size) => $"{size, 16}   true   found   complete   pure   false";

    /// <summary>Writes a line.</summary>
    /// <returns>Share of the true ones that were found.</returns>
    public static double Line(ITestOutputHelper output, double size, HashSet<int> real, int[] found, string beside = "")
    {
        int right = found.Count(real.Contains);
        double complete = real.Count == 0 ? 1 : (double)right / real.Count,
            pure = found.Length == 0 ? 1 : (double)right / found.Length;
        output.WriteLine(
            Invariant($"{size, 16:0.##} {real.Count, 6} {found.Length, 7} {complete, 10:0.000} ")
                + Invariant($"{pure, 6:0.000} {found.Length - right, 7}   {beside}")
        );
        return complete;
    }

    /// <summary>Pixels of a class.</summary>
    public static int[] Of(PatternResult result, DefectClass kind) =>
        [.. Enumerable.Range(0, result.Defects.Classes.Length).Where(i => result.Defects.Classes[i].HasFlag(kind))];
}
