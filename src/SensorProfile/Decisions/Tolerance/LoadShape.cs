namespace SensorProfile.Decisions.Tolerance;

/// <summary>
/// How a load grows around the place where it crosses 1; a random draw of the same question changes its height.
/// </summary>
/// <remarks>
/// Piecewise linear between five places, in logarithms. The load of a draw differs from the best one by a factor that
/// changes little over a short distance, so one evaluation tells roughly where the draw crosses 1.
/// </remarks>
internal sealed class LoadShape
{
    private static readonly double[] places = [0.75, 0.87, 1, 1.15, 1.33]; // in the crossing
    private readonly double[] logs;

    private LoadShape(double[] logs) => this.logs = logs;

    /// <summary>The shape; null where the load does not rise from place to place.</summary>
    /// <param name="load">The load of the best model.</param>
    /// <param name="crossing">Where it crosses 1.</param>
    internal static LoadShape? About(Func<double, double> load, double crossing)
    {
        double[] logs = [.. places.Select(place => Math.Log(load(place * crossing)))];
        bool rises = Array.TrueForAll(logs, double.IsFinite) && logs.Zip(logs.Skip(1)).All(p => p.Second > p.First);
        return rises ? new LoadShape(logs) : null;
    }

    /// <summary>
    /// Where a load of this shape crosses 1, in units of the best one's crossing; null beyond the known places.
    /// </summary>
    /// <param name="load">The load at the best one's crossing.</param>
    internal double? Crossing(double load)
    {
        double wanted = logs[places.Length / 2] - Math.Log(load);
        for (int i = 1; i < logs.Length; i++)
            if (wanted >= logs[i - 1] && wanted <= logs[i])
            {
                double part = (wanted - logs[i - 1]) / (logs[i] - logs[i - 1]);
                return places[i - 1] * Math.Pow(places[i] / places[i - 1], part);
            }
        return null;
    }
}
