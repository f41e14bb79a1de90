using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;

namespace SensorProfile.Cli.Defaults;

/// <summary>The sky of a setup that names a folder of lights.</summary>
internal static class MeasuredSky
{
    /// <summary>The background of the lights, e-/px/s; null without a profile to measure it with.</summary>
    /// <exception cref="CommandFailure">The sky cannot be measured on these lights.</exception>
    public static double? On(string lights, string? profile, Session session)
    {
        if (profile is null)
            return null;
        try
        {
            return SkyReading
                .Measure(
                    session,
                    ProfileReading.Read(profile),
                    wanted: null,
                    SetReading.Read(session, [lights], FrameKind.Light, table: null, namesSay: false, out _),
                    darks: []
                )
                .Rate.Value;
        }
        catch (DecisionRefusedException refusal)
        {
            throw CommandFailure.UnreadableInput(
                $"{lights}, the lights of your setup: {refusal.Message} Correct the setup, or give --sky."
            );
        }
    }
}
