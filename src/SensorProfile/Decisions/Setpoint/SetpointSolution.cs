using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>The set points of one question and one sky, with their spreads over the profile's uncertainties.</summary>
internal sealed class SetpointSolution
{
    private const double ColdestCooled = -40; // common practice, no source, °C

    private readonly SensorReader reader;
    private readonly SetpointQuestion question;
    private readonly double sky;
    private readonly UncertaintyDraws.Spread[] spreads;

    private SetpointSolution(SensorReader reader, SetpointQuestion question, SkyRate sky)
    {
        (this.reader, this.question, this.sky) = (reader, question, sky.Rate.Value);
        double?[] best = Solve(reader.Best, this.sky, null);
        (Typical, AtShare, Diminishing) = (best[0], best[1], best[2]);
        Wanted =
            AtShare is double share && Typical is double typical ? Math.Min(typical, share)
            : AtShare is null && reader.Best.Rates is null ? Typical
            : null;
        Measured = SetpointChoice.Measured(Wanted, reader.Range);
        Choice = Within(Measured);
        Choice = Choice with { Celsius = Choice.Celsius + 0.0 }; // never −0
        Temperatures = [.. Grid(reader).Append(Choice.Celsius).Order().Distinct()];
        spreads = UncertaintyDraws.Through(reader, sky.Rate, Decide, UncertaintyDraws.ManyDraws);
        GlowExtra = SetpointAdvice.Extra(reader.Best, this.sky, question.ExposureSeconds, Uncooled());
    }

    internal static SetpointSolution Solve(SensorReader reader, SetpointQuestion question, SkyRate sky) =>
        new(reader, question, sky);

    /// <summary>Warmest temperature for the typical pixel, °C.</summary>
    internal double? Typical { get; }

    /// <summary>Warmest temperature for the pixel at the stated share, °C.</summary>
    internal double? AtShare { get; }

    /// <summary>
    /// Warmest temperature at which any colder one gains less than 1 %, °C (pixel at the stated share when known).
    /// </summary>
    internal double? Diminishing { get; }

    /// <summary>The colder of the two; null when there is none.</summary>
    internal double? Wanted { get; }

    /// <summary>The temperature that stays within the loss and was measured, whatever cooler and air allow.</summary>
    internal SetpointChoice Measured { get; }

    /// <summary>The temperature that is advised.</summary>
    internal SetpointChoice Choice { get; }

    /// <summary>
    /// Extra noise of the part that no cooling removes: floor of the law, glow of the pixel at the stated share.
    /// </summary>
    internal double GlowExtra { get; }

    /// <summary>
    /// Coldest and warmest advice within the uncertainties; null where an end lies beyond every temperature.
    /// </summary>
    internal (SetpointChoice Low, SetpointChoice High)? ChoiceSpread =>
        WantedSpread is { Low: double low, High: double high }
            ? (Within(SetpointChoice.Measured(low, reader.Range)), Within(SetpointChoice.Measured(high, reader.Range)))
            : null;

    internal UncertaintyDraws.Spread TypicalSpread => spreads[0];

    internal UncertaintyDraws.Spread ShareSpread => spreads[1];

    internal UncertaintyDraws.Spread DiminishingSpread => spreads[2];

    internal UncertaintyDraws.Spread WantedSpread =>
        reader.Best.Rates is null || Typical < AtShare ? spreads[0] : spreads[1];

    private double[] Temperatures { get; }

    internal double ExtraTypical(double celsius) =>
        SetpointAdvice.Extra(reader.Best, sky, question.ExposureSeconds, reader.Best.Law.RateAt(celsius));

    internal double? ExtraAtShare(double celsius) =>
        reader.Best.RateOfRank(question.Share, celsius, question.ExposureSeconds) is double rate
            ? SetpointAdvice.Extra(reader.Best, sky, question.ExposureSeconds, rate)
            : null;

    /// <summary>
    /// The extra noise that decides: the larger of the typical pixel's and, when known, that at the stated share.
    /// </summary>
    internal double Extra(double celsius) => Math.Max(ExtraTypical(celsius), ExtraAtShare(celsius) ?? 0);

    /// <summary>
    /// Longest light that stays within the loss at a temperature: t = a·(R² + q²)/(I − a·S) with a = (1+p)² − 1, s;
    /// null where the sky alone covers the dark current.
    /// </summary>
    internal double? ExposureWithin(double celsius)
    {
        double share = (1 + question.Loss) * (1 + question.Loss) - 1,
            electronics = reader.Best.ReadVariance + reader.Best.QuantisationVariance,
            beyond = DecidingRate(celsius) - share * sky;
        return beyond > 0 ? share * electronics / beyond : null;
    }

    /// <summary>The point of the curve at the advised temperature.</summary>
    internal SetpointPoint PointOfChoice => Curve().First(point => point.Temperature == Choice.Celsius);

    internal IReadOnlyList<SetpointPoint> Curve() =>
        [
            .. Temperatures.Select(
                (t, i) =>
                    new SetpointPoint(
                        t,
                        100 * ExtraTypical(t),
                        100 * ExtraAtShare(t),
                        100 * spreads[3 + i].Low,
                        100 * spreads[3 + i].High,
                        t < reader.Range.Low - 0.05 || t > reader.Range.High + 0.05
                    )
            ),
        ];

    private double DecidingRate(double celsius) =>
        Math.Max(
            reader.Best.Law.RateAt(celsius),
            reader.Best.RateOfRank(question.Share, celsius, question.ExposureSeconds) ?? 0
        );

    /// <summary>
    /// What the deciding pixel still has when nothing thermal is left: floor, and glow at the coldest temperature that
    /// any cooler holds, e-/px/s. Glow falls with temperature too: what a weak cooler leaves of it is that cooler's
    /// limit.
    /// </summary>
    private double Uncooled()
    {
        double coldest = Math.Min(reader.Range.Low, ColdestCooled);
        SensorModel best = reader.Best;
        RateFactors glow = best.GrowthAt(coldest, question.ExposureSeconds) with { Thermal = 0, Own = 0 };
        return Math.Max(best.Law.Floor, best.Pixels?.RateOfRank(question.Share, glow) ?? 0);
    }

    private SetpointChoice Within(SetpointChoice measured)
    {
        if (!question.Cooled || question.Ambient.Count == 0)
            return measured;
        double air = question.Ambient.Max(night => night.Celsius);
        return measured.Within(reader.Range, air, question.ColdestHeld(air));
    }

    private double?[] Decide(SensorModel sensor, double drawnSky) =>
        [
            .. Solve(sensor, drawnSky, this),
            .. Temperatures.Select(c =>
                (double?)SetpointAdvice.Extra(sensor, drawnSky, question.ExposureSeconds, sensor.Law.RateAt(c))
            ),
        ];

    /// <summary>The set points of one draw; each search starts at the best estimate's answer.</summary>
    private double?[] Solve(SensorModel sensor, double drawnSky, SetpointSolution? near)
    {
        double t = question.ExposureSeconds,
            electronics = sensor.ReadVariance + sensor.QuantisationVariance;
        double allowance = SetpointAdvice.Allowance(question.Loss, drawnSky, t, electronics);
        double small = SetpointAdvice.Allowance(SetpointAdvice.DiminishingShare, drawnSky, t, electronics);
        double? Share(double allowed, double? expected) =>
            SetpointAdvice.WarmestWithin(
                celsius => sensor.ShareAbove(allowed, celsius, t)!.Value,
                1 - question.Share,
                expected
            );
        return
        [
            SetpointAdvice.WarmestWithin(sensor.Law.RateAt, allowance),
            sensor.Rates is null ? null : Share(allowance, near?.AtShare),
            sensor.Rates is null
                ? SetpointAdvice.WarmestWithin(sensor.Law.RateAt, small)
                : Share(small, near?.Diminishing),
        ];
    }

    private static IEnumerable<double> Grid(SensorReader reader)
    {
        double from = Math.Ceiling(reader.Range.Low - Refuse.ExtrapolationCelsius),
            to = Math.Floor(reader.Range.High + Refuse.ExtrapolationCelsius);
        for (double t = from; t <= to; t++)
            yield return t;
    }
}
