using SensorProfile.Profiles;

namespace SensorProfile.FixedPattern;

/// <summary>Defect lines and boundaries between parts of the sensor in one map.</summary>
internal static class SensorLines
{
    private static readonly int[] parts = [1, 2, 4];

    /// <summary>Columns and rows that stand out, each with the part of its length that does so most clearly.</summary>
    /// <param name="table">Means of the lines.</param> <param name="least">Least excess, in the unit of the table.</param> <param name="kind">"level" or "response".</param>
    /// <param name="factor">From the table's unit to the result's.</param> <param name="unit">Unit of the result.</param>
    public static IEnumerable<DefectLine> Defects(LineTable table, double least, string kind, double factor, string unit)
    {
        foreach (bool byRow in (bool[])[false, true])
        {
            var best = new SortedDictionary<int, (double Excess, double Sigma, int Count, int Part)>();
            foreach (int count in parts)
                for (int part = 0; part < count; part++)
                    foreach ((int line, double excess, double sigma) in LineOutliers.Of(table.Means(byRow, count, part), least))
                        if (!best.TryGetValue(line, out var known) || Math.Abs(excess) / sigma > Math.Abs(known.Excess) / known.Sigma) best[line] = (excess, sigma, count, part);
            foreach ((int line, (_, double sigma, int count, int part)) in best)
            {
                (int from, int to) = table.Extent(byRow, count, part);
                yield return new(byRow ? "row" : "column", line + 1, from + 1, to + 1, kind,
                    new(table.Excess(byRow, line, from, to) * factor, sigma * factor, unit, to - from + 1, "median of the line over that of the 8 lines on either side"));
            }
        }
    }

    /// <summary>Steps between columns (or rows), over the whole length or half of it.</summary>
    /// <param name="table">Means of the lines.</param> <param name="kind">"level", "response" or "noise".</param> <param name="factor">From the table's unit to the result's.</param> <param name="unit">Unit of the result.</param>
    public static IEnumerable<SensorBoundary> Boundaries(LineTable table, string kind, double factor, string unit)
    {
        foreach (bool byRow in (bool[])[false, true])
        {
            IReadOnlyList<BoundarySearch.Found> whole = BoundarySearch.Of(table.Means(byRow, 1, 0));
            IReadOnlyList<BoundarySearch.Found>[] halves = [.. Enumerable.Range(0, 2).Select(half => BoundarySearch.Of(BoundarySearch.Without(table.Means(byRow, 2, half), whole)))];
            foreach (BoundarySearch.Found step in whole)
                if (!halves.Any(h => h.Any(s => Math.Abs(s.At - step.At) <= 1))) yield return Boundary(step, "whole", 0);
            for (int half = 0; half < 2; half++)
                foreach (BoundarySearch.Found step in halves[half])
                    yield return Boundary(step, half == 0 ? "first half" : "second half", whole.Where(s => Math.Abs(s.At - step.At) <= 1).Sum(s => s.Step));

            SensorBoundary Boundary(BoundarySearch.Found step, string part, double common) => new(byRow ? "down" : "across", step.At + 1, part, kind,
                new((step.Step + common) * factor, step.Uncertainty * factor, unit, byRow ? table.Width : table.Height, "step fitted with a slope to the lines on either side"), step.Chance);
        }
    }
}
