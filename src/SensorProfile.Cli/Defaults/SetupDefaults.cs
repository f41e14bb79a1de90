using System.Globalization;
using SensorProfile.Setup;

namespace SensorProfile.Cli.Defaults;

/// <summary>Completes a command line from the user's setup; a typed option always wins.</summary>
internal sealed class SetupDefaults
{
    private readonly SettingsOptions known;
    private readonly TypedArguments typed;
    private readonly List<string> added = [];
    private readonly List<KeyValuePair<string, string>> taken = [];

    private SetupDefaults(SettingsOptions known, TypedArguments typed)
    {
        this.known = known;
        this.typed = typed;
    }

    /// <summary>The arguments to run, and which of them came from the setup.</summary>
    /// <param name="arguments">As they were typed, negative numbers bound to their options.</param>
    /// <param name="session">This run: the sky may have to be measured on lights.</param>
    /// <exception cref="CommandFailure">A setup or a filter was named that is not there.</exception>
    /// <exception cref="SetupFormatException">The setup cannot be understood.</exception>
    public static (string[] Arguments, RememberedOptions Remembered) Complete(string[] arguments, Session session)
    {
        string command = CommandList.NameIn(arguments);
        if (CommandList.SettingsOf(command) is not { } settings)
            return (arguments, RememberedOptions.Nothing);
        SettingsOptions known = new(settings);
        int words = command.Split(' ').Length;
        TypedArguments typed = new(arguments[words..], known);
        if (!known.Has("--setup") || typed.AsksAny("--help", "-h", "--no-setup"))
            return (arguments, RememberedOptions.Nothing);
        SetupDefaults defaults = new(known, typed);
        string? file = SetupPlace.Find(typed.ValueOf("--setup"), defaults.TypedProfile);
        if (file is null && typed.ValueOf("--filter") is { } filter)
            throw CommandFailure.WrongCommandLine(
                $"--filter {filter} names a filter of your setup, but there is no setup: sensorprofile setup --help"
            );
        if (file is null)
            return (arguments, RememberedOptions.Nothing);
        string? profile = defaults.Take(command, SetupFile.Read(file), file, session);
        return (
            [
                .. arguments[..words],
                .. profile is null ? [] : new[] { profile },
                .. arguments[words..],
                .. defaults.added,
            ],
            new RememberedOptions(file, defaults.taken)
        );
    }

    private string? TypedProfile =>
        typed.ValueOf("--profile") ?? (known.TakesOneProfile && typed.Words.Count > 0 ? typed.Words[0] : null);

    /// <summary>Adds the options that were not typed; returns the profile when it must be the first argument.</summary>
    private string? Take(string command, ObservingSetup setup, string file, Session session)
    {
        string? profile = TypedProfile is null ? setup.Camera?.Profile : null;
        if (profile is not null && !known.TakesOneProfile)
        {
            Add("--profile", profile, $"profile {profile}");
            profile = null;
        }
        else if (profile is not null && known.TakesOneProfile)
            taken.Add(KeyValuePair.Create("", $"profile {profile}"));
        else
            profile = null;
        bool onDisk = typed.Asks("--darks") && known.Has("--bias-frames");
        bool judged = TypedProfile is not null || profile is not null || taken.Count > 0 || command == "drift";
        if (!judged)
            return null; // without a profile the stack has no effect, and the command refuses it
        bool framesSay = onDisk || typed.ValueOf("--lights") is { } lights && Path.Exists(lights);
        if (command != "darks predict")
            TakeStack(setup.Stack, framesSay);
        if (!onDisk)
            new SkyDefaults(known, typed, Add, words => taken.Add(KeyValuePair.Create("", words))).Take(
                setup,
                file,
                lights => MeasuredSky.On(lights, TypedProfile ?? setup.Camera?.Profile, session)
            );
        if (setup.AcceptedLoss is double loss)
            Add("--loss", Text(loss), $"accepted loss {Text(loss)} %");
        TakeCooling(setup.Cooling);
        return profile;
    }

    /// <summary>The stack's exposure and size, unless frames on disk already give them.</summary>
    private void TakeStack(StackSetup? stack, bool framesSay)
    {
        if (stack is null)
            return;
        if (!framesSay && stack.Exposure is double exposure)
            Add("--exposure", Text(exposure), $"{Text(exposure)} s");
        // where the sky may be measured on lights, the option of that name holds a folder
        bool counted = known.Has("--dithers") && !typed.Asks("--night");
        if (!framesSay && counted && stack.Lights is int lights)
            Add("--lights", Text(lights), $"{lights} lights");
        // a number of lights that is typed wins: they cannot have more positions than that
        int most = int.TryParse(typed.ValueOf("--lights"), NumberStyles.None, CultureInfo.InvariantCulture, out int n)
            ? Math.Max(1, n)
            : int.MaxValue;
        if (stack.DitherPositions is int usual && Math.Min(usual, most) is int positions)
            Add("--dithers", Text(positions), positions == 1 ? "not dithered" : $"{positions} dither positions");
        if (stack.Rejection is { } rejection && !typed.Asks("--rejects"))
            Add("--rejection", EnumWord.Of(rejection), $"rejection {EnumWord.Of(rejection)}");
        if (stack.Smooth is double smooth)
            Add("--smooth", Text(smooth), $"smooth residuals over {Text(smooth)} px");
    }

    private void TakeCooling(CoolingSetup? cooling)
    {
        if (cooling is null)
            return;
        if (cooling.Nights is { } nights && !typed.Asks("--ambient"))
            Add("--nights", nights, $"nights of {nights}");
        bool airKnown = typed.AsksAny("--ambient", "--nights") || taken.Any(t => t.Key == "--nights");
        if (cooling.Uncooled == true && !typed.AsksAny("--max-delta", "--margin"))
            AddFlag("--uncooled", "no cooler");
        else if (cooling.Reach is double reach && airKnown && !typed.Asks("--uncooled"))
            Add("--max-delta", Text(reach), $"cooler reaches {Text(reach)} °C below the air");
    }

    private void Add(string option, string value, string words)
    {
        if (!known.Has(option) || typed.Asks(option))
            return;
        added.Add($"{option}={value}");
        taken.Add(KeyValuePair.Create(option, words));
    }

    private void AddFlag(string option, string words)
    {
        if (!known.Has(option) || typed.Asks(option))
            return;
        added.Add(option);
        taken.Add(KeyValuePair.Create(option, words));
    }

    internal static string Text(double number) => number.ToString(CultureInfo.InvariantCulture);
}
