using SensorProfile.NoiseModel;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>The one temperature that is advised, and what sets it.</summary>
/// <param name="Celsius">Temperature of the sensor, °C; where <paramref name="Told"/> is false that of the nearest
/// darks.</param>
/// <param name="Bound">What sets it.</param>
/// <param name="Told">False where the air is too far below the darks of the profile.</param>
internal readonly record struct SetpointChoice(double Celsius, SetpointBound Bound, bool Told = true)
{
    // a degree this far outside the darks still counts as measured: probes differ by more, °C
    private const double Tolerance = 0.05;

    /// <summary>
    /// The warmest whole degree that stays within the loss and was measured; a tenth of a degree where no whole one
    /// was.
    /// </summary>
    /// <param name="wanted">Warmest temperature that stays within the loss, °C; null when none does.</param>
    /// <param name="range">Coldest and warmest temperature with darks, °C.</param>
    internal static SetpointChoice Measured(double? wanted, (double Low, double High) range)
    {
        if (wanted > range.High + Tolerance)
            return new(Math.Floor((range.High + Tolerance) * 10) / 10, SetpointBound.WarmestMeasured);
        if (wanted is double asked)
        {
            foreach (double steps in (double[])[1, 10])
            {
                double rounded = Math.Floor(asked * steps + 1e-9) / steps;
                if (rounded >= range.Low - Tolerance)
                    return new(rounded, SetpointBound.Loss);
            }
        }
        return new(Math.Ceiling((range.Low - Tolerance) * 10) / 10, SetpointBound.ColdestMeasured);
    }

    /// <summary>The same, no warmer than the air and no colder than the cooler can hold.</summary>
    /// <param name="range">Coldest and warmest temperature with darks, °C.</param>
    /// <param name="air">Warmest of the nights, °C; null when none is known.</param>
    /// <param name="held">Coldest temperature that the cooler can hold then, °C; null when its reach is not
    /// known.</param>
    internal SetpointChoice Within((double Low, double High) range, double? air, double? held)
    {
        SetpointChoice choice = this;
        if (air < Celsius)
            choice = new(Math.Floor(air.Value), SetpointBound.Air);
        if (held > choice.Celsius)
            choice = new(held.Value, SetpointBound.Cooler);
        return choice.Celsius < range.Low - Refuse.ExtrapolationCelsius
            ? Measured(null, range) with
            {
                Told = false,
            }
            : choice;
    }
}
