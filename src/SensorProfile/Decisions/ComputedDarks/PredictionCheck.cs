using SensorProfile.Fitting.Statistics;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>Checks a computed dark against fresh darks that the user held back.</summary>
internal sealed record PredictionCheck
{
    private const double SameTemperature = 1,
        SameExposure = 0.02,
        MinCoverage = 0.85,
        Sigmas = 1.959963984540054;

    /// <summary>Share of the pixels within their 95 % interval, %.</summary>
    public required Measurement Coverage { get; init; }

    /// <summary>Whether the fresh darks confirm the computed dark.</summary>
    public required bool Agrees { get; init; }

    /// <summary>The finding.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Compares the computed dark with the mean of the set that fits the question.</summary>
    /// <remarks>
    /// The common level is removed by the median of every channel. Variance of a pixel: temporal noise of the typical
    /// pixel and the Poisson part of its signal over the frames, plus the computed dark's own. Agreement: 85 % of the
    /// pixels within their 95 % interval.
    /// </remarks>
    /// <exception cref="DecisionRefusedException">No set fits, or it holds fewer than two frames.</exception>
    public static PredictionCheck Run(
        IReadOnlyList<FrameSet> sets,
        ModeProfile mode,
        DarkPredictionQuestion question,
        PredictedPixels pixels,
        ColourMosaic mosaic,
        double[] gains,
        CancellationToken cancellation
    )
    {
        FrameSet set = sets.Where(s =>
                (long)s.Width * s.Height == pixels.Values.Length
                && ModeChoice.Matches(s.Settings, mode.Settings)
                && s.ExposureSeconds is { } seconds
                && Math.Abs(seconds / question.ExposureSeconds - 1) <= SameExposure
                && (
                    s.TemperatureCelsius is not { } celsius
                    || Math.Abs(celsius - question.TemperatureCelsius) <= SameTemperature
                )
                && s.Frames.Count > 1
            )
            .MaxBy(s => s.Frames.Count)
            ?? throw Refuse.CannotTell(
                FindingCodes.FreshDarksMissing,
                "The fresh frames given for comparison hold no two darks of "
                    + $"{Plain.Seconds(question.ExposureSeconds)} within {Plain.Whole((long)SameTemperature)} °C of "
                    + $"{Plain.Celsius(question.TemperatureCelsius)} with these settings: give such darks, or leave out "
                    + "the comparison."
            );
        using FrameStack stack = FrameStack.Open(set.Frames, cancellation: cancellation);
        if (stack.Samples.Count < 2)
            throw Refuse.CannotTell(
                FindingCodes.FreshDarksMissing,
                "Fewer than two of the fresh darks given for comparison could be read: give at least two, better eight."
            );
        PixelMoments fresh = PixelMoments.Measure(stack.Samples, new WalkOptions { Cancellation = cancellation });
        return Compare(fresh, set, pixels, mosaic, gains);
    }

    private static PredictionCheck Compare(
        PixelMoments fresh,
        FrameSet set,
        PredictedPixels pixels,
        ColourMosaic mosaic,
        double[] gains
    )
    {
        int n = fresh.Frames;
        double[] levels = new double[mosaic.Channels],
            noise = new double[mosaic.Channels],
            typical = new double[mosaic.Channels];
        for (int c = 0; c < levels.Length; c++)
        {
            int channel = c;
            int[] own =
            [
                .. Enumerable
                    .Range(0, fresh.Mean.Length)
                    .Where(i =>
                        mosaic.Channel(i / fresh.Width, i % fresh.Width) == channel
                        && float.IsFinite(pixels.Uncertainty[i])
                    ),
            ];
            levels[c] = OrderStatistics.Median([.. own.Select(i => (double)fresh.Mean[i] - pixels.Values[i])]);
            noise[c] =
                OrderStatistics.Median([.. own.Select(i => (double)fresh.Variance[i])])
                * (n - 1)
                / Probability.ChiSquaredQuantile(0.5, n - 1);
            typical[c] = OrderStatistics.Median([.. own.Select(i => (double)fresh.Mean[i])]);
        }
        long within = 0,
            all = 0;
        for (int i = 0; i < fresh.Mean.Length; i++)
        {
            if (!float.IsFinite(pixels.Uncertainty[i]))
                continue;
            int channel = mosaic.Channel(i / fresh.Width, i % fresh.Width);
            double residual = fresh.Mean[i] - pixels.Values[i] - levels[channel],
                above = Math.Max(0, fresh.Mean[i] - typical[channel]) / gains[channel];
            double variance = (noise[channel] + above) / n + (double)pixels.Uncertainty[i] * pixels.Uncertainty[i];
            all++;
            if (residual * residual <= Sigmas * Sigmas * variance)
                within++;
        }
        double coverage = (double)within / Math.Max(1, all),
            level = levels.Select((l, c) => l * gains[c]).Average();
        bool agrees = coverage >= MinCoverage;
        string said =
            $"{Plain.Percent(coverage)} of the pixels of {Plain.Whole(n)} fresh darks lie within the 95 % interval "
            + $"of the computed one (common level off by {Plain.Number(level, 2)} e⁻)";
        return new PredictionCheck
        {
            Coverage = new(
                100 * coverage,
                100 * Math.Sqrt(coverage * (1 - coverage) / Math.Max(1, all)),
                "%",
                all,
                "pixels of the fresh darks within their 95 % interval"
            ),
            Agrees = agrees,
            Findings =
            [
                new(
                    agrees ? FindingCodes.FreshDarksAgree : FindingCodes.FreshDarksDisagree,
                    agrees ? Severity.Note : Severity.Warning,
                    said + ".",
                    [.. set.Frames.Select(f => f.Name)]
                ),
            ],
        };
    }
}
