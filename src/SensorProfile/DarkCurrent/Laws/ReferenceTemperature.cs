namespace SensorProfile.DarkCurrent.Laws;

/// <summary>Chooses the temperature to which the rates of a profile refer.</summary>
internal static class ReferenceTemperature
{
    /// <summary>
    /// The measured temperature closest to the middle of the range in which the dark rate was resolved (rate &gt; 2u),
    /// in whole degrees.
    /// </summary>
    /// <remarks>In the middle of the points, the laws agree best, and rate and doubling temperature are known best. Of
    /// two equally close, the colder one is taken; with fewer than two resolved points, all points count.</remarks>
    /// <param name="points">At least one point.</param>
    /// <returns>°C.</returns>
    /// <exception cref="ArgumentException">There are no points.</exception>
    public static double Choose(IReadOnlyList<TemperaturePoint> points)
    {
        if (points.Count == 0)
            throw new ArgumentException("A reference temperature needs at least one point.", nameof(points));
        double[] resolved =
        [
            .. points.Where(p => p.Rate > 2 * p.Uncertainty).Select(p => p.TemperatureCelsius).Order(),
        ];
        if (resolved.Length < 2)
            resolved = [.. points.Select(p => p.TemperatureCelsius).Order()];
        double middle = (resolved[0] + resolved[^1]) / 2;
        return Math.Round(resolved.MinBy(t => Math.Abs(t - middle)), MidpointRounding.AwayFromZero);
    }
}
