using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.RowsAndColumns;

/// <summary>Finds boundaries between parts of the sensor read by different amplifiers, in one map.</summary>
internal static class SensorBoundaries
{
    /// <summary>Finds steps between columns (or rows), over the whole length or half of it.</summary>
    /// <param name="table">Means of the lines.</param>
    /// <param name="kind">Level, response or noise.</param>
    /// <param name="factor">Factor from the unit of the table to that of the result.</param>
    /// <param name="unit">Unit of the result.</param>
    public static IEnumerable<SensorBoundary> Find(LineTable table, PatternKind kind, double factor, string unit)
    {
        foreach (bool byRow in (bool[])[false, true])
        {
            IReadOnlyList<BoundarySearch.Found> whole = BoundarySearch.Find(table.Means(byRow, 1, 0));
            IReadOnlyList<BoundarySearch.Found>[] halves =
            [
                .. Enumerable
                    .Range(0, 2)
                    .Select(half => BoundarySearch.Find(BoundarySearch.Without(table.Means(byRow, 2, half), whole))),
            ];
            foreach (BoundarySearch.Found step in whole)
                if (!halves.Any(h => h.Any(s => Math.Abs(s.At - step.At) <= 1)))
                    yield return Boundary(step, "whole", 0);
            for (int half = 0; half < 2; half++)
                foreach (BoundarySearch.Found step in halves[half])
                    yield return Boundary(
                        step,
                        half == 0 ? "first half" : "second half",
                        whole.Where(s => Math.Abs(s.At - step.At) <= 1).Sum(s => s.Step)
                    );

            SensorBoundary Boundary(BoundarySearch.Found step, string part, double common) =>
                new(
                    byRow ? PatternDirection.Down : PatternDirection.Across,
                    step.At + 1,
                    part,
                    kind,
                    new(
                        (step.Step + common) * factor,
                        step.Uncertainty * factor,
                        unit,
                        byRow ? table.Width : table.Height,
                        "step fitted with a slope to the lines on either side"
                    ),
                    step.Chance
                );
        }
    }
}
