using System.Runtime.CompilerServices;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>One colour of a camera as a mode of its own.</summary>
/// <param name="Name">R, G1, G2 or B.</param>
/// <param name="Mode">The mode with read noise, gain and full well of this colour.</param>
internal sealed record ColourMode(string Name, ModeProfile Mode);

/// <summary>
/// The colours of a camera that scales them apart: no one gain or read noise holds for all of them, so each is asked by
/// itself. Dark current is in electrons, where a scale changes nothing, and is shared.
/// </summary>
internal static class ColourModes
{
    // one question after the other is about the same mode, and what is read of a mode is kept with it
    private static readonly ConditionalWeakTable<ModeProfile, ColourMode[]> known = [];

    /// <summary>Told with an answer that holds for all colours at once.</summary>
    /// <param name="mode">The mode that was asked about.</param>
    internal static IEnumerable<Finding> ServedTogether(ModeProfile mode) =>
        Of(mode).Count == 0
            ? []
            :
            [
                new Finding(
                    FindingCodes.ColoursApart,
                    Severity.Note,
                    $"The colours of this camera ({string.Join(", ", Of(mode).Select(c => c.Name))}) are scaled apart, so "
                        + "each was judged by itself: what is answered here serves the strictest of them."
                ),
            ];

    /// <summary>The colours; empty where one gain holds for all, or where one of them was not measured.</summary>
    internal static IReadOnlyList<ColourMode> Of(ModeProfile mode) => known.GetValue(mode, Split);

    /// <summary>The mode as decisions read it; one reader a colour where they are scaled apart.</summary>
    /// <exception cref="DecisionRefusedException">The profile lacks the read noise or the dark current.</exception>
    internal static IReadOnlyList<SensorReader> Readers(CameraProfile profile, ModeProfile mode) =>
        Of(mode) is { Count: > 0 } colours
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
