namespace SensorProfile.Desk.Deciding;

/// <summary>The values that the sliders stop at: round numbers, closer together where they matter more.</summary>
internal static class SliderSteps
{
    /// <summary>Exposures, s: whole minutes from three minutes on.</summary>
    public static readonly IReadOnlyList<double> Exposures =
    [
        .. Decades(1, 30, [1, 1.5, 2, 3, 5]),
        .. new double[] { 45, 60, 90, 120, 150 },
        .. new double[] { 3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 25, 30 }.Select(minutes => 60 * minutes),
    ];

    public static readonly IReadOnlyList<double> Skies = Decades(0.01, 50, [1, 1.5, 2, 3, 5, 7]);

    public static readonly IReadOnlyList<double> Lights = Decades(5, 1000, [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8]);

    public static readonly IReadOnlyList<double> Dithers =
    [
        1,
        .. Decades(2, 100, [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8]).Where(n => n == Math.Round(n)),
    ];

    public static readonly IReadOnlyList<double> Air = [.. Enumerable.Range(-20, 56).Select(c => (double)c)];

    public static readonly IReadOnlyList<double> Reaches = [.. Enumerable.Range(1, 10).Select(i => 5.0 * i)];

    public static readonly IReadOnlyList<double> Losses = [0.5, 1, 2, 3, 4, 5, 6, 8, 10, 15, 20];

    /// <summary>The step nearest to a value.</summary>
    public static int IndexOf(IReadOnlyList<double> steps, double value) =>
        Enumerable.Range(0, steps.Count).MinBy(i => Math.Abs(steps[i] - value));

    /// <summary>The same digits in every decade between two ends.</summary>
    private static double[] Decades(double low, double high, double[] digits) =>
        [
            .. from power in Enumerable.Range(-2, 6)
            from digit in digits
            // in decimal arithmetic, so that a step reads 0.15 and not 0.15000000000000002
            let step = (double)((decimal)digit * (decimal)Math.Pow(10, power))
            where step >= low && step <= high
            select step,
        ];
}
