using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.Exposure;

/// <summary>The shortest exposure in which read noise raises the noise by no more than an accepted loss.</summary>
public static class SubExposure
{
    /// <summary>c·R²/B with c = 1/((1+p)² − 1), s: there √(1 + R²/(B·t)) − 1 = p.</summary>
    /// <param name="readVariance">R² (with the quantisation), e-².</param>
    /// <param name="background">B, sky and dark together, e-/px/s.</param>
    /// <param name="loss">p.</param>
    internal static double Shortest(double readVariance, double background, double loss) =>
        readVariance / background / ((1 + loss) * (1 + loss) - 1);

    /// <summary>The shortest exposure for one sky, or for three named skies side by side.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="temperatureCelsius">Sensor temperature, °C.</param>
    /// <param name="sky">The sky; null for the three named ones.</param>
    /// <param name="loss">Accepted rise of the noise.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the profile cannot answer it.</exception>
    public static SubExposureAnswer Find(
        CameraProfile profile,
        ModeProfile mode,
        double temperatureCelsius,
        SkyRate? sky = null,
        double loss = 0.05
    )
    {
        Refuse.UnlessShare(loss, "loss-out-of-range", "accepted loss");
        var reader = SensorReader.Of(profile, mode);
        Finding[] findings =
        [
            .. reader.Notes,
            .. Guard.Temperature(reader, temperatureCelsius, "temperature of the lights"),
        ];
        if (sky is not null)
            return Solve(reader, temperatureCelsius, sky, loss, findings);
        SubExposureAnswer[] answers =
        [
            .. NamedSkies.All.Select(named => Solve(reader, temperatureCelsius, named, loss, findings)),
        ];
        return answers[0] with
        {
            Sentence =
                "Expose at least "
                + $"{string.Join(", ", answers.Select(a => $"{Said.Seconds(Up(a.Quantities["shortestExposure"]!.Value))} under a {a.Sky.Name}"))}; "
                + ""
                + ""
                + ""
                + ""
                + "give your own sky with --sky.",
            OtherSkies = answers[1..],
        };
    }

    private static SubExposureAnswer Solve(
        SensorReader reader,
        double celsius,
        SkyRate sky,
        double loss,
        IReadOnlyList<Finding> findings
    )
    {
        Guard.Sky(sky.Rate);
        double Of(SensorModel sensor, double s) =>
            Shortest(
                sensor.ReadVariance + sensor.QuantisationVariance,
                s + Math.Max(sensor.Law.RateAt(celsius), 0),
                loss
            );
        double shortest = Of(reader.Best, sky.Rate.Value);
        var quantities = new QuantityList();
        quantities.Add(
            "shortestExposure",
            shortest,
            "s",
            "read noise raises the noise by the accepted loss, uncertainties drawn",
            Propagation.Through(reader, sky.Rate, (model, s) => [Of(model, s)])[0]
        );
        return new SubExposureAnswer
        {
            Sky = sky,
            Sentence =
                $"Expose at least {Said.Seconds(Up(shortest))}: from there on read noise adds no more than {Said.Percent(loss)}.",
            Reason =
                $"Read noise of {Said.Number(Math.Sqrt(reader.Best.ReadVariance))} e⁻ against "
                + $"{Said.Number(sky.Rate.Value)} e⁻/px/s of sky and "
                + $"{Said.Number(reader.Best.Law.RateAt(celsius), 2)} e⁻/px/s of dark current.",
            Verdict = "answered",
            Quantities = quantities.Quantities,
            Intervals = quantities.Intervals,
            Findings = findings,
            Curve =
            [
                .. Enumerable
                    .Range(0, 25)
                    .Select(i => Math.Pow(10, i / 8.0))
                    .Select(t => new SubExposurePoint(t, 100 * Loss(reader.Best, sky.Rate.Value, celsius, t))),
            ],
        };
    }

    private static double Loss(SensorModel sensor, double sky, double celsius, double t) =>
        Math.Sqrt(
            1
                + (sensor.ReadVariance + sensor.QuantisationVariance)
                    / ((sky + Math.Max(sensor.Law.RateAt(celsius), 0)) * t)
        ) - 1;

    internal static double Up(double seconds) => seconds < 10 ? Math.Ceiling(seconds * 10) / 10 : Math.Ceiling(seconds);
}
