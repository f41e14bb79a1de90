namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>The terms of the black-level fit, and which of them the frames can separate.</summary>
/// <remarks>level = level₀ + a·(h − h̄) + b·(T − T̄) + f·[first after a pause] + Σ d_k·t_k: d_k is the rise per second
/// at the k-th temperature. A term is separable when at least 2 % of its variance remains after the other terms are
/// projected out (variance inflation below 50).</remarks>
internal sealed class BlackLevelDesign
{
    /// <summary>Names of the terms; the k-th rise with exposure is "rise-k".</summary>
    public const string Level = "level",
        Hour = "hour",
        Degree = "degree",
        First = "first",
        Rise = "rise-";

    private const double MinShare = 0.02,
        Dependent = 1e-9;
    private const double MinSpanHours = 0.05,
        MinSpanCelsius = 1;
    private const int MinFirst = 3;

    private readonly Dictionary<string, double> shares = [];

    private BlackLevelDesign(IReadOnlyList<string> names, IReadOnlyList<double[]> columns) =>
        (Names, Columns) = (names, columns);

    /// <summary>Names of the terms in the fit.</summary>
    public IReadOnlyList<string> Names { get; private init; }

    /// <summary>Design columns of the terms.</summary>
    public IReadOnlyList<double[]> Columns { get; private init; }

    /// <summary>Reasons why time or temperature is not a term at all; empty when both are.</summary>
    public IReadOnlyList<string> Missing { get; private init; } = [];

    /// <summary>Whether the frames separate this term from the others.</summary>
    public bool Tells(string name) =>
        shares.TryGetValue(name, out double share) && share >= MinShare && Names.Contains(name);

    /// <summary>Whether the term was a candidate.</summary>
    public bool Has(string name) => shares.ContainsKey(name);

    /// <summary>Chooses the terms for the frames.</summary>
    public static BlackLevelDesign Choose(IReadOnlyList<BlackLevelFrame> frames)
    {
        List<(string Name, double[] Column)> wanted = [(Level, [.. frames.Select(_ => 1.0)])];
        List<string> missing = [];
        foreach (int k in frames.Select(f => f.Series).OfType<int>().Distinct().Order())
            wanted.Add(($"{Rise}{k}", [.. frames.Select(f => f.Series == k ? f.EquivalentSeconds : 0)]));
        Add(
            frames.Select(f => f.TemperatureCelsius),
            MinSpanCelsius,
            Degree,
            "the temperature of some frames is unknown",
            "the sensor's temperature hardly changed"
        );
        Add(
            frames.Select(f => f.Hours),
            MinSpanHours,
            Hour,
            "the time of some frames is unknown",
            "all frames were taken within a few minutes"
        );
        if (frames.Count(f => f.First) >= MinFirst && frames.Count(f => !f.First) > frames.Count(f => f.First))
            wanted.Add((First, [.. frames.Select(f => f.First ? 1.0 : 0)]));

        List<(string Name, double[] Column)> kept = [];
        foreach ((string name, double[] column) in wanted)
            if (name == Level || ShareLeft(column, [.. kept.Select(k => k.Column)]) > Dependent)
                kept.Add((name, column));
        var design = new BlackLevelDesign([.. kept.Select(k => k.Name)], [.. kept.Select(k => k.Column)])
        {
            Missing = missing,
        };
        foreach ((string name, double[] column) in wanted)
            design.shares[name] =
                name == Level ? 1 : ShareLeft(column, [.. wanted.Where(w => w.Name != name).Select(w => w.Column)]);
        return design;

        void Add(IEnumerable<double?> values, double leastSpan, string name, string unknown, string still)
        {
            double?[] all = [.. values];
            if (all.Any(v => v is null))
                missing.Add($"{name}: {unknown}");
            else if (all.Max() - all.Min() < leastSpan)
                missing.Add($"{name}: {still}");
            else
                wanted.Add((name, [.. all.Select(v => v!.Value - all.Average()!.Value)]));
        }
    }

    /// <summary>
    /// Share of the variance of a column that remains after the others are projected out, by modified Gram–Schmidt.
    /// </summary>
    private static double ShareLeft(double[] column, IReadOnlyList<double[]> others)
    {
        double mean = column.Average(),
            variance = column.Sum(v => (v - mean) * (v - mean));
        if (!(variance > 0))
            return 0;
        List<double[]> basis = [];
        foreach (double[] other in others)
        {
            double before = Dot(other, other);
            double[] rest = Reduced(other, basis);
            double length = Math.Sqrt(Dot(rest, rest));
            if (before > 0 && length * length > Dependent * before)
                basis.Add([.. rest.Select(v => v / length)]);
        }
        double[] left = Reduced(column, basis);
        return Dot(left, left) / variance;
    }

    private static double[] Reduced(double[] column, List<double[]> basis)
    {
        double[] rest = [.. column];
        for (int pass = 0; pass < 2; pass++) // twice is enough (Giraud, Langou and Rozložník 2005)
            foreach (double[] direction in basis)
            {
                double along = Dot(rest, direction);
                for (int i = 0; i < rest.Length; i++)
                    rest[i] -= along * direction[i];
            }
        return rest;
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
