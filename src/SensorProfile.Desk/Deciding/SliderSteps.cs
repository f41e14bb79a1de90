namespace SensorProfile.Desk.Deciding;

/// <summary>The values that the sliders stop at: round numbers, closer together where they matter more.</summary>
internal static class SliderSteps
{
    public static readonly IReadOnlyList<double> Exposures =
    [
        1,
        2,
        5,
        10,
        15,
        20,
        30,
        45,
        60,
        90,
        120,
        150,
        180,
        240,
        300,
        360,
        420,
        480,
        600,
        720,
        900,
        1200,
        1500,
        1800,
    ];

    public static readonly IReadOnlyList<double> Skies =
    [
        0.01,
        0.02,
        0.03,
        0.05,
        0.07,
        0.1,
        0.15,
        0.2,
        0.3,
        0.5,
        0.7,
        1,
        1.5,
        2,
        3,
        5,
        7,
        10,
        15,
        20,
        30,
        50,
    ];

    public static readonly IReadOnlyList<double> Lights =
    [
        5,
        10,
        15,
        20,
        25,
        30,
        40,
        50,
        60,
        80,
        100,
        120,
        150,
        200,
        250,
        300,
        400,
        500,
        750,
        1000,
    ];

    public static readonly IReadOnlyList<double> Dithers =
    [
        1,
        2,
        3,
        4,
        5,
        6,
        8,
        10,
        12,
        15,
        20,
        25,
        30,
        40,
        50,
        75,
        100,
    ];

    public static readonly IReadOnlyList<double> Air = [.. Enumerable.Range(-20, 56).Select(c => (double)c)];

    public static readonly IReadOnlyList<double> Reaches = [.. Enumerable.Range(1, 10).Select(i => 5.0 * i)];

    public static readonly IReadOnlyList<double> Losses = [0.5, 1, 2, 3, 4, 5, 6, 8, 10, 15, 20];

    /// <summary>The step nearest to a value.</summary>
    public static int IndexOf(IReadOnlyList<double> steps, double value) =>
        Enumerable.Range(0, steps.Count).MinBy(i => Math.Abs(steps[i] - value));
}
