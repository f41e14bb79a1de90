namespace SensorProfile.FixedPattern;

/// <summary>Pixels that jump between levels.</summary>
/// <param name="Tested">Pixels whose frames scatter enough to be worth the test.</param>
/// <param name="Fits">Those found, by index.</param>
internal sealed record LevelPixels(int Tested, IReadOnlyDictionary<int, LevelFit> Fits)
{
    private const double LargestChance = 0.01;           // also where hardly a pixel was tested

    /// <summary>None.</summary>
    public static LevelPixels None { get; } = new(0, new Dictionary<int, LevelFit>());

    /// <summary>Judges the pixels tested.</summary>
    /// <remarks>Of <paramref name="suspects"/> tested pixels none but flickering ones may pass with more chance than stated for all: each gets its share of falseAlarms·pixels/10⁶. That
    /// is fair because being tested depends on the size of a pixel's scatter only, and for normal noise the division's r does not depend on that size.</remarks>
    /// <param name="suspects">Pixels tested with their best divisions.</param> <param name="pixels">Of the sensor.</param>
    /// <param name="falseAlarms">Per million pixels of the sensor.</param>
    public static LevelPixels Of(IEnumerable<(int Pixel, LevelFit? Fit)> suspects, int pixels, double falseAlarms)
    {
        (int Pixel, LevelFit? Fit)[] all = [.. suspects];
        double limit = Math.Log(Math.Min(LargestChance, falseAlarms * 1e-6 * pixels / Math.Max(1, all.Length)));
        return new(all.Length, all.Where(s => s.Fit?.LogChance < limit).ToDictionary(s => s.Pixel, s => s.Fit!));
    }
}
