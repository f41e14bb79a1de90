using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Darks;
using static System.FormattableString;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>Converts between fitted laws and the records stored in profiles.</summary>
internal static class ModelRecord
{
    /// <summary>Makes the record of a fit.</summary>
    public static DarkCurrentModel From(FittedLaw fit, double? criterion, double weight, int points)
    {
        double reference = fit.Law.ReferenceTemperature;
        (double doubling, double doublingUncertainty) = fit.DoublingAt(reference);
        (double rate, double rateUncertainty) = fit.RateAt(reference);
        return new DarkCurrentModel
        {
            Name = fit.Law.Name,
            Parameters =
            [
                .. fit.Law.Parameters.Select(
                    (p, i) =>
                        new ModelParameter(
                            p.Name,
                            fit.Parameters[i],
                            fit.Uncertainties[i],
                            p.Unit,
                            points,
                            fit.AtBound[i] ? AtBound(fit, i) : "weighted fit of " + fit.Law.Formula
                        )
                ),
            ],
            Covariance = CovarianceMatrix.ToRows(fit.Covariance),
            InformationCriterion = criterion,
            Weight = weight,
            ChiSquared = fit.ChiSquared,
            DegreesOfFreedom = fit.DegreesOfFreedom,
            DoublingTemperature =
                double.IsFinite(doubling) && double.IsFinite(doublingUncertainty)
                    ? new Measurement(
                        doubling,
                        doublingUncertainty,
                        "°C",
                        points,
                        "ln 2/(d ln I/dT) at the reference temperature"
                    )
                    : null,
            RateAtReference = new Measurement(
                rate,
                rateUncertainty,
                "e-/px/s",
                points,
                "the law at the reference temperature"
            ),
        };
    }

    /// <summary>Restores a fit from a record; parameters at a bound are recognised by their value.</summary>
    /// <exception cref="ArgumentException">The law in the record is unknown, or its parameters or covariance do not
    /// match the law.</exception>
    public static FittedLaw ToFit(DarkCurrentModel model, double referenceTemperature)
    {
        TemperatureLaw law = TemperatureLaw.Named(model.Name, referenceTemperature);
        double[] parameters =
        [
            .. law.Parameters.Select(p =>
                model.Parameters.FirstOrDefault(m => m.Name == p.Name)?.Value
                ?? throw new ArgumentException($"The {model.Name} law lacks its parameter '{p.Name}'.", nameof(model))
            ),
        ];
        if (!law.Parameters.Select(p => p.Name).SequenceEqual(model.Parameters.Select(p => p.Name)))
            throw new ArgumentException(
                $"The {model.Name} law's parameters are not "
                    + $"{string.Join(", ", law.Parameters.Select(p => p.Name))}, in this order.",
                nameof(model)
            );
        double[,] covariance = CovarianceMatrix.FromRows(model.Covariance);
        if (covariance.GetLength(0) != law.Count)
            throw new ArgumentException(
                $"The {model.Name} law has {law.Count} parameters, its covariance {covariance.GetLength(0)}.",
                nameof(model)
            );
        bool[] atBound = [.. parameters.Select((p, i) => law.IsRate(i) && p == 0)];
        double[] uncertainties = [.. model.Parameters.Select(p => p.StandardUncertainty)];
        return new FittedLaw(
            law,
            parameters,
            covariance,
            uncertainties,
            atBound,
            model.ChiSquared,
            model.DegreesOfFreedom
        );
    }

    private static string AtBound(FittedLaw fit, int parameter) =>
        "held at zero, below "
        + Invariant($"{Probability.NormalQuantile(0.95) * fit.Uncertainties[parameter]:G3} ")
        + Invariant($"{fit.Law.Parameters[parameter].Unit} with 95 % confidence");
}
