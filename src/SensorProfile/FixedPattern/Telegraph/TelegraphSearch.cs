namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>Pixels that jump between levels.</summary>
/// <param name="Tested">Pixels whose frames scatter enough to be worth the test.</param>
/// <param name="Fits">The pixels found, by index.</param>
internal sealed record TelegraphSearch(int Tested, IReadOnlyDictionary<int, TelegraphFit> Fits)
{
    private const double LargestChance = 0.01; // also when hardly any pixels were tested

    /// <summary>A search that found nothing.</summary>
    public static TelegraphSearch None { get; } = new(0, new Dictionary<int, TelegraphFit>());

    /// <summary>Decides which of the tested pixels count.</summary>
    /// <remarks>Each of the <paramref name="tested"/> pixels gets an equal share of the false alarms allowed for all,
    /// falseAlarms·pixels/10⁶. That is fair because only the size of its scatter decides whether a pixel is tested, and
    /// for normal noise the r of a division does not depend on that size.</remarks>
    /// <param name="tested">Number of pixels tested.</param>
    /// <param name="divided">Pixels with a division that <see cref="MayPass"/>.</param>
    /// <param name="pixels">Number of pixels of the sensor.</param>
    /// <param name="falseAlarms">False alarms allowed per million pixels of the sensor.</param>
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

    /// <summary>Whether a division would pass if its pixel were the only one tested.</summary>
    public static bool MayPass(TelegraphFit fit) => fit.LogChance < Math.Log(LargestChance);
}
