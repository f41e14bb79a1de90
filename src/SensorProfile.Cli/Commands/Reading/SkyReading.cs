using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Cli.Commands.Reading;

/// <summary>The sky measured on the user's own lights.</summary>
internal static class SkyReading
{
    /// <summary>
    /// From the largest set of lights, above darks of its exposure where there are some; the mode is the one that was
    /// asked for, else that of these lights.
    /// </summary>
    /// <exception cref="DecisionRefusedException">The sky cannot be measured from these frames.</exception>
    public static SkyRate Measure(
        Session session,
        CameraProfile profile,
        ModeSettings? wanted,
        IReadOnlyList<FrameSet> lights,
        IReadOnlyList<FrameSet> darks
    )
    {
        FrameSet largest = lights.MaxBy(s => s.Frames.Count)
            ?? throw new DecisionRefusedException(
                RefusalKind.CannotTell,
                "lights-missing",
                "No light frames were found, so the sky cannot be measured: give their folder with --lights, or the "
                    + "sky as a number with --sky."
            );
        FrameSet? matching = darks.FirstOrDefault(d =>
            d.ExposureSeconds == largest.ExposureSeconds && d.Settings == largest.Settings
        );
        return SkyFromLights.Measure(
            profile,
            ModeChoice.Find(profile, wanted ?? largest.Settings),
            largest,
            matching,
            session.Stop
        );
    }
}
