using SensorProfile.Fitting.Statistics;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.RawCheck;

/// <summary>
/// Codes that occur about twice as often as their neighbours, or hardly at all: the mark of a digital multiplication
/// after the converter.
/// </summary>
/// <remarks>A factor below 1 folds two codes into one every 1/(1 − factor) codes; a factor above 1 leaves gaps. A
/// channel that shows either has its own gain
/// and must not be pooled with the others. Only a broad histogram (a flat) can show it.</remarks>
/// <param name="Tested">Codes whose neighbours have enough counts to judge them by.</param>
/// <param name="Doubled">Of these, codes with more than 1.6 times the count of their neighbours, by more than 5
/// standard errors.</param>
/// <param name="Missing">Of these, codes with less than 0.4 times the count of their neighbours, by more than 5
/// standard errors.</param>
/// <param name="DoubledSpacing">Mean distance between doubled codes, in steps; not a number with fewer than
/// two.</param>
/// <param name="MissingSpacing">Mean distance between missing codes, in steps; not a number with fewer than
/// two.</param>
internal sealed record CodePopulation(
    int Tested,
    int Doubled,
    int Missing,
    double DoubledSpacing,
    double MissingSpacing
)
{
    // neighbours on either side; their median tolerates odd codes among them
    private const int Reach = 4;
    private const double MinExpected = 60; // counts: below, a factor of 1.6 is not 5 standard errors

    /// <summary>
    /// Whether there are enough odd codes to mean scaling: at least 5 doubled or missing ones, and at least 2 % of
    /// those tested.
    /// </summary>
    public bool LooksScaled => Math.Max(Doubled, Missing) >= Math.Max(5, 0.02 * Tested);

    /// <summary>Judges every code of one channel against the median of its eight neighbours.</summary>
    /// <param name="codes">Histogram of the channel, preferably over several flats.</param>
    /// <param name="step">Step and offset of the codes.</param>
    public static CodePopulation Count(IntegerHistogram codes, CodeStep step)
    {
        List<int> doubled = [],
            missing = [];
        int tested = 0;
        Span<long> around = stackalloc long[2 * Reach];
        int first = codes.Minimum + (step.Offset - codes.Minimum % step.Step + step.Step) % step.Step;
        for (int code = first + Reach * step.Step; code <= codes.Maximum - Reach * step.Step; code += step.Step)
        {
            double expected = Neighbours(codes, code, step.Step, around);
            if (expected < MinExpected)
                continue;
            tested++;
            double excess = codes[code] - expected,
                error = Math.Sqrt(expected * (1 + Math.PI / 2 / around.Length));
            if (codes[code] > 1.6 * expected && excess > 5 * error)
                doubled.Add(code);
            else if (codes[code] < 0.4 * expected && excess < -5 * error)
                missing.Add(code);
        }
        return new CodePopulation(
            tested,
            doubled.Count,
            missing.Count,
            Spacing(doubled, step.Step),
            Spacing(missing, step.Step)
        );
    }

    private static double Neighbours(IntegerHistogram codes, int code, int step, Span<long> around)
    {
        for (int k = 1; k <= Reach; k++)
        {
            around[2 * k - 2] = codes[code - k * step];
            around[2 * k - 1] = codes[code + k * step];
        }
        around.Sort();
        return (around[Reach - 1] + around[Reach]) / 2.0;
    }

    /// <summary>
    /// Mean spacing of the codes. Flats at only a few levels leave wide gaps between their humps that are not part of
    /// the comb, so distances beyond twice the median are left out.
    /// </summary>
    private static double Spacing(List<int> codes, int step)
    {
        if (codes.Count < 2)
            return double.NaN;
        double[] distances = [.. codes.Zip(codes.Skip(1), (a, b) => (double)(b - a) / step)];
        double median = OrderStatistics.Median([.. distances]);
        return distances.Where(d => d <= 2 * median).Average();
    }
}
