using SensorProfile.Profiles;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>One read noise and one gain for a colour camera whose channels do not agree on one.</summary>
internal static class ChannelMean
{
    /// <summary>Told with every answer that rests on it.</summary>
    internal static Finding Note { get; } =
        new(
            "channels-averaged",
            Severity.Note,
            "The colour channels of this camera differ in gain or read noise, so the answer uses their mean; the "
                + "spread between them is in its uncertainty."
        );

    /// <summary>The mode with read noise and gain filled in from its channels.</summary>
    internal static ModeProfile Of(ModeProfile mode) =>
        mode with
        {
            ReadNoise = Mean(mode.Channels.Select(c => c.ReadNoise)),
            Gain = mode.Gain ?? Mean(mode.Channels.Select(c => c.Gain)),
        };

    /// <summary>Mean of the known ones; its uncertainty holds theirs and their spread.</summary>
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
