using SensorProfile.Cli.Commands.Options;
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
    /// The sky as given, or else as measured on the lights, or else null (the default sky is then assumed).
    /// </summary>
    public static (SkyRate? Sky, Finding[] Findings) OfLights(
        Session session,
        StackSettings settings,
        CameraProfile profile,
        IReadOnlyList<FrameSet> lights,
        IReadOnlyList<FrameSet> darks
    )
    {
        if (settings.SkyRate is { } given)
            return (given, []);
        try
        {
            return (Measure(session, profile, settings.WantedMode, lights, darks), []);
        }
        catch (DecisionRefusedException refusal)
        {
            return (null, [refusal.ToFinding() with { Severity = Severity.Note }]);
        }
    }

    /// <summary>
    /// Measured on the largest set of lights, above darks of its exposure where there are any; the mode is the one
    /// asked for, or else that of these lights.
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
                FindingCodes.LightsMissing,
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
