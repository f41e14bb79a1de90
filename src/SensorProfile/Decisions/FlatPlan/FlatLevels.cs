using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;

namespace SensorProfile.Decisions.FlatPlan;

/// <summary>The levels that the flats of a camera may have: bright, but linear to the brightest pixel.</summary>
/// <remarks>
/// A flat that falls off by v from the centre to the corners, as the square of the distance, has a mean of 1 − v/3 of
/// its centre, because the mean square distance in a rectangle is a third of that of its corners. Light and colour may
/// be brighter still: the brightest colour by what the user's own flats show, a pixel by five times the response
/// nonuniformity, the lamp by a fifth while the flats are taken (our own choice). All of it together stays below 95 %
/// of saturation, where linearity was tested (EMVA 1288). A response that departs from a straight line by ε(level) is
/// divided into the lights: between centre and corner of the flat it leaves a gradient equal to the difference in ε.
/// </remarks>
internal sealed class FlatLevels
{
    /// <summary>Steps in which levels are advised, a share of the full well.</summary>
    private const double Step = 0.05;

    private const double LinearTo = 0.95,
        LampRises = 1.2,
        PixelSigmas = 5,
        Nearly = 0.95; // so near to the levels that were measured the last of them stands in

    private readonly ModeProfile mode;
    private readonly LossLimits limits;
    private readonly double gain;

    /// <param name="mode">The mode, with one gain.</param>
    /// <param name="limits">Fall-off of the flat and accepted smooth residual.</param>
    /// <exception cref="DecisionRefusedException">The profile has no gain, or neither full well nor flats.</exception>
    internal FlatLevels(ModeProfile mode, LossLimits limits)
    {
        (this.mode, this.limits) = (mode, limits);
        gain = mode.Gain is { Value: > 0 } known
            ? known.Value
            : throw Refuse.CannotTell(
                FindingCodes.GainMissing,
                "The profile has no gain, so the electrons in a flat are not known: add flat pairs and characterise again."
            );
        WellKnown = mode.FullWell is { Value: > 0 };
        Well = WellKnown
            ? mode.FullWell!
            : BrightestMeasured()
                ?? throw Refuse.CannotTell(
                    FindingCodes.FullWellMissing,
                    "The profile has neither a full well nor the flats that would show a level: add flats up to white and "
                        + "characterise again."
                );
    }

    /// <summary>Whether the full well was measured.</summary>
    internal bool WellKnown { get; }

    /// <summary>The full well, e-; where it was not measured, the signal of the brightest flats.</summary>
    internal Measurement Well { get; }

    /// <summary>Mean level of a frame whose brightest pixels end the linear range, a share of the full well.</summary>
    internal double Top =>
        LinearTo
        * Centre
        / (BrightestColour() * LampRises * (1 + PixelSigmas * (mode.ResponseNonuniformity?.Value ?? 0) / 100));

    /// <summary>Levels to choose from, as shares of <see cref="Well"/>, faintest first.</summary>
    internal IReadOnlyList<double> Candidates =>
        !WellKnown ? [1]
        : Top < 2 * Step ? [Math.Round(Top, 3)]
        : [.. Enumerable.Range(2, (int)Math.Floor(Top / Step + 1e-9) - 1).Select(i => Math.Round(i * Step, 2))];

    /// <summary>One level in full.</summary>
    /// <param name="share">As a share of <see cref="Well"/>.</param>
    /// <param name="noise">The stack.</param>
    /// <param name="flats">Number of flats needed there.</param>
    internal FlatLevel At(double share, FlatNoise noise, int? flats)
    {
        double electrons = share * Well.Value;
        double? bend = Bend(electrons / gain) is double miss ? noise.InStackNoise(miss) : null;
        return new FlatLevel(
            WellKnown ? share : null,
            electrons,
            mode.BiasLevel is { } bias ? bias.Value + electrons / gain : null,
            bend,
            bend is double gradient ? gradient <= limits.SmoothLimit : !Tested,
            !WellKnown || share <= Top + 1e-9,
            flats
        );
    }

    /// <summary>Ratio of a flat's mean to its centre.</summary>
    private double Centre => 1 - limits.FlatFallOff / 3;

    private Measurement? BrightestMeasured()
    {
        PhotonTransferPoint[] points = [.. (mode.PhotonTransfer?.Curves ?? []).SelectMany(c => c.Points)];
        return points.MaxBy(p => p.Signal) is { Signal: > 0 } brightest
            ? new Measurement(
                brightest.Signal * gain,
                brightest.Signal * mode.Gain!.StandardUncertainty,
                "e-",
                1,
                "brightest flats"
            )
            : null;
    }

    /// <summary>Signal of a colour over the mean of all colours, in the user's own flats; 1 without colours.</summary>
    private double Relative(PhotonTransferCurve colour)
    {
        IReadOnlyList<PhotonTransferCurve> curves = mode.PhotonTransfer!.Curves;
        double[] ratios =
        [
            .. Enumerable
                .Range(0, curves.Min(c => c.Points.Count))
                .Select(i => colour.Points[i].Signal / curves.Average(c => c.Points[i].Signal))
                .Where(ratio => ratio > 0 && double.IsFinite(ratio))
                .Order(),
        ];
        return ratios.Length == 0 ? 1 : ratios[ratios.Length / 2];
    }

    private double BrightestColour() => (mode.PhotonTransfer?.Curves ?? []).Select(Relative).Append(1).Max();

    /// <summary>
    /// Difference between centre and corner of a flat in the departure from a straight line, as a share; for the worst
    /// colour. Null where linearity was not tested over these signals.
    /// </summary>
    /// <param name="signal">Mean of the flat over all colours, ADU above the level without light.</param>
    private double? Bend(double signal)
    {
        double? worst = null;
        foreach (PhotonTransferCurve curve in mode.PhotonTransfer?.Curves ?? [])
        {
            (double Signal, double Deviation)[] line = Line(curve);
            double centre = signal * Relative(curve) / Centre,
                corner = centre * (1 - limits.FlatFallOff);
            // signals outside the measured levels were not tested
            if (line.Length < 2 || corner < line[0].Signal * Nearly || centre * Nearly > line[^1].Signal)
                continue;
            double[] here =
            [
                At(line, corner),
                At(line, centre),
                .. line.Where(p => p.Signal > corner && p.Signal < centre).Select(p => p.Deviation),
            ];
            worst = Math.Max(worst ?? 0, (here.Max() - here.Min()) / 100);
        }
        return worst;
    }

    /// <summary>Whether linearity was tested at any level.</summary>
    private bool Tested => (mode.PhotonTransfer?.Curves ?? []).Any(c => Line(c).Length > 1);

    private static (double Signal, double Deviation)[] Line(PhotonTransferCurve curve) =>
        [
            .. curve
                .Points.Where(p => p.LinearityDeviation is not null)
                .GroupBy(p => p.Exposure)
                .Select(g => (g.Average(p => p.Signal), g.Average(p => p.LinearityDeviation!.Value)))
                .OrderBy(p => p.Item1),
        ];

    /// <summary>The departure at a signal, interpolated linearly between the measured levels.</summary>
    private static double At((double Signal, double Deviation)[] line, double signal)
    {
        int above = Array.FindIndex(line, p => p.Signal >= signal);
        if (above < 0)
            return line[^1].Deviation;
        if (above == 0)
            return line[0].Deviation;
        ((double x0, double y0), (double x1, double y1)) = (line[above - 1], line[above]);
        return x1 > x0 ? y0 + (y1 - y0) * (signal - x0) / (x1 - x0) : y1;
    }
}
