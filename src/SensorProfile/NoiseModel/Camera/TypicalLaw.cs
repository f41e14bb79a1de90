using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// The selected temperature law of a profile, or a random draw of it, as plain numbers: a decision evaluates it some
/// ten thousand times.
/// </summary>
/// <param name="fit">The law with its parameters.</param>
internal sealed class TypicalLaw(FittedLaw fit)
{
    /// <summary>The law of a stored model; null when its record is damaged or its rates are not above zero.</summary>
    internal static TypicalLaw? From(DarkCurrentModel model, double referenceCelsius)
    {
        try
        {
            var law = new TypicalLaw(ModelRecord.ToFit(model, referenceCelsius));
            return law.RateAt(referenceCelsius) > 0 && law.ThermalAt(referenceCelsius) > 0 ? law : null;
        }
        catch (ArgumentException)
        {
            return null;
        } // the caller refuses with the sentence that fits its question
    }

    /// <summary>Part of the rate that does not depend on temperature, e-/px/s.</summary>
    internal double Floor => fit.Law.HasFloor ? fit.Parameters[^1] : 0;

    /// <summary>Dark rate of the typical pixel, floor included, e-/px/s.</summary>
    internal double RateAt(double celsius) => fit.Law.Rate(celsius, fit.Parameters);

    /// <summary>The part that cooling reduces, e-/px/s.</summary>
    internal double ThermalAt(double celsius) => fit.Law.Thermal(celsius, fit.Parameters);

    /// <summary>Doubling temperature of the part that cooling reduces, °C.</summary>
    internal double ThermalDoublingAt(double celsius) => fit.Law.ThermalDoubling(celsius, fit.Parameters);

    /// <summary>Doubling temperature, floor included, °C.</summary>
    internal double DoublingAt(double celsius) => fit.Law.Doubling(celsius, fit.Parameters);

    /// <summary>
    /// Relative standard uncertainty of the rate, √(gᵀCg)/rate for the covariance C of the parameters and the gradient g
    /// (GUM 5.2.2), which is taken over a thousandth of each parameter's uncertainty.
    /// </summary>
    internal double RelativeUncertaintyAt(double celsius)
    {
        int count = fit.Covariance.GetLength(0);
        double[] changes = new double[count];
        for (int i = 0; i < count; i++)
        {
            double[] moves = new double[count];
            moves[i] = Math.Sqrt(Math.Max(fit.Covariance[i, i], 0)) / 1000;
            if (moves[i] > 0)
                changes[i] = (Moved(moves).RateAt(celsius) - RateAt(celsius)) / moves[i];
        }
        double variance = 0;
        for (int i = 0; i < count; i++)
        for (int k = 0; k < count; k++)
            variance += changes[i] * fit.Covariance[i, k] * changes[k];
        return Math.Sqrt(Math.Max(variance, 0)) / RateAt(celsius);
    }

    /// <summary>The law with each parameter shifted: rates stay at or above zero.</summary>
    internal TypicalLaw Moved(IReadOnlyList<double> moves) =>
        new(
            fit with
            {
                Parameters =
                [
                    .. fit.Parameters.Select((p, i) => fit.Law.IsRate(i) ? Math.Max(p + moves[i], 0) : p + moves[i]),
                ],
            }
        );

    /// <summary>A random deviate of the parameters, drawn from their covariance.</summary>
    internal double[] Deviates(Func<double> standardNormal) => CorrelatedDeviates.Draw(fit.Covariance, standardNormal);
}
