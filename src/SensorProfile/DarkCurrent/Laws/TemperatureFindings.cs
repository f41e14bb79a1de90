using System.Globalization;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>Findings for the user about the temperature laws.</summary>
internal static class TemperatureFindings
{
    private const double NarrowRange = 10;

    /// <summary>Says why no law can be fitted at all; null when a fit can be tried.</summary>
    public static Finding? WhyNot(IReadOnlyList<TemperaturePoint> points)
    {
        double[] temperatures = Distinct(points);
        if (temperatures.Length < TemperatureFit.MinTemperatures)
            return new Finding(
                FindingCodes.TooFewTemperatures,
                Severity.Refusal,
                $"Dark current was measured at {Measured(temperatures)}, so no doubling temperature is given: "
                    + $"it needs 3 temperatures, better 6; {Missing(temperatures)}."
            );
        int resolved = points.Count(p => p.Rate > 2 * p.Uncertainty);
        return resolved >= 2
            ? null
            : new Finding(
                FindingCodes.DarkRateNotResolved,
                Severity.Refusal,
                $"Only {resolved} of {points.Count} dark rates are clearly above zero, so no doubling "
                    + "temperature is given; take longer darks, or darks at warmer temperatures."
            );
    }

    /// <summary>The refusal for enough points from which no law follows.</summary>
    public static Finding NotDetermined(IReadOnlyList<TemperaturePoint> points) =>
        new(
            FindingCodes.TemperatureLawNotDetermined,
            Severity.Refusal,
            $"No temperature law can be fitted to the {points.Count} dark rates: they do not rise with temperature "
                + "as dark current does; check that the temperatures in the headers are those of the sensor."
        );

    /// <summary>All findings about a fit that was made.</summary>
    public static IReadOnlyList<Finding> Judge(
        IReadOnlyList<TemperaturePoint> points,
        LawComparison laws,
        ScatteredFits scattered,
        bool determined
    )
    {
        var findings = new List<Finding>();
        if (!determined)
            findings.Add(
                new Finding(
                    FindingCodes.DoublingTemperatureUncertain,
                    Severity.Refusal,
                    "The doubling temperature is uncertain by more than half its value and is not given; take "
                        + "darks over a wider range of temperatures, or longer ones."
                )
            );
        if (Undecided(points.Count, laws) is { } undecided)
            findings.Add(undecided);
        FittedLaw selected = laws.Fits[laws.Selected];
        if (Misfit(selected, scattered) is { } misfit)
            findings.Add(misfit);
        if (selected.Law.HasFloor && Floor(selected) is { } floor)
            findings.Add(floor);
        double range = points[^1].TemperatureCelsius - points[0].TemperatureCelsius;
        if (range < NarrowRange)
            findings.Add(
                new Finding(
                    FindingCodes.TemperatureRangeNarrow,
                    Severity.Warning,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The temperatures span only {range:0.#} °C, so predictions outside "
                            + $"{QuantityText.ShortTenths(points[0].TemperatureCelsius)} to "
                            + $"{QuantityText.ShortTenths(points[^1].TemperatureCelsius)} °C are unsafe; add "
                            + $"darks at least {NarrowRange:0} °C apart."
                    )
                )
            );
        return findings;
    }

    private static Finding? Misfit(FittedLaw selected, ScatteredFits scattered)
    {
        if (scattered.Significant && scattered.TemperatureScatter > 0)
            return new Finding(
                FindingCodes.TemperatureScatter,
                Severity.Warning,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The dark rates scatter about every law as if each temperature were wrong by about "
                        + $"{scattered.TemperatureScatter:0.00} °C; the uncertainties allow for it; let the sensor "
                        + $"settle longer at each temperature, and look for light or glow that adds to the darks."
                )
            );
        if (scattered.Significant)
            return new Finding(
                FindingCodes.DarkRateScatter,
                Severity.Warning,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The dark rates scatter about every law {scattered.RateFactor:0.0} times more than their "
                        + $"uncertainties; the uncertainties were widened; look for a temperature whose frames differ "
                        + $"from the rest."
                )
            );
        return selected.Probability >= 0.05
            ? null
            : new Finding(
                FindingCodes.TemperatureLawMisfit,
                Severity.Warning,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The {selected.Law.Name} law misses the dark rates by more than their uncertainties (χ² "
                        + $"{selected.ChiSquared:0.0} for {selected.DegreesOfFreedom}); the uncertainties were widened; more "
                        + $"temperatures would show the true law."
                )
            );
    }

    private static Finding? Undecided(int points, LawComparison laws)
    {
        if (!laws.Comparable)
            return new Finding(
                FindingCodes.TemperatureLawsNotComparable,
                Severity.Note,
                $"With {points} temperatures the temperature laws cannot be told apart; the "
                    + $"{laws.Fits[laws.Selected].Law.Name} law is used, and their spread is in the uncertainty; "
                    + "take 6 temperatures to decide."
            );
        string[] others = [.. laws.Undecided.Where(f => !f.AtBound[^1]).Select(f => f.Law.Name)];
        if (others.Length == 0)
            return null;
        string listed =
            others.Length == 1 ? others[0] + " law" : string.Join(", ", others[..^1]) + " and " + others[^1] + " laws";
        return new Finding(
            FindingCodes.TemperatureLawNotDecided,
            Severity.Note,
            $"The dark rates also agree with the {listed}; the {laws.Fits[laws.Selected].Law.Name} law is "
                + "used, and the spread is in the uncertainty; more temperatures over a wider range would decide."
        );
    }

    private static Finding? Floor(FittedLaw fit)
    {
        int last = fit.Law.Count - 1;
        double floor = fit.Parameters[last];
        if (floor <= 2 * fit.Uncertainties[last])
            return null;
        double reference = fit.Law.ReferenceTemperature,
            thermal = fit.ThermalDoublingAt(reference).Value,
            share = floor / fit.RateAt(reference).Value;
        if (share > DarkFloor.LargestShare)
            return new Finding(
                FindingCodes.DarkFloor,
                Severity.Warning,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Light reaches the sensor in the dark, or the sensor glows: {100 * share:0} % of the rate at "
                        + $"{QuantityText.Degrees(reference)} "
                        + $"({floor:G2} e⁻/px/s) does not fall with temperature. Cover camera and viewfinder, take a dark in "
                        + $"a dark room and compare; without this light dark current doubles every {thermal:0.0} °C."
                )
            );
        return new Finding(
            FindingCodes.DarkFloor,
            Severity.Note,
            string.Create(
                CultureInfo.InvariantCulture,
                $"A constant {floor:G2} e⁻/px/s does not fall with temperature (glow or a light leak): cooling "
                    + $"cannot remove it; without it dark current doubles every {thermal:0.0} °C."
            )
        );
    }

    private static double[] Distinct(IReadOnlyList<TemperaturePoint> points)
    {
        var distinct = new List<double>();
        foreach (double t in points.Select(p => p.TemperatureCelsius).Order())
            if (distinct.Count == 0 || t - distinct[^1] >= TemperatureFit.SameTemperature)
                distinct.Add(t);
        return [.. distinct];
    }

    private static string Measured(double[] temperatures) =>
        temperatures.Length switch
        {
            0 => "no temperature",
            1 => $"one temperature ({QuantityText.Degrees(temperatures[0])})",
            _ =>
                $"{temperatures.Length} temperatures ({string.Join(", ", temperatures.Select(QuantityText.ShortTenths))} °C)",
        };

    private static string Missing(double[] temperatures)
    {
        if (temperatures.Length == 0)
            return "take darks of several exposures at each";
        if (temperatures.Length == 1)
            return $"add darks at {QuantityText.ShortTenths(temperatures[0] - 10)} and "
                + $"{QuantityText.Degrees(temperatures[0] + 10)}, or as far apart as "
                + "cooler or weather allow";
        double gap = temperatures[1] - temperatures[0];
        double next = gap >= 10 ? temperatures[0] + gap / 2 : temperatures[1] + Math.Max(10 - gap, gap);
        return $"add darks at {QuantityText.Degrees(next)}";
    }
}
