namespace SensorProfile.Reporting.Plots.Drawing;

/// <summary>The range that an axis must show.</summary>
/// <param name="Low">Smallest value.</param>
/// <param name="High">Largest value, not below <paramref name="Low"/>.</param>
internal readonly record struct Span(double Low, double High)
{
    /// <summary>The range of finite values; 0…1 when there are none.</summary>
    public static Span Of(IEnumerable<double> values)
    {
        double low = double.PositiveInfinity,
            high = double.NegativeInfinity;
        foreach (double value in values.Where(double.IsFinite))
        {
            low = Math.Min(low, value);
            high = Math.Max(high, value);
        }
        return low <= high ? new Span(low, high) : new Span(0, 1);
    }

    /// <summary>The range of finite positive values, for a logarithmic axis; 1…10 when there are none.</summary>
    public static Span OfPositive(IEnumerable<double> values)
    {
        double[] positive = [.. values.Where(value => value > 0)];
        return positive.Length == 0 ? new Span(1, 10) : Of(positive);
    }

    /// <summary>The range extended so that it holds a value.</summary>
    public Span Including(double value) => new(Math.Min(Low, value), Math.Max(High, value));

    /// <summary>The range with a share of its length added at both ends; a range without length gets one.</summary>
    public Span Padded(double share)
    {
        double length = High - Low;
        if (length <= 1e-9 * Math.Max(Math.Abs(High), Math.Abs(Low)))
            length = Math.Max(1, Math.Abs(High) * 0.2);
        return new Span(Low - share * length, High + share * length);
    }

    /// <summary>
    /// The range extended to 1, 2 or 5 times a power of ten, and to whole decades where it would show fewer than two of
    /// them.
    /// </summary>
    public Span ToDecadeSteps()
    {
        var steps = new Span(Step(Low / 1.08, up: false), Step(High * 1.08, up: true));
        double decades = Math.Floor(Math.Log10(steps.High) + 1e-9) - Math.Ceiling(Math.Log10(steps.Low) - 1e-9);
        return decades >= 1
            ? steps
            : new Span(Math.Pow(10, Math.Floor(Math.Log10(Low))), Math.Pow(10, Math.Ceiling(Math.Log10(High) + 1e-9)));
    }

    private static double Step(double value, bool up)
    {
        double decade = Math.Pow(10, Math.Floor(Math.Log10(value)));
        double[] steps = [1, 2, 5, 10];
        return decade
            * (
                up
                    ? steps.First(step => step * decade >= value * (1 - 1e-9))
                    : steps.Last(step => step * decade <= value * (1 + 1e-9))
            );
    }
}
