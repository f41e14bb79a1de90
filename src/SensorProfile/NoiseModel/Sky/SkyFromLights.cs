using SensorProfile.Frames;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.NoiseModel.Sky;

/// <summary>
/// The sky from the user's own lights: their background above the darks, converted with the profile's gain.
/// </summary>
/// <remarks>
/// S = g·(B − D)/t. B and D are means of a frame's pixels within 3 standard deviations, channel by channel, iterated
/// until nothing changes: stars, hot pixels and satellites fall outside. Faint stars that stay inside pull the mean
/// above the median of what is kept; that distance enters the uncertainty, as does the scatter of the sky from light to
/// light. Without matching darks D is the bias level plus the profile's own dark current.
/// </remarks>
public static class SkyFromLights
{
    // spread over the night: more would only cost time, not change a background
    private const int MaxFrames = 12;
    private const double ClipLimit = 3,
        FullFrom = 0.97; // of the level at which pixels saturate: the noise and the fall-off of the sky reach it

    /// <summary>Reads the lights (and darks) and measures the sky.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">The mode of the lights.</param>
    /// <param name="lights">Lights of one exposure.</param>
    /// <param name="darks">Darks of the same exposure, temperature and settings; null uses the profile.</param>
    /// <param name="cancellation">Ends the reading.</param>
    /// <exception cref="DecisionRefusedException">The sky cannot be measured from these frames.</exception>
    public static SkyRate Measure(
        CameraProfile profile,
        ModeProfile mode,
        FrameSet lights,
        FrameSet? darks = null,
        CancellationToken cancellation = default
    )
    {
        if (lights.ExposureSeconds is not > 0)
            throw Refuse.CannotTell(
                FindingCodes.ExposureMissing,
                "The exposure of the lights is not known: enter it in the capture table, or give the sky as a "
                    + "number."
            );
        (double[] Weights, Measurement Mean)? byColour = ChannelMean.ByColour(mode);
        Measurement gain = mode.Gain
            ?? byColour?.Mean
            ?? ChannelMean.Average(mode).Gain
            ?? throw Refuse.CannotTell(
                FindingCodes.GainMissing,
                "The profile has no gain, so the background of the lights cannot be turned into electrons: add "
                    + "flat pairs and characterise again, or give the sky as a number."
            );
        // Colours scaled apart: the mean of gain·level, not the product of the means.
        double[] weights = byColour?.Weights ?? [];
        Measurement background = Level(lights, weights, cancellation),
            dark = darks is not null
                ? Level(darks, weights, cancellation)
                : Predicted(profile, mode, lights, gain, weights);
        if (mode.SaturationLevel is { } full && background.Value >= FullFrom * full.Value)
            throw Refuse.CannotTell(
                FindingCodes.WellFills,
                $"The background of these lights, {Plain.Number(background.Value)} ADU, is where this camera saturates "
                    + $"({Plain.Number(full.Value)} ADU): no dark or flat can rescue them. Expose shorter."
            );
        double difference = background.Value - dark.Value,
            u = Math.Sqrt(Square(background.StandardUncertainty) + Square(dark.StandardUncertainty));
        SkyRate sky = SkyRate.FromBackground(
            new Measurement(difference, u, "ADU", background.Samples, "clipped means"),
            gain,
            lights.ExposureSeconds.Value
        );
        return sky with
        {
            Assumptions =
            [
                darks is not null
                    ? "background of the lights above darks of the same kind"
                    : "background of the lights above the profile's bias level and dark current",
            ],
        };
    }

    private static Measurement Predicted(
        CameraProfile profile,
        ModeProfile mode,
        FrameSet lights,
        Measurement gain,
        double[] weights
    )
    {
        if (mode.BiasLevel is not { } bias || lights.TemperatureCelsius is not double celsius)
            throw Refuse.CannotTell(
                FindingCodes.DarksMissing,
                "Without darks the sky needs the bias level of the profile and the temperature of the lights: "
                    + "give darks of the same exposure, or the sky as a number."
            );
        double rate = SensorReader.Of(profile, mode).Best.Law.RateAt(celsius),
            signal = rate * lights.ExposureSeconds!.Value / gain.Value;
        // a camera that pins its black level takes the dark signal off itself, in lights too
        double left = mode.DarkCurrent?.Form == DarkForm.Variance ? 0 : signal;
        double stability = mode.FixedPattern?.BiasStability?.Value ?? 0;
        return new Measurement(
            bias.Value + Uneven(mode, weights) + left,
            Math.Sqrt(Square(bias.StandardUncertainty) + Square(0.1 * signal) + Square(stability)),
            "ADU",
            bias.Samples,
            "bias level and dark current of the profile"
        );
    }

    // Weighted level where levels differ from colour to colour, ADU.
    private static double Uneven(ModeProfile mode, double[] weights) =>
        weights
            .Select((w, c) => w * ((mode.Channels[c].BiasLevel ?? mode.BiasLevel!).Value - mode.BiasLevel!.Value))
            .DefaultIfEmpty(0)
            .Average();

    private static Measurement Level(FrameSet set, double[] weights, CancellationToken cancellation)
    {
        int count = Math.Min(set.Frames.Count, MaxFrames);
        Frame[] chosen =
        [
            .. Enumerable.Range(0, count).Select(i => set.Frames[(int)((long)i * set.Frames.Count / count)]),
        ];
        using FrameStack stack = FrameStack.Open(chosen, cancellation: cancellation);
        if (stack.Samples.Count == 0)
            throw Refuse.CannotTell(
                FindingCodes.FramesUnreadable,
                $"None of the {Plain.Whole(count)} frames tried could be read, the first because: "
                    + $"{stack.Refused[0].Reason}"
            );
        ColourMosaic mosaic = ColourMosaic.Of(chosen[0].ColourFilter);
        (double Mean, double Pull)[] levels =
        [
            .. stack.Samples.Select(frame => LevelOf(FrameStatistics.Measure(frame, mosaic), weights)),
        ];
        double mean = levels.Average(l => l.Mean),
            pull = levels.Average(l => l.Pull);
        double scatter =
            levels.Length > 1 ? Math.Sqrt(levels.Sum(l => Square(l.Mean - mean)) / (levels.Length - 1)) : 0;
        return new Measurement(
            mean,
            Math.Sqrt(Square(scatter) + Square(pull)),
            "ADU",
            levels.Length,
            "clipped mean of the pixels"
        );
    }

    private static (double Mean, double Pull) LevelOf(FrameStatistics frame, double[] weights)
    {
        double Share(int channel) =>
            (weights.Length == frame.Channels.Count ? weights[channel] : 1) / frame.Channels.Count;
        double mean = 0,
            pull = 0;
        foreach ((int c, ChannelStatistics channel) in frame.Channels.Index())
        {
            ClippedMoments kept = channel.Clipped(ClipLimit);
            long below = channel.Codes.CountBetween(channel.Codes.Minimum, kept.Lowest - 1);
            double median = channel.Codes.Quantile((below + 0.5 * kept.Count) / channel.Codes.Count);
            mean += Share(c) * kept.Mean;
            pull += Share(c) * Math.Abs(kept.Mean - median);
        }
        return (mean, pull);
    }

    private static double Square(double x) => x * x;
}
