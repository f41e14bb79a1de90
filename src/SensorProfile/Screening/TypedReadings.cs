using SensorProfile.Fitting.Models;
using SensorProfile.Frames;

namespace SensorProfile.Screening;

/// <summary>Carries a thermometer's readings, typed in for some frames of a night, to its darks by their warmth.</summary>
/// <remarks>
/// Readings that span 3 °C or more calibrate the hot pixels: T = a + b·(warmth) by least squares, for darks not more than
/// <see cref="SilentNights.WithinCelsius"/> colder or warmer than all readings. Fewer say something of darks as warm as theirs
/// alone: a law of temperature that came out of an assumed one would be no measurement.
/// </remarks>
internal sealed class TypedReadings
{
    private const double MinSpan = 3; // °C of warmth, to measure how it grows
    private const double MinSlope = 0.5; // hot pixels that double every 3 to 12 °C
    private const double MaxSlope = 2;
    private const double MaxResidual = 1.5; // °C, root mean square

    private readonly (double Warmth, double Celsius)[] readings;
    private readonly StraightLine? line;

    private TypedReadings((double, double)[] readings, StraightLine? line) =>
        (this.readings, this.line) = (readings, line);

    /// <summary>The readings of a night; null where there are none, or they contradict the hot pixels.</summary>
    public static TypedReadings? Fit(IEnumerable<Frame> typed, FrameWarmth warmth)
    {
        (double Warmth, double Celsius)[] readings =
        [
            .. typed.Select(f => (warmth.At(f), f.TemperatureCelsius!.Value)).OrderBy(r => r.Item1),
        ];
        if (readings.Length == 0)
            return null;
        if (readings[^1].Warmth - readings[0].Warmth < MinSpan)
            return new TypedReadings(readings, null);
        StraightLine line = StraightLine.Fit([.. readings.Select(r => r.Warmth)], [.. readings.Select(r => r.Celsius)]);
        double residual = Math.Sqrt(
            readings.Average(r => Math.Pow(r.Celsius - line.Intercept - (line.Slope * r.Warmth), 2))
        );
        return line.Slope is >= MinSlope and <= MaxSlope && residual <= MaxResidual
            ? new TypedReadings(readings, line)
            : null;
    }

    /// <summary>
    /// What readings that are each off by <see cref="TypedScale.ReadingDoubt"/> leave open. The scale of readings of one
    /// warmth is that of the hot pixels, taken to double every 6 °C ± 1 °C.
    /// </summary>
    public TypedScale Scale
    {
        get
        {
            double mean = readings.Average(r => r.Warmth);
            return new TypedScale(
                readings.Average(r => r.Celsius),
                TypedScale.ReadingDoubt / Math.Sqrt(readings.Length),
                line is { } law
                    ? TypedScale.ReadingDoubt / (law.Slope * Math.Sqrt(readings.Sum(r => Math.Pow(r.Warmth - mean, 2))))
                    : FrameWarmth.DoublingDoubt / PhysicalConstants.UsualDoubling
            );
        }
    }

    /// <summary>Whether the readings span enough warmth to say how it grows with temperature.</summary>
    public bool AreOfSeveralTemperatures => line is not null;

    /// <summary>Temperature of a dark of this warmth, °C; null where no reading speaks of it.</summary>
    public double? At(double warmth)
    {
        (double Warmth, double Celsius) nearest = readings.MinBy(r => Math.Abs(r.Warmth - warmth));
        bool isBetween = warmth > readings[0].Warmth && warmth < readings[^1].Warmth;
        if (Math.Abs(nearest.Warmth - warmth) > SilentNights.WithinCelsius && !(line is not null && isBetween))
            return null;
        return line is { } law ? law.Intercept + (law.Slope * warmth) : nearest.Celsius + (warmth - nearest.Warmth);
    }
}
