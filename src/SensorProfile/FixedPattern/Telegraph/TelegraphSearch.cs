namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>Pixels that jump between levels.</summary>
/// <param name="Tested">Pixels whose frames scatter enough to be worth the test.</param>
/// <param name="Fits">Those found, by index.</param>
internal sealed record TelegraphSearch(int Tested, IReadOnlyDictionary<int, TelegraphFit> Fits)
{
    private const double LargestChance = 0.01; // also where hardly a pixel was tested

    /// <summary>None.</summary>
    public static TelegraphSearch None { get; } = new(0, new Dictionary<int, TelegraphFit>());

    /// <summary>Judges the pixels tested.</summary>
    /// <remarks>Of all <paramref name="tested"/> pixels none but flickering ones may pass with more chance than stated
    /// for all: each gets its share of falseAlarms·pixels/10⁶. That
    /// is fair because being tested depends on the size of a pixel's scatter only, and for normal noise the division's
    /// r does not depend on that size.</remarks>
    /// <param name="tested">Pixels tested.</param>
    /// <param name="divided">Those with a division that <see cref="MayPass"/>.</param>
    /// <param name="pixels">Of the sensor.</param>
    /// <param name="falseAlarms">Per million pixels of the sensor.</param>
    public static TelegraphSearch Judge(
        int tested,
        IEnumerable<(int Pixel, TelegraphFit Fit)> divided,
        int pixels,
        double falseAlarms
    )
    {
        double limit = Math.Log(Math.Min(LargestChance, falseAlarms * 1e-6 * pixels / Math.Max(1, tested)));
        return new(tested, divided.Where(d => d.Fit.LogChance < limit).ToDictionary(d => d.Pixel, d => d.Fit));
    }

    /// <summary>Whether a division could pass if its pixel were the only one tested.</summary>
    public static bool MayPass(TelegraphFit fit) => fit.LogChance < Math.Log(LargestChance);
}
