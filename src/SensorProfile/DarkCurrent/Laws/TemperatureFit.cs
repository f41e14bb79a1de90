using static System.FormattableString;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>
/// Fits dark rate against temperature: doubling, Arrhenius and two-process laws, each also with a constant floor.
/// </summary>
/// <remarks>Weighted least squares on the linear scale. Laws are compared by the corrected Akaike criterion; the
/// doubling law stays unless another is lower by more than 6. Uncertainties include the spread between the laws that
/// the points do not rule out.</remarks>
internal static class TemperatureFit
{
    /// <summary>
    /// Number of temperatures needed for a doubling temperature: with two, every law passes through both and none is
    /// tested.
    /// </summary>
    public const int MinTemperatures = 3;

    /// <summary>Two temperatures closer together than this, °C, count as one.</summary>
    internal const double SameTemperature = 0.5;

    /// <summary>Fits the points.</summary>
    /// <param name="points">Rates with their uncertainties, in any order.</param>
    /// <param name="referenceTemperature">Temperature to which rates refer, °C; see
    /// <see cref="ReferenceTemperature.Choose"/>.</param>
    /// <param name="commonRelativeUncertainty">Relative standard uncertainty common to all rates (that of the gain);
    /// widens rates, not doubling temperatures.</param>
    /// <exception cref="ArgumentException">A point is not finite or its uncertainty is not positive.</exception>
    public static TemperatureFitResult Fit(
        IReadOnlyList<TemperaturePoint> points,
        double referenceTemperature,
        double commonRelativeUncertainty = 0
    )
    {
        ArgumentOutOfRangeException.ThrowIfNegative(commonRelativeUncertainty);
        TemperaturePoint[] sorted = [.. points.OrderBy(p => p.TemperatureCelsius).ThenBy(p => p.Rate)];
        foreach (TemperaturePoint p in sorted)
            Check(p);
        var nothing = new TemperatureFitResult
        {
            ReferenceTemperature = referenceTemperature,
            MeasuredRange = sorted.Length > 0 ? [sorted[0].TemperatureCelsius, sorted[^1].TemperatureCelsius] : null,
        };
        if (TemperatureFindings.WhyNot(sorted) is { } reason)
            return nothing with { Findings = [reason] };
        if (PointScatter.Fit(TemperatureLaw.All(referenceTemperature), sorted) is not { } fitted)
            return nothing with { Findings = [TemperatureFindings.NotDetermined(sorted)] };
        FittedLaw[] fits =
        [
            .. fitted.Fits.Select(f => f.WithCommon(commonRelativeUncertainty).WithSharedErrors(sorted)),
        ];
        LawComparison laws = LawComparison.Compare(fits, sorted.Length);
        return Result(nothing with { TemperatureScatter = fitted.TemperatureScatter }, sorted, laws, fitted);
    }

    private static TemperatureFitResult Result(
        TemperatureFitResult empty,
        TemperaturePoint[] points,
        LawComparison laws,
        ScatteredFits scattered
    )
    {
        double reference = empty.ReferenceTemperature;
        FittedLaw selected = laws.Fits[laws.Selected];
        string spread = laws.Undecided.Any() ? ", spread between the possible laws included" : "";
        (double doubling, double doublingUncertainty) = laws.Combine(f => f.DoublingAt(reference));
        (double rate, double rateUncertainty) = laws.Combine(f => f.RateAt(reference));
        bool determined = doublingUncertainty < 0.5 * doubling;
        return empty with
        {
            Models =
            [
                .. laws.Fits.Select((f, i) => ModelRecord.From(f, laws.Criteria[i], laws.Weights[i], points.Length)),
            ],
            Selected = selected.Law.Name,
            DoublingTemperature = determined
                ? new Measurement(
                    doubling,
                    doublingUncertainty,
                    "°C",
                    points.Length,
                    $"ln 2/(d ln I/dT) of the {selected.Law.Name} law{spread}"
                )
                : null,
            RateAtReference = new Measurement(
                rate,
                rateUncertainty,
                "e-/px/s",
                points.Length,
                $"{selected.Law.Name} law{spread}"
            ),
            Findings = TemperatureFindings.Judge(points, laws, scattered, determined),
        };
    }

    private static void Check(TemperaturePoint point)
    {
        if (
            double.IsFinite(point.TemperatureCelsius)
            && double.IsFinite(point.Rate)
            && double.IsFinite(point.Uncertainty)
            && point.Uncertainty > 0
            && double.IsFinite(point.TemperatureUncertainty)
            && point.TemperatureUncertainty >= 0
        )
            return;
        throw new ArgumentException(
            Invariant($"The point at {point.TemperatureCelsius} °C (rate {point.Rate} ± ")
                + Invariant($"{point.Uncertainty}) is not finite or has no uncertainty; leave it out."),
            nameof(point)
        );
    }
}
