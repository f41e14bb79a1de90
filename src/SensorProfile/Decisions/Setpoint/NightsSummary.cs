namespace SensorProfile.Decisions.Setpoint;

/// <summary>
/// A year (or any list) of nights in a few rows: how often a temperature can be reached, and what it costs.
/// </summary>
internal static class NightsSummary
{
    private const int MinNights = 2,
        MaxRows = 7;

    /// <summary>Rows from the temperature that is wanted to the one that every night allows.</summary>
    internal static IReadOnlyList<NightsAtTemperature> Cooled(
        SetpointQuestion question,
        SetpointSolution solution,
        double wanted,
        double allYear
    )
    {
        if (question.Ambient.Count < MinNights || question.MaximumDifference is null)
            return [];
        double[] coldest = [.. question.Ambient.Select(a => question.ColdestHeld(a.Celsius)!.Value)];
        double step = Math.Max(1, Math.Ceiling((allYear - wanted) / (MaxRows - 1)));
        var rows = new List<NightsAtTemperature>();
        for (double sensor = wanted; sensor < allYear; sensor += step)
            rows.Add(Row(solution, sensor, coldest));
        rows.Add(Row(solution, allYear, coldest));
        return rows;
    }

    /// <summary>Sensor temperatures that a tenth, a quarter, half … of the nights do not exceed.</summary>
    internal static IReadOnlyList<NightsAtTemperature> Uncooled(SetpointQuestion question, SetpointSolution solution)
    {
        if (question.Ambient.Count < MinNights)
            return [];
        double[] sensor = [.. question.Ambient.Select(a => a.Celsius + question.SelfHeating).Order()];
        return
        [
            .. new[] { 0.1, 0.25, 0.5, 0.75, 0.9, 1 }
                .Select(share => sensor[(int)Math.Ceiling(share * sensor.Length) - 1])
                .Distinct()
                .Select(t => Row(solution, t, sensor)),
        ];
    }

    private static NightsAtTemperature Row(SetpointSolution solution, double sensor, double[] reached)
    {
        int nights = reached.Count(t => t <= sensor + 1e-9);
        return new NightsAtTemperature(
            sensor,
            nights,
            (double)nights / reached.Length,
            100 * solution.ExtraTypical(sensor),
            100 * solution.ExtraAtShare(sensor)
        );
    }
}
