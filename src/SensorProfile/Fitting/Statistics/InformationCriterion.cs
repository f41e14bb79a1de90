namespace SensorProfile.Fitting.Statistics;

/// <summary>
/// The Akaike criterion, corrected for few points, and the weights it gives to models (Burnham and Anderson 2002, Model
/// Selection, ch. 2).
/// </summary>
internal static class InformationCriterion
{
    /// <summary>χ² + 2k + 2k(k + 1)/(n − k − 1); null where n ≤ k + 1 and it is not defined.</summary>
    /// <param name="chiSquared">χ² of the fit with known uncertainties.</param>
    /// <param name="points">n.</param>
    /// <param name="parameters">k.</param>
    public static double? Corrected(double chiSquared, int points, int parameters) =>
        points > parameters + 1
            ? chiSquared + 2.0 * parameters + 2.0 * parameters * (parameters + 1) / (points - parameters - 1)
            : null;

    /// <summary>Weights exp(−Δ/2), normalised to 1; models without a criterion get 0.</summary>
    public static double[] Weights(IReadOnlyList<double?> criteria)
    {
        double? best = criteria.Min();
        double[] weights =
        [
            .. criteria.Select(c => c is { } value && best is { } least ? Math.Exp(-(value - least) / 2) : 0),
        ];
        double sum = weights.Sum();
        return sum > 0 ? [.. weights.Select(w => w / sum)] : weights;
    }
}
