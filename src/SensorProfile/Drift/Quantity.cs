namespace SensorProfile.Drift;

/// <summary>A quantity of one profile, ready to be compared.</summary>
/// <param name="Name">As in profile.json.</param>
/// <param name="Value">The value; its uncertainty includes the night-to-night variation that is not ageing.</param>
/// <param name="IsCount">Whether it is a count of pixels, compared by the exact test.</param>
internal sealed record Quantity(string Name, Measurement Value, bool IsCount = false)
{
    /// <summary>For a count: the pixels actually counted.</summary>
    public long Counted { get; init; }

    /// <summary>For a count: factor by which the session's temperature alone changes it.</summary>
    public double Factor { get; init; } = 1;

    /// <summary>For a count: relative uncertainty from the session's temperature and gain.</summary>
    public double Doubt { get; init; }

    /// <summary>For a count: d ln N/dT, per °C of the sensor.</summary>
    public double CountPerCelsius { get; init; }

    /// <summary>For a glow: its doubling temperature, °C; null when not measured.</summary>
    public double? Doubling { get; init; }

    /// <summary>Makes a count of pixels above a rate, corrected for its session's temperature.</summary>
    /// <param name="name">Name as in profile.json.</param>
    /// <param name="counted">Pixels.</param>
    /// <param name="factor">Factor by which the temperature alone changes the count.</param>
    /// <param name="doubt">Relative uncertainty of the factor.</param>
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
