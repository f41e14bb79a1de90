using static SensorProfile.Frames.NumberText;

namespace SensorProfile.Frames.Headers;

/// <summary>Sensor temperature as read, and set temperature of the cooler, °C.</summary>
internal static class TemperatureKeywords
{
    /// <summary>Coldest and warmest credible reading, °C.</summary>
    public const double Coldest = -100,
        Warmest = 80;

    private const string Column = "temperature_c";
    private static readonly double[] StandIns =
    [
        -273.15,
        -273.0,
        -273.2,
        -200,
        -999,
        -9999,
        -127,
        999,
        9999,
        998,
        255,
        65535,
        32767,
        -32768,
    ];

    /// <summary>
    /// CCD-TEMP, or else SENSTEMP, or else DET-TEMP; null with an issue when absent, a sentinel, or impossible.
    /// </summary>
    public static double? ReadSensor(KeywordValues header, List<HeaderIssue> issues)
    {
        if (header.First("CCD-TEMP", "SENSTEMP", "DET-TEMP") is null)
        {
            issues.Add(
                new HeaderIssue(FindingCodes.TemperatureMissing, ReadSet(header) is { } set ? Short(set) : "", Column)
            );
            return null;
        }
        if (header.Number(issues, Column, "CCD-TEMP", "SENSTEMP", "DET-TEMP") is not { } reading)
            return null;
        if (IsStandIn(reading.Value))
        {
            issues.Add(
                new HeaderIssue(FindingCodes.TemperatureSentinel, $"{reading.Keyword} = {Of(reading.Value)}", Column)
            );
            return null;
        }
        if (reading.Value is < Coldest or > Warmest)
        {
            issues.Add(
                new HeaderIssue(FindingCodes.TemperatureImpossible, $"{reading.Keyword} = {Of(reading.Value)}", Column)
            );
            return null;
        }
        return reading.Value;
    }

    /// <summary>
    /// SET-TEMP (or CCDSET, SETTEMP) when it is a possible temperature; otherwise null, without an issue, since nothing
    /// is measured with it.
    /// </summary>
    public static double? ReadSet(KeywordValues header) =>
        header.First("SET-TEMP", "SETTEMP", "CCD-SET") is { } set
        && TryParse(set.Text, out double value, out _)
        && value is >= Coldest and <= Warmest
            ? value
            : null;

    /// <summary>
    /// Not finite, a value that programs write for "not known", at or below −200 °C, or at or above 200 °C (which
    /// includes kelvin).
    /// </summary>
    private static bool IsStandIn(double celsius) =>
        !double.IsFinite(celsius)
        || celsius <= -200
        || celsius >= 400
        || StandIns.Any(s => Math.Abs(s - celsius) < 1e-3);
}
