using System.Runtime.CompilerServices;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>One colour of a camera as a mode of its own.</summary>
/// <param name="Name">R, G1, G2 or B.</param>
/// <param name="Mode">The mode with read noise, gain and full well of this colour.</param>
internal sealed record ColourMode(string Name, ModeProfile Mode);

/// <summary>
/// The colours of a camera that scales them separately: no single gain or read noise holds for all, so each is judged
/// by itself. They share the dark current, which is in electrons and so independent of the scaling.
/// </summary>
internal static class ColourModes
{
    // successive questions are mostly about the same mode: its colours, and what is cached with them, are kept
    private static readonly ConditionalWeakTable<ModeProfile, ColourMode[]> known = [];

    /// <summary>The finding attached to an answer that holds for all colours at once.</summary>
    /// <param name="mode">The mode that was asked about.</param>
    internal static IEnumerable<Finding> ServedTogether(ModeProfile mode) =>
        Find(mode).Count == 0
            ? []
            :
            [
                new Finding(
                    FindingCodes.ColoursApart,
                    Severity.Note,
                    $"This camera scales its colours ({string.Join(", ", Find(mode).Select(c => c.Name))}) separately, so "
                        + "each was judged by itself: this answer serves the strictest of them."
                ),
            ];

    /// <summary>The colours; empty where one gain holds for all, or where a colour was not measured.</summary>
    internal static IReadOnlyList<ColourMode> Find(ModeProfile mode) => known.GetValue(mode, Split);

    /// <summary>
    /// Readers of the mode for the decisions: one, or one per colour where colours are scaled separately.
    /// </summary>
    /// <exception cref="DecisionRefusedException">The profile lacks the read noise or the dark current.</exception>
    internal static IReadOnlyList<SensorReader> Readers(CameraProfile profile, ModeProfile mode) =>
        Find(mode) is { Count: > 0 } colours
            ? [.. colours.Select(c => SensorReader.Of(profile, c.Mode))]
            : [SensorReader.Of(profile, mode)];

    private static ColourMode[] Split(ModeProfile mode) =>
        !ChannelMean.IsNeeded(mode) || !mode.Channels.All(IsMeasured)
            ? []
            : [.. mode.Channels.Select(c => new ColourMode(c.Name, Alone(mode, c)))];

    private static bool IsMeasured(ChannelProfile channel) =>
        channel is { ReadNoise.Value: > 0, Gain.Value: > 0, Name.Length: > 0 };

    private static ModeProfile Alone(ModeProfile mode, ChannelProfile channel) =>
        mode with
        {
            BiasLevel = channel.BiasLevel ?? mode.BiasLevel,
            ReadNoise = channel.ReadNoise,
            ReadNoiseAdu = channel.ReadNoiseAdu,
            Gain = channel.Gain,
            FullWell = channel.FullWell ?? mode.FullWell,
            DynamicRange = channel.DynamicRange ?? mode.DynamicRange,
            Channels = [],
        };
}
