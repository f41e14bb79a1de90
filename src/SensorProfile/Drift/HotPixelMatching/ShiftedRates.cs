using SensorProfile.Drift.Archive;

namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>
/// Dark rates of a session brought to another temperature: hot pixels by their own laws, the others by the law of the
/// typical pixel.
/// </summary>
/// <remarks>
/// rate′ = typical·f + (rate − typical)·2^(δ/ΔT₂), δ the temperature step, f the typical pixel's own ratio, ΔT₂ the
/// pixel's doubling temperature; f replaces both factors for a pixel without one.
/// </remarks>
/// <param name="inner">Rates as measured.</param>
/// <param name="step">δ, wanted temperature less measured, °C.</param>
/// <param name="typicalFactor">f.</param>
internal sealed class ShiftedRates(PixelRates inner, double step, double typicalFactor) : PixelRates
{
    private const double OwnErrors = 10;

    /// <inheritdoc/>
    public override bool HoldsOrdinary => inner.HoldsOrdinary;

    /// <summary>Brings the rates of a session to another temperature by the law of its profile.</summary>
    /// <param name="inner">Rates as measured, with their temperature.</param>
    /// <param name="celsius">The wanted temperature.</param>
    /// <param name="law">Rate of the typical pixel at a temperature.</param>
    public static ShiftedRates To(PixelRates inner, double celsius, Func<double, double> law)
    {
        double from = inner.ReferenceTemperature ?? celsius,
            factor = law(celsius) / law(from);
        return new ShiftedRates(inner, celsius - from, factor)
        {
            Width = inner.Width,
            Height = inner.Height,
            ReferenceTemperature = celsius,
            TypicalRate = inner.TypicalRate * factor,
        };
    }

    /// <inheritdoc/>
    public override (double Rate, double Uncertainty) At(int index)
    {
        (double rate, double uncertainty) = inner.At(index);
        double factor = Factor(index, rate, uncertainty);
        return (TypicalRate + (rate - inner.TypicalRate) * factor, uncertainty * factor);
    }

    /// <inheritdoc/>
    public override IEnumerable<int> Above(double rate) =>
        inner.Above(double.NegativeInfinity).Where(i => At(i).Rate > rate);

    /// <inheritdoc/>
    public override double Doubling(int index) => inner.Doubling(index);

    /// <inheritdoc/>
    public override bool Flickers(int index) => inner.Flickers(index);

    /// <inheritdoc/>
    public override IEnumerable<int>? Ordinary() => inner.Ordinary();

    /// <summary>
    /// An ordinary pixel's own doubling temperature is mostly noise, so only a pixel well above the typical one is
    /// moved by its own.
    /// </summary>
    private double Factor(int index, double rate, double uncertainty) =>
        rate - inner.TypicalRate > OwnErrors * uncertainty && inner.Doubling(index) is > 2 and < 30 and var doubling
            ? Math.Pow(2, step / doubling)
            : typicalFactor;
}
