namespace SensorProfile.Drift;

/// <summary>A quantity of one profile, ready to be compared.</summary>
/// <param name="Name">As in profile.json.</param>
/// <param name="Value">The value; what varies from night to night without any ageing is in its uncertainty.</param>
/// <param name="IsCount">Whether it is a count of pixels, compared by the exact test.</param>
internal sealed record Quantity(string Name, Measurement Value, bool IsCount = false)
{
    /// <summary>Of a count: pixels as they were counted.</summary>
    public long Counted { get; init; }

    /// <summary>Of a count: how many times more pixels the session's temperature alone would count.</summary>
    public double Factor { get; init; } = 1;

    /// <summary>Of a count: relative uncertainty that the session's temperature and gain leave in it.</summary>
    public double Doubt { get; init; }

    /// <summary>Of a count: d ln N/dT, per °C of the sensor.</summary>
    public double CountPerCelsius { get; init; }

    /// <summary>Of a glow: its doubling temperature, °C; null when not measured.</summary>
    public double? Doubling { get; init; }

    /// <summary>A count of pixels above a rate that carries its session's temperature.</summary>
    /// <param name="name">As in profile.json.</param>
    /// <param name="counted">Pixels.</param>
    /// <param name="factor">What the temperature alone does to the count.</param>
    /// <param name="doubt">Relative uncertainty of that.</param>
    /// <param name="perCelsius">d ln N/dT.</param>
    public static Quantity Count(string name, long counted, double factor, double doubt, double perCelsius)
    {
        double value = Math.Round(counted / factor);
        return new Quantity(
            name,
            new Measurement(
                value,
                double.Hypot(Math.Sqrt(Math.Max(counted, 1)) / factor, doubt * value),
                "px",
                counted,
                $"pixels above {QuantityNames.HotPixelRate(name)} e-/px/s"
                    + (factor == 1 ? "" : ", at the sensor's temperature of the first session")
            ),
            IsCount: true
        )
        {
            Counted = counted,
            Factor = factor,
            Doubt = doubt,
            CountPerCelsius = perCelsius,
        };
    }
}
