using System.ComponentModel;
using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Frames;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>
/// A question about one light of a camera: its profile, its exposure, and a sky that may be measured on the user's
/// own lights.
/// </summary>
internal abstract class OwnSkySettings : SkySettings
{
    [CommandArgument(0, "<PROFILE>")]
    [Description("profile.json, or the folder that holds it.")]
    public string Profile { get; init; } = "";

    [CommandOption("--lights <PATH>")]
    [Description("Your lights, to measure the sky on.")]
    public string[] Lights { get; init; } = [];

    [CommandOption("--darks <PATH>")]
    [Description("Darks that match those lights; without any, the profile's bias level and dark current are used.")]
    public string[] Darks { get; init; } = [];

    /// <summary>Refuses a sky that is given twice, before anything is read or written.</summary>
    public void CheckSky()
    {
        SkyRate? given = SkyRate;
        _ = AskedSky;
        if (Lights.Length > 0 && ThreeSkies)
            throw CommandFailure.WrongCommandLine("Measure the sky with --lights or ask for --three-skies, not both.");
        if (Lights.Length > 0 && given is not null)
            throw CommandFailure.WrongCommandLine("Give the sky as a number or with --lights, not both.");
        if (Darks.Length > 0 && Lights.Length == 0)
            throw CommandFailure.WrongCommandLine(
                "--darks needs --lights PATH, the lights that the sky is measured on."
            );
    }

    /// <summary>
    /// The sky as measured on the lights, as given, or the default one; null for three side by side.
    /// </summary>
    /// <param name="session">This run.</param>
    /// <param name="profile">The camera.</param>
    /// <param name="wanted">The mode asked for; null for that of the lights.</param>
    public SkyRate? ReadSky(Session session, CameraProfile profile, ModeSettings? wanted) =>
        Lights.Length == 0
            ? AskedSky
            : SkyReading.Measure(
                session,
                profile,
                wanted,
                Sets(session, Lights, FrameKind.Light),
                Darks.Length == 0 ? [] : Sets(session, Darks, FrameKind.Dark)
            );

    private static IReadOnlyList<FrameSet> Sets(Session session, string[] paths, FrameKind kind) =>
        SetReading.Read(session, paths, kind, table: null, namesSay: false, out _);
}
