using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>The set points of one question and one sky, with their spreads over the profile's uncertainties.</summary>
internal sealed class SetpointSolution
{
    private readonly SensorReader reader;
    private readonly SetpointQuestion question;
    private readonly double sky;
    private readonly Propagation.Spread[] spreads;

    private SetpointSolution(SensorReader reader, SetpointQuestion question, SkyRate sky)
    {
        (this.reader, this.question, this.sky) = (reader, question, sky.Rate.Value);
        Temperatures = [.. Grid(reader)];
        double?[] best = Decide(reader.Best, this.sky);
        spreads = Propagation.Through(reader, sky.Rate, Decide, Propagation.ManyDraws);
        (Typical, AtShare, Diminishing) = (best[0], best[1], best[2]);
        Wanted =
            AtShare is double share && Typical is double typical ? Math.Min(typical, share)
            : AtShare is null && reader.Best.Rates is null ? Typical
            : null;
    }

    internal static SetpointSolution Of(SensorReader reader, SetpointQuestion question, SkyRate sky) =>
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

    internal Propagation.Spread TypicalSpread => spreads[0];

    internal Propagation.Spread ShareSpread => spreads[1];

    internal Propagation.Spread DiminishingSpread => spreads[2];

    internal Propagation.Spread WantedSpread =>
        reader.Best.Rates is null || Typical < AtShare ? spreads[0] : spreads[1];

    private double[] Temperatures { get; }

    internal double ExtraTypical(double celsius) =>
        SetpointAdvice.Extra(reader.Best, sky, question.ExposureSeconds, reader.Best.Law.RateAt(celsius));

    internal double? ExtraAtShare(double celsius) =>
        reader.Best.RateOfRank(question.Share, celsius) is double rate
            ? SetpointAdvice.Extra(reader.Best, sky, question.ExposureSeconds, rate)
            : null;

    /// <summary>The extra noise that decides: of the share when known, else of the typical pixel.</summary>
    internal double Extra(double celsius) => Math.Max(ExtraTypical(celsius), ExtraAtShare(celsius) ?? 0);

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

    private double?[] Decide(SensorModel sensor, double drawnSky)
    {
        double t = question.ExposureSeconds,
            electronics = sensor.ReadVariance + sensor.QuantisationVariance;
        double allowance = SetpointAdvice.Allowance(question.Loss, drawnSky, t, electronics);
        double small = SetpointAdvice.Allowance(SetpointAdvice.DiminishingShare, drawnSky, t, electronics);
        double Ranked(double celsius) => sensor.RateOfRank(question.Share, celsius)!.Value;
        double? typical = SetpointAdvice.WarmestWithin(sensor.Law.RateAt, allowance);
        double? share = sensor.Rates is null ? null : SetpointAdvice.WarmestWithin(Ranked, allowance);
        double? diminishing = SetpointAdvice.WarmestWithin(sensor.Rates is null ? sensor.Law.RateAt : Ranked, small);
        return
        [
            typical,
            share,
            diminishing,
            .. Temperatures.Select(c => (double?)SetpointAdvice.Extra(sensor, drawnSky, t, sensor.Law.RateAt(c))),
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
