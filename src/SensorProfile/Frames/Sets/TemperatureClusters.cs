namespace SensorProfile.Frames.Sets;

/// <summary>Splits the frames of one series into sets of similar temperature.</summary>
/// <remarks>
/// Two steps, both exact (fewest parts, then least sum of squares) under one rule: every reading of a part lies within
/// the tolerance of the part's mean. First the series is cut in time into runs, so that a drift is cut where it has
/// gone too far and readings that jump back and forth stay together. Then runs of similar level are pooled, so that
/// frames of another night at the same temperature join. Since the mean binds every member, differences cannot add up
/// along a chain. Readings whose set temperatures differ by more than the tolerance are kept apart if the readings
/// differ by that much as well.
/// </remarks>
internal static class TemperatureClusters
{
    private const double Rounding = 1e-9; // °C; readings come as decimal fractions

    /// <summary>The parts, coldest first; each in the given order.</summary>
    /// <param name="frames">Frames ordered by time, all with a temperature.</param>
    /// <param name="toleranceCelsius">Largest distance from a part's mean, °C.</param>
    public static IReadOnlyList<IReadOnlyList<Frame>> Find(IReadOnlyList<Frame> frames, double toleranceCelsius)
    {
        List<Part> single =
        [
            .. frames.Select(
                (frame, index) => Part.Of(index, frame.TemperatureCelsius!.Value, frame.SetTemperatureCelsius)
            ),
        ];
        List<Part> runs = Partition(single, toleranceCelsius);
        return
        [
            .. PartitionByLevel(runs, toleranceCelsius)
                .Select(part => (IReadOnlyList<Frame>)[.. part.Indices.Order().Select(i => frames[i])]),
        ];
    }

    /// <summary>
    /// Groups mean temperatures by the same rule, without regard to time: the indices of each group, coldest first.
    /// </summary>
    public static IReadOnlyList<IReadOnlyList<int>> Levels(
        IReadOnlyList<double> temperatures,
        double toleranceCelsius
    ) =>
        [
            .. PartitionByLevel([.. temperatures.Select((t, index) => Part.Of(index, t, null))], toleranceCelsius)
                .Select(part => (IReadOnlyList<int>)[.. part.Indices.Order()]),
        ];

    private static List<Part> PartitionByLevel(List<Part> parts, double tolerance)
    {
        parts.Sort((a, b) => a.Mean != b.Mean ? a.Mean.CompareTo(b.Mean) : a.Indices[0].CompareTo(b.Indices[0]));
        return Partition(parts, tolerance);
    }

    /// <summary>
    /// Cuts a sequence into the fewest contiguous parts that keep the rule; among those cuts, the one with the least
    /// scatter.
    /// </summary>
    private static List<Part> Partition(List<Part> sequence, double tolerance)
    {
        int n = sequence.Count;
        (int Parts, double Scatter)[] best = new (int, double)[n + 1];
        int[] start = new int[n + 1];
        for (int end = 1; end <= n; end++)
        {
            best[end] = (int.MaxValue, 0);
            Spread spread = new();
            for (int first = end - 1; first >= 0; first--)
            {
                spread.Add(sequence[first]);
                if (spread.High - spread.Low > 2 * tolerance + Rounding)
                    break; // longer parts are only wider
                if (!spread.Keeps(tolerance))
                    continue;
                (int Parts, double Scatter) candidate = (
                    best[first].Parts + 1,
                    best[first].Scatter + spread.SumOfSquares
                );
                if (
                    candidate.Parts < best[end].Parts
                    || (candidate.Parts == best[end].Parts && candidate.Scatter < best[end].Scatter - Rounding)
                )
                    (best[end], start[end]) = (candidate, first);
            }
        }
        List<Part> parts = [];
        for (int end = n; end > 0; end = start[end])
            parts.Add(Part.Merge(sequence.GetRange(start[end], end - start[end])));
        parts.Reverse();
        return parts;
    }

    private sealed record Part(
        IReadOnlyList<int> Indices,
        double Sum,
        double SumOfSquares,
        double Low,
        double High,
        double SetLow,
        double SetHigh
    )
    {
        public static Part Of(int index, double temperature, double? set) =>
            new(
                [index],
                temperature,
                temperature * temperature,
                temperature,
                temperature,
                set ?? double.PositiveInfinity,
                set ?? double.NegativeInfinity
            );

        public double Mean => Sum / Indices.Count;

        public static Part Merge(List<Part> parts) =>
            parts.Count == 1
                ? parts[0]
                : new Part(
                    [.. parts.SelectMany(p => p.Indices)],
                    parts.Sum(p => p.Sum),
                    parts.Sum(p => p.SumOfSquares),
                    parts.Min(p => p.Low),
                    parts.Max(p => p.High),
                    parts.Min(p => p.SetLow),
                    parts.Max(p => p.SetHigh)
                );
    }

    private sealed class Spread
    {
        private int count;
        private double sum,
            sumOfSquares,
            setLow = double.PositiveInfinity,
            setHigh = double.NegativeInfinity;

        public double Low { get; private set; } = double.PositiveInfinity;

        public double High { get; private set; } = double.NegativeInfinity;

        public double SumOfSquares => Math.Max(0, sumOfSquares - sum * sum / count);

        public void Add(Part part)
        {
            count += part.Indices.Count;
            sum += part.Sum;
            sumOfSquares += part.SumOfSquares;
            (Low, High) = (Math.Min(Low, part.Low), Math.Max(High, part.High));
            (setLow, setHigh) = (Math.Min(setLow, part.SetLow), Math.Max(setHigh, part.SetHigh));
        }

        public bool Keeps(double tolerance)
        {
            double mean = sum / count;
            if (High - mean > tolerance + Rounding || mean - Low > tolerance + Rounding)
                return false;
            return !(setHigh - setLow > tolerance + Rounding && High - Low > tolerance + Rounding);
        }
    }
}
