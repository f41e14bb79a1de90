using SensorProfile.Fitting.Statistics;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>All laws fitted to the same points, with their criteria and weights and the selected one.</summary>
/// <param name="Fits">The fits, simplest law first.</param>
/// <param name="Criteria">Corrected Akaike criterion of each fit; null with too few points for it.</param>
/// <param name="Weights">Akaike weights.</param>
/// <param name="Selected">Index of the selected law.</param>
internal sealed record LawComparison(
    IReadOnlyList<FittedLaw> Fits,
    IReadOnlyList<double?> Criteria,
    IReadOnlyList<double> Weights,
    int Selected
)
{
    /// <summary>A law replaces the simplest only when its criterion is lower by more than this.</summary>
    public const double DecisiveDifference = 6;

    // A law that the points exclude must not count far outside them, where it runs away.
    private const double NegligibleWeight = 1e-4;

    // A law is rejected when the probability of so large a misfit by chance is below this.
    private const double Rejection = 0.001;

    /// <summary>Whether the corrected criterion exists for any law.</summary>
    public bool Comparable => Criteria.Any(c => c is not null);

    /// <summary>The other laws that the points do not rule out.</summary>
    public IEnumerable<FittedLaw> Undecided =>
        Fits.Where(
            (_, i) =>
                i != Selected && Weights[i] > 0 && Weights[i] >= Weights[Selected] * Math.Exp(-DecisiveDifference / 2)
        );

    /// <summary>Compares the fits.</summary>
    /// <remarks>Selects by AICc = χ² + 2k + 2k(k + 1)/(n − k − 1): the simplest law stays unless another is decisively
    /// better. If n ≤ k + 1 for all laws, χ² + 2k is used instead. Laws that the points reject are left out unless all
    /// are rejected. The weights are exp(−Δ/2) of χ² + 2k: with known uncertainties that is already unbiased, and the
    /// correction would hide a floor or a second process that few points cannot exclude.</remarks>
    public static LawComparison Compare(IReadOnlyList<FittedLaw> fits, int points)
    {
        bool anyAccepted = fits.Any(f => f.Probability >= Rejection);
        bool[] possible = [.. fits.Select(f => !anyAccepted || f.Probability >= Rejection)];
        double?[] criteria = [.. fits.Select(f => InformationCriterion.Corrected(f.ChiSquared, points, f.Law.Count))];
        double?[] plain = [.. fits.Select((f, i) => possible[i] ? f.ChiSquared + 2.0 * f.Law.Count : (double?)null)];
        double?[] scores = [.. criteria.Select((c, i) => possible[i] ? c : null)];
        if (scores.All(c => c is null))
            scores = plain;
        int simplest = Array.FindIndex(scores, c => c is not null),
            best = Array.IndexOf(scores, scores.Min());
        int selected = scores[simplest] - scores[best] > DecisiveDifference ? best : simplest;
        return new LawComparison(fits, criteria, InformationCriterion.Weights(plain), selected);
    }

    /// <summary>Value of the selected law; its uncertainty includes the weighted distance of the other laws.</summary>
    /// <remarks>
    /// u² = Σ w_m(u_m² + (v_m − v)²) (Burnham and Anderson 2002, ch. 4, about the selected value instead of the mean).
    /// </remarks>
    public (double Value, double Uncertainty) Combine(Func<FittedLaw, (double Value, double Uncertainty)> quantity)
    {
        double value = quantity(Fits[Selected]).Value,
            variance = 0;
        for (int i = 0; i < Fits.Count; i++)
        {
            if (i != Selected && !(Weights[i] > NegligibleWeight))
                continue;
            (double other, double uncertainty) = quantity(Fits[i]);
            variance += Weights[i] * (uncertainty * uncertainty + (other - value) * (other - value));
        }
        return (value, Math.Sqrt(variance));
    }
}
