using SensorProfile.FixedPattern.Input;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Prediction;

/// <summary>
/// A mode as a smaller camera would show it: evenly spread pairs of rows and columns of every dark, in memory.
/// </summary>
/// <remarks>
/// Pairs begin at an even row and column, so that a colour filter keeps its phase; the picture as a whole keeps its
/// shape, and with it the glow.
/// </remarks>
internal static class ThinnedCamera
{
    /// <summary>Number of pixels kept of a large frame.</summary>
    public const int Pixels = 80_000;

    /// <summary>
    /// The small camera; frames of fewer pixels are kept whole. Null when a frame is less than 2 pixels wide or high.
    /// </summary>
    public static PatternInput? Thin(PatternInput input)
    {
        if (input.Width < 2 || input.Height < 2)
            return null;
        double share = Math.Min(1, Math.Sqrt((double)Pixels / input.Pixels));
        int[] columns = Kept(input.Width, share),
            rows = Kept(input.Height, share);
        return input with
        {
            Missing = null, // another's samples stand there, which thinning takes for a pixel like any
            Width = columns.Length,
            Height = rows.Length,
            Series =
            [
                .. input.Series.Select(s =>
                    s with
                    {
                        Exposures =
                        [
                            .. s.Exposures.Select(e =>
                                e with
                                {
                                    Frames = Thinned(e.Frames, rows, columns, input.Walk),
                                }
                            ),
                        ],
                    }
                ),
            ],
            Unlit = input.Unlit is { } unlit
                ? new PixelMoments(
                    columns.Length,
                    rows.Length,
                    unlit.Frames,
                    Thinned(unlit.Mean, input.Width, rows, columns),
                    unlit.Variance.Length == 0 ? [] : Thinned(unlit.Variance, input.Width, rows, columns)
                )
                : null,
            UnlitSets = [],
            Lines = Thinned(input.Lines, rows, columns),
            TestLevels = false,
            Quick = false,
        };
    }

    /// <summary>Rows or columns kept, ascending, in pairs.</summary>
    private static int[] Kept(int length, double share)
    {
        if (share >= 1)
            return [.. Enumerable.Range(0, length)];
        int pairs = Math.Clamp((int)Math.Round(share * length / 2), 1, length / 2);
        return [.. Enumerable.Range(0, 2 * pairs).Select(i => SampledRows.RowOf(i, pairs, length))];
    }

    private static IFrameSamples[] Thinned(
        IReadOnlyList<IFrameSamples> frames,
        int[] rows,
        int[] columns,
        WalkOptions walk
    ) =>
        [
            .. frames
                .AsParallel()
                .AsOrdered()
                .WithDegreeOfParallelism(Math.Clamp(walk.Threads, 1, 512))
                .WithCancellation(walk.Cancellation)
                .Select(f => Thinned(f, rows, columns)),
        ];

    private static InMemorySamples Thinned(IFrameSamples frame, int[] rows, int[] columns)
    {
        var kept = new ushort[rows.Length * columns.Length];
        var pair = new ushort[2 * frame.Width];
        for (int r = 0; r < rows.Length; r++)
        {
            bool together = r + 1 < rows.Length && rows[r + 1] == rows[r] + 1;
            Span<ushort> read = pair.AsSpan(0, (together ? 2 : 1) * frame.Width);
            frame.ReadRows(rows[r], read);
            for (int line = 0; line < (together ? 2 : 1); line++)
            for (int c = 0; c < columns.Length; c++)
                kept[(r + line) * columns.Length + c] = read[line * frame.Width + columns[c]];
            if (together)
                r++;
        }
        return new(frame.Name, columns.Length, rows.Length, kept);
    }

    /// <summary>The defect lines that are kept, with their numbers and ends in the small camera.</summary>
    private static DefectLine[] Thinned(IReadOnlyList<DefectLine> lines, int[] rows, int[] columns)
    {
        List<DefectLine> kept = [];
        foreach (DefectLine line in lines)
        {
            (int[] across, int[] along) = line.Direction == LineDirection.Row ? (rows, columns) : (columns, rows);
            int number = Array.BinarySearch(across, line.Number - 1),
                from = along.Count(i => i < line.From - 1),
                to = along.Count(i => i < line.To);
            if (number >= 0 && to > from)
                kept.Add(line with { Number = number + 1, From = from + 1, To = to });
        }
        return [.. kept];
    }

    private static float[] Thinned(float[] map, int width, int[] rows, int[] columns)
    {
        var kept = new float[rows.Length * columns.Length];
        for (int r = 0; r < rows.Length; r++)
        for (int c = 0; c < columns.Length; c++)
            kept[r * columns.Length + c] = map[rows[r] * width + columns[c]];
        return kept;
    }
}
