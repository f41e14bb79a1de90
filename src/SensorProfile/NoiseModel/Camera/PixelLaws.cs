using SensorProfile.Profiles.Pattern;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// Doubling temperature of a pixel from its dark rate, interpolated between the measured classes; below the slowest
/// class, that of the typical pixel.
/// </summary>
/// <param name="typical">Doubling temperature of the typical pixel at the reference temperature, °C.</param>
/// <param name="classes">Measured classes; may be empty, then every pixel follows the typical law.</param>
/// <param name="deviate">Standard normal deviate by which all class values are shifted together.</param>
internal sealed class PixelLaws(double typical, IReadOnlyList<DoublingByRate> classes, double deviate = 0)
{
    private const double MinShare = 1.0 / 3,
        UnmeasuredSpread = 0.15;

    private readonly double slowest = classes.Where(IsMeasured).Select(c => c.RateFrom).DefaultIfEmpty(0).Min();
    private readonly (double LogRate, double Doubling, double Spread)[] known =
    [
        .. classes
            .Where(IsMeasured)
            .Select(c =>
                (
                    Math.Log(Middle(c)),
                    Math.Max(c.Doubling.Value + deviate * c.Doubling.StandardUncertainty, 0.5),
                    c.Spread
                )
            )
            .OrderBy(c => c.Item1),
    ];

    /// <summary>Doubling temperature of the typical pixel, °C.</summary>
    internal double Typical => typical;

    /// <summary>
    /// Doubling temperature and its spread over the pixels, °C, at a rate in e-/px/s at the reference temperature.
    /// </summary>
    internal (double Doubling, double Spread) At(double rate)
    {
        if (known.Length == 0 || rate <= slowest)
            return (typical, 0);
        double log = Math.Log(rate);
        int next = 0;
        while (next < known.Length && !(known[next].LogRate >= log))
            next++;
        if (next == known.Length)
            return (known[^1].Doubling, known[^1].Spread);
        if (next == 0)
            return (known[0].Doubling, known[0].Spread);
        double part = (log - known[next - 1].LogRate) / (known[next].LogRate - known[next - 1].LogRate);
        return (
            known[next - 1].Doubling + part * (known[next].Doubling - known[next - 1].Doubling),
            known[next - 1].Spread + part * (known[next].Spread - known[next - 1].Spread)
        );
    }

    /// <summary>
    /// The classes whose laws represent their pixels: all hot classes, and those slower ones in which enough pixels
    /// have a law of their own.
    /// </summary>
    /// <remarks>
    /// Among faint pixels, only those with a pronounced temperature dependence get a law: a few of them say nothing
    /// about the rest.
    /// </remarks>
    /// <param name="pattern">Laws and counts at the reference temperature.</param>
    /// <param name="hotAbove">Rate above which a pixel is hot, e-/px/s.</param>
    internal static IReadOnlyList<DoublingByRate> Representative(FixedPatternProfile pattern, double hotAbove)
    {
        IReadOnlyList<HotPixelCount> curve =
            pattern.ThermalCurve.Count > 0 ? pattern.ThermalCurve : pattern.HotPixelCurve;
        double? Counted(double rate) => curve.FirstOrDefault(c => Math.Abs(c.Threshold - rate) < 1e-6 * rate)?.Count;
        return
        [
            .. pattern.DoublingByRate.Where(c =>
                c.RateTo > hotAbove
                || (Counted(c.RateFrom) - Counted(c.RateTo) is double all && c.Pixels >= MinShare * all)
            ),
        ];
    }

    /// <summary>
    /// Stands in for laws that were not measured: the typical law for all pixels, known only to 15 % for hot ones.
    /// </summary>
    /// <remarks>
    /// Hot pixels are found with activation energies between about 0.5 and 0.7 eV (spectroscopy of single defects: McGrath
    /// et al. 1987, IEEE Trans. Electron Devices 34, 2555, from memory): at −10 °C doubling over 7.7 to 5.6 °C.
    /// </remarks>
    internal static DoublingByRate Unmeasured(double typical, double hotAbove) =>
        new(
            hotAbove,
            double.PositiveInfinity,
            new Measurement(typical, UnmeasuredSpread * typical, "°C", 1, "published activation energies"),
            0,
            1
        );

    private static bool IsMeasured(DoublingByRate c) => c.RateTo > 0 && c.Doubling.Value > 0 && c.Pixels > 0;

    private static double Middle(DoublingByRate c) =>
        c.RateFrom > 0 && double.IsFinite(c.RateTo) ? Math.Sqrt(c.RateFrom * c.RateTo)
        : c.RateFrom > 0 ? 1.5 * c.RateFrom
        : 0.5 * c.RateTo;
}
