namespace SensorProfile.Decisions.DarkPlan;

/// <summary>The part of a planned stack that is taken at one temperature.</summary>
/// <param name="Plan">The stack.</param>
/// <param name="Celsius">Sensor temperature, °C.</param>
/// <param name="Share">Part of the stack's lights, 0…1.</param>
internal sealed record LightSlice(PlannedLights Plan, double Celsius, double Share)
{
    private const double Widest = 0.5; // °C

    /// <summary>
    /// The lights by temperature, read to a tenth of a degree; for an evenly cooling night, slices of half a degree;
    /// one slice for a steady temperature.
    /// </summary>
    internal static IEnumerable<LightSlice> Split(PlannedLights plan)
    {
        if (plan.Temperatures.Count > 0)
            return plan
                .Temperatures.GroupBy(celsius => Math.Round(celsius, 1))
                .Select(same => new LightSlice(plan, same.Key, (double)same.Count() / plan.Temperatures.Count));
        double end = plan.EndCelsius ?? plan.StartCelsius;
        int slices = Math.Max((int)Math.Ceiling(Math.Abs(end - plan.StartCelsius) / Widest), 1);
        return Enumerable
            .Range(0, slices)
            .Select(i => new LightSlice(
                plan,
                plan.StartCelsius + (end - plan.StartCelsius) * (i + 0.5) / slices,
                1.0 / slices
            ));
    }
}
