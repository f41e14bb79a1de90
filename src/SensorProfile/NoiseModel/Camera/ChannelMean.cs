using SensorProfile.Profiles;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>One read noise and one gain for a colour camera whose channels differ.</summary>
internal static class ChannelMean
{
    /// <summary>The finding attached to every answer that uses this mean.</summary>
    internal static Finding Note { get; } =
        new(
            FindingCodes.ChannelsAveraged,
            Severity.Note,
            "The colour channels of this camera differ in gain or read noise, so the answer uses their mean; the "
                + "spread between them is in its uncertainty."
        );

    /// <summary>
    /// Whether the channels have a gain or read noise that the mode as a whole lacks, because colours are scaled
    /// separately.
    /// </summary>
    internal static bool IsNeeded(ModeProfile mode) =>
        (mode.ReadNoise is null && mode.Channels.Any(c => c.ReadNoise is { Value: > 0 }))
        || (mode.Gain is null && mode.Channels.Any(c => c.Gain is { Value: > 0 }));

    /// <summary>
    /// The mode with read noise and gain filled in from its channels, each converted to electrons with its own gain;
    /// the full well is that of the colour that fills first.
    /// </summary>
    internal static ModeProfile Average(ModeProfile mode) =>
        mode with
        {
            ReadNoise = mode.ReadNoise ?? Mean(mode.Channels.Select(c => c.ReadNoise)),
            Gain = mode.Gain ?? Mean(mode.Channels.Select(c => c.Gain)),
            FullWell = mode.Channels.Select(c => c.FullWell).OfType<Measurement>().MinBy(w => w.Value) ?? mode.FullWell,
        };

    /// <summary>
    /// Each channel's gain over the mean gain, and that mean with only its own uncertainty; null where the mode has one
    /// gain or a channel has none.
    /// </summary>
    internal static (double[] Weights, Measurement Mean)? ByColour(ModeProfile mode)
    {
        Measurement[] gains = [.. mode.Channels.Select(c => c.Gain).OfType<Measurement>().Where(g => g.Value > 0)];
        if (mode.Gain is not null || gains.Length == 0 || gains.Length < mode.Channels.Count)
            return null;
        double mean = gains.Average(g => g.Value);
        double doubt = Math.Sqrt(gains.Sum(g => g.StandardUncertainty * g.StandardUncertainty)) / gains.Length;
        return (
            [.. gains.Select(g => g.Value / mean)],
            new Measurement(mean, doubt, gains[0].Unit, gains.Sum(g => g.Samples), "mean of the colour channels")
        );
    }

    /// <summary>Mean of the known values; its uncertainty includes theirs and their spread.</summary>
    private static Measurement? Mean(IEnumerable<Measurement?> channels)
    {
        Measurement[] known = [.. channels.OfType<Measurement>()];
        if (known.Length == 0)
            return null;
        double mean = known.Average(m => m.Value);
        double within = known.Average(m => m.StandardUncertainty * m.StandardUncertainty),
            between = known.Average(m => (m.Value - mean) * (m.Value - mean));
        return new Measurement(
            mean,
            Math.Sqrt(within + between),
            known[0].Unit,
            known.Sum(m => m.Samples),
            "mean of the colour channels"
        );
    }
}
