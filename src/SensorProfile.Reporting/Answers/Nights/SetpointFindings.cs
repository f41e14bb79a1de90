using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel;

namespace SensorProfile.Reporting.Answers.Nights;

/// <summary>Warnings that follow from the facts of a set point.</summary>
internal static class SetpointFindings
{
    internal static IEnumerable<Finding> Judge(SetpointAnswer answer)
    {
        string range = $"{QuantityText.Degrees(answer.MeasuredFrom)} to {QuantityText.Degrees(answer.MeasuredTo)}";
        string add =
            answer.Settling.Count > 0 ? $": add {SettlingWords.Phrase(answer.Settling)} and characterise again" : "";
        if (answer is { Uncooled: false, WarmestAir: not null, ColdestHeld: null })
            yield return new Finding(
                FindingCodes.CoolerUnknown,
                Severity.Note,
                "How far the cooler reaches was not given, so whether it can hold this temperature was not checked."
            );
        if (answer.Uncertain is { Low: double low, High: double high })
            yield return new Finding(
                FindingCodes.SetpointUncertain,
                Severity.Warning,
                $"The measurements leave the set point anywhere between {QuantityText.Degrees(low)} and {QuantityText.Degrees(high)}: "
                    + "add darks at one more temperature, with at least 8 frames."
            );
        if (answer.Limit == SetpointLimit.Range)
            yield return new Finding(
                FindingCodes.ColderThanProfile,
                Severity.Warning,
                $"No measured temperature is cold enough for the accepted loss; the darks cover {range}{add}."
            );
        if (answer.Bound == SetpointBound.WarmestMeasured)
            yield return new Finding(
                FindingCodes.WarmerThanProfile,
                Severity.Note,
                $"Every measured temperature, {range}, is cold enough; a warmer sensor may do{add}."
            );
        if (answer.NightsBeyond.Count > 0)
            yield return new Finding(
                FindingCodes.NightsBeyondProfile,
                Severity.Warning,
                $"On {SetpointWords.NightsBeyond(answer)} the sensor is more than "
                    + $"{Plain.Whole((long)Refuse.ExtrapolationCelsius)} °C outside the measured range, {range}{add}."
            );
    }
}
