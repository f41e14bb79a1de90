using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>
/// Converts quantities measured at one reading of the temperature probe to one temperature of the sensor.
/// </summary>
/// <remarks>
/// The hot pixels show that the sensor was δ warmer than in the first session. Dark rates and glow are divided by
/// 2^(δ/ΔT₂), counts of hot pixels by the effect of the same step on the number above a threshold. The hot pixels carry
/// the session's gain and temperature just as the other pixels of the same maps do: the shared part leaves the
/// uncertainty, and the scatter of the step enters it.
/// </remarks>
internal static class ProbeCorrection
{
    private const double MinOwn = 0.01; // share of a variance that always counts as unshared

    /// <summary>Converts the quantities to the sensor temperature of the first session.</summary>
    /// <param name="session">Quantities as measured at the reading.</param>
    /// <param name="mode">Mode of the session.</param>
    /// <param name="step">Step δ relative to the first session.</param>
    /// <param name="lawDoubt">Uncertainty of the step from maps that were moved in temperature, °C.</param>
    /// <param name="typicalDoubling">ΔT₂ of the typical pixel, °C.</param>
    /// <param name="repeatability">Repeatability of a session's temperature, °C.</param>
    /// <param name="probeMoved">Whether dark rates and glow are corrected too; counts always are.</param>
    public static IReadOnlyList<Quantity> Correct(
        IReadOnlyList<Quantity> session,
        ModeProfile mode,
        HotPixelStep step,
        double lawDoubt,
        double typicalDoubling,
        double repeatability,
        bool probeMoved
    )
    {
        // a step is no more certain than the doubling temperatures behind it
        double own = Math.Sqrt(
            step.OwnError * step.OwnError + lawDoubt * lawDoubt + Math.Pow(HotPixelStep.DoublingDoubt * step.Celsius, 2)
        );
        double gain = mode.Gain is { Value: > 0 } k ? k.StandardUncertainty / k.Value : 0;
        return
        [
            .. session.Select(q =>
                q.IsCount ? Count(q, step.Celsius, own)
                : !probeMoved ? q
                : q.Name switch
                {
                    // from levels, whose errors need not follow those of the maps: nothing counts as shared
                    QuantityNames.DarkRate => Rate(q, typicalDoubling, step.Celsius, own, 0),
                    QuantityNames.DarkRateByPixel => Rate(
                        q,
                        typicalDoubling,
                        step.Celsius,
                        own,
                        double.Hypot(gain, Math.Log(2) / typicalDoubling * repeatability)
                    ),
                    QuantityNames.GlowTotal => Rate(q, q.Doubling ?? typicalDoubling, step.Celsius, own, 0),
                    _ => q,
                }
            ),
        ];
    }

    private static Quantity Rate(Quantity quantity, double doubling, double celsius, double own, double shared)
    {
        double factor = Math.Pow(2, -celsius / doubling),
            stated = quantity.Value.StandardUncertainty / Math.Abs(quantity.Value.Value),
            rest = Math.Sqrt(Math.Max(stated * stated - shared * shared, MinOwn * stated * stated)),
            relative = double.Hypot(rest, Math.Log(2) / doubling * own),
            value = quantity.Value.Value * factor;
        return double.IsFinite(relative)
            ? quantity with
            {
                Value = quantity.Value with
                {
                    Value = value,
                    StandardUncertainty = Math.Abs(value) * relative,
                    Method = quantity.Value.Method + ", error of the temperature probe taken out",
                },
            }
            : quantity;
    }

    private static Quantity Count(Quantity count, double celsius, double own)
    {
        double perDegree = count.CountPerCelsius;
        return Quantity.Count(
            count.Name,
            count.Counted,
            Math.Exp(perDegree * celsius),
            Math.Abs(perDegree) * own,
            perDegree
        );
    }
}
