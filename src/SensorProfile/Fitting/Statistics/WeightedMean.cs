namespace SensorProfile.Fitting.Statistics;

/// <summary>Weighted mean of independent values.</summary>
/// <param name="Value">Σx/u² ÷ Σ1/u².</param>
/// <param name="Uncertainty">1/√Σ(1/u²), from the stated uncertainties alone.</param>
/// <param name="ChiSquared">Σ((x − mean)/u)²; expected to be n − 1 when the values agree.</param>
/// <param name="Count">Number of values.</param>
internal readonly record struct WeightedMean(double Value, double Uncertainty, double ChiSquared, int Count)
{
    /// <summary>
    /// Uncertainty widened by √(χ²/(n − 1)) when the values scatter more than they should (Birge 1932, Phys. Rev. 40,
    /// 207).
    /// </summary>
    public double BirgeUncertainty =>
        Count > 1 ? Uncertainty * Math.Max(1, Math.Sqrt(ChiSquared / (Count - 1))) : Uncertainty;

    /// <summary>The weighted mean.</summary>
    /// <param name="values">At least one value.</param>
    /// <param name="uncertainties">Standard uncertainties of the values, all positive.</param>
    public static WeightedMean Combine(ReadOnlySpan<double> values, ReadOnlySpan<double> uncertainties)
    {
        if (values.IsEmpty || values.Length != uncertainties.Length)
            throw new ArgumentException(
                $"{values.Length} values with {uncertainties.Length} uncertainties have no weighted mean.",
                nameof(values)
            );
        double weights = 0,
            offset = 0,
            origin = values[0];
        for (int i = 0; i < values.Length; i++)
        {
            if (!(uncertainties[i] > 0))
                throw new ArgumentException("Every uncertainty must be positive.", nameof(uncertainties));
            double w = 1 / (uncertainties[i] * uncertainties[i]);
            weights += w;
            offset += w * (values[i] - origin);
        }
        double mean = origin + offset / weights,
            chiSquared = 0;
        for (int i = 0; i < values.Length; i++)
        {
            double z = (values[i] - mean) / uncertainties[i];
            chiSquared += z * z;
        }
        return new WeightedMean(mean, 1 / Math.Sqrt(weights), chiSquared, values.Length);
    }
}
