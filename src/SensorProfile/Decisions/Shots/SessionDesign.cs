using SensorProfile.Fitting.Models;
using SensorProfile.Frames;

namespace SensorProfile.Decisions.Shots;

/// <summary>
/// A session, as far as the uncertainties of its results follow from the numbers of frames, their exposures and
/// temperatures alone.
/// </summary>
/// <remarks>
/// Read noise of one pixel: 1/√(2(n − 1)) of itself from n bias frames. Gain: a pair gives its variance to e = √(2/N)
/// for N pixels; the variance over the level against the level is a straight line whose value at no light is the gain,
/// so that over levels spread evenly u/gain = 2·e/√p for p pairs, of which the 70 % below the top count. Dark current
/// at one temperature: slope of level against exposure, σ/√Σ n(t − t̄)², with a pedestal good to 0.3 e- per frame.
/// Doubling temperature: ΔT₂²/ln 2 times the uncertainty of the weighted slope of ln I against T, the weights from
/// those slopes, a dark current that doubles every 6 °C from 0.006 e-/px/s at −10 °C, and at least 1 % for every
/// temperature: a typical camera, not yours.
/// </remarks>
/// <param name="Bias">Frames of the largest bias set.</param>
/// <param name="FlatPairs">Pairs of flats.</param>
/// <param name="Darks">Darks by temperature.</param>
/// <param name="Pixels">Pixels of a frame.</param>
internal sealed record SessionDesign(int Bias, int FlatPairs, IReadOnlyList<DarkDesign> Darks, long Pixels)
{
    private const double RateAtMinusTen = 0.006,
        Doubling = PhysicalConstants.UsualDoubling,
        MinRelative = 0.01,
        PairsBelowTop = 0.7;

    /// <summary>The session that was taken.</summary>
    internal static SessionDesign Read(IReadOnlyList<FrameSet> sets, long pixels) =>
        new(
            sets.Where(s => s.Kind == FrameKind.Bias).Select(s => s.Frames.Count).DefaultIfEmpty(0).Max(),
            sets.Where(s => s.Kind == FrameKind.Flat).Sum(s => s.Frames.Count / 2),
            [.. DarkDesign.Read(sets)],
            pixels
        );

    /// <summary>The session that was taken, plus the listed shots.</summary>
    internal SessionDesign With(IEnumerable<PlannedShot> shots)
    {
        SessionDesign after = this;
        foreach (PlannedShot shot in shots)
            after = shot.Kind switch
            {
                FrameKind.Bias => after with { Bias = after.Bias + shot.Frames },
                FrameKind.Flat => after with { FlatPairs = after.FlatPairs + shot.Frames / 2 },
                _ => after.WithDarks(shot.Temperature!.Value, [(shot.Exposure!.Value, shot.Frames)]),
            };
        return after;
    }

    /// <summary>
    /// The largest share by which these shots shrink the uncertainty of an answer, 0…1; 1 when they make one possible.
    /// </summary>
    internal double GainOf(IReadOnlyList<PlannedShot> shots)
    {
        SessionDesign after = With(shots);
        IEnumerable<(double? Before, double? After)> answers =
        [
            (ReadNoise, after.ReadNoise),
            (Gain, after.Gain),
            (DoublingTemperature, after.DoublingTemperature),
            .. after.Darks.Select(d => (RateDoubt(At(d.Celsius)), RateDoubt(d))),
        ];
        return answers.Max(a =>
            a.After is not { } then ? 0
            : a.Before is { } now ? 1 - then / now
            : 1
        );
    }

    private static double? RateDoubt(DarkDesign? darks) =>
        darks is null ? null : Finite(Math.Sqrt(darks.SlopeVariance));

    internal SessionDesign WithDarks(double celsius, IReadOnlyList<(double Seconds, int Frames)> frames)
    {
        DarkDesign? before = At(celsius);
        return this with
        {
            Darks =
            [
                .. Darks.Where(d => d != before),
                new DarkDesign(before?.Celsius ?? celsius, [.. before?.Exposures ?? [], .. frames]),
            ],
        };
    }

    internal DarkDesign? At(double celsius) =>
        Darks.FirstOrDefault(d => ShotList.SameTemperature > Math.Abs(d.Celsius - celsius));

    /// <summary>Relative uncertainty of the read noise of one pixel, %; null with fewer than two frames.</summary>
    internal double? ReadNoise => Bias < 2 ? null : 100 / Math.Sqrt(2.0 * (Bias - 1));

    /// <summary>Relative uncertainty of the gain, %; null with fewer than two pairs.</summary>
    internal double? Gain =>
        FlatPairs < 2 ? null : 100 * 2 * Math.Sqrt(2.0 / Math.Max(Pixels, 1) / (PairsBelowTop * FlatPairs));

    /// <summary>
    /// Uncertainty of the best-known dark current, e-/px/s; null with one exposure at every temperature.
    /// </summary>
    internal double? DarkCurrent =>
        Finite(Math.Sqrt(Darks.Select(d => d.SlopeVariance).DefaultIfEmpty(double.PositiveInfinity).Min()));

    /// <summary>
    /// Uncertainty of the doubling temperature, °C; null with fewer than two temperatures of two exposures.
    /// </summary>
    internal double? DoublingTemperature => Finite(Doubling * Doubling / Math.Log(2) * Math.Sqrt(LawVariance));

    /// <summary>Variance of the slope of ln I against T; infinite with fewer than two temperatures.</summary>
    private double LawVariance
    {
        get
        {
            DarkDesign[] known = [.. Darks.Where(d => double.IsFinite(d.SlopeVariance))];
            if (known.Length < 2)
                return double.PositiveInfinity;
            double[] weights =
            [
                .. known.Select(d =>
                    1
                    / (
                        d.SlopeVariance / Math.Pow(RateAtMinusTen * Math.Pow(2, (d.Celsius + 10) / Doubling), 2)
                        + MinRelative * MinRelative
                    )
                ),
            ];
            double mean = known.Zip(weights, (d, w) => d.Celsius * w).Sum() / weights.Sum();
            return 1 / known.Zip(weights, (d, w) => w * (d.Celsius - mean) * (d.Celsius - mean)).Sum();
        }
    }

    internal static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
