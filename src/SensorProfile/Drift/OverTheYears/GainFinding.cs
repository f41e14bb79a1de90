using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>
/// Warns when quantities in electrons moved with the gain but not in ADU: then the flats behind the gain changed, not
/// the sensor.
/// </summary>
internal static class GainFinding
{
    private const double Agrees = Probability.Normal95;

    public static IEnumerable<Finding> Judge(ModeComparison comparison)
    {
        DriftChange? gain = comparison.Changes.FirstOrDefault(c => c.Quantity == QuantityNames.Gain);
        if (gain is not { Changed: true, From.Value: > 0, To.Value: > 0 })
            yield break;
        DriftChange[] followers =
        [
            .. comparison.Changes.Where(c =>
                ComparedQuantities.InElectrons.Contains(c.Quantity) && c.From.Value > 0 && Same(gain, c)
            ),
        ];
        DriftChange[] moved = [.. followers.Where(c => Math.Abs(c.Z) > Agrees)];
        if (moved.Length > 0)
            yield return new Finding(
                FindingCodes.GainMovesAll,
                Severity.Warning,
                $"At {comparison.Mode.Name} the gain changed, and "
                    + $"{string.Join(", ", moved.Select(c => QuantityWords.WithArticle(c.Quantity)))} by the same "
                    + "factor, so in ADU nothing moved: look for a cause in the flats (lamp, light leak, other "
                    + "exposure) before blaming the sensor."
            );
    }

    /// <summary>
    /// Whether the quantity's ratio equals that of the gain, without the gain's share in the quantity's uncertainty.
    /// </summary>
    private static bool Same(DriftChange gain, DriftChange other)
    {
        double ratio = Math.Log(other.To.Value / other.From.Value) - Math.Log(gain.To.Value / gain.From.Value);
        double own = Rest(other.From, gain.From) + Rest(other.To, gain.To);
        return Math.Abs(ratio) <= Agrees * Math.Sqrt(own);
    }

    private static double Rest(Measurement quantity, Measurement gain)
    {
        double all = Square(quantity.StandardUncertainty / quantity.Value);
        return Math.Max(all - Square(gain.StandardUncertainty / gain.Value), 0.05 * all);
    }

    private static double Square(double x) => x * x;
}
