using SensorProfile.Cli.Commands;
using Spectre.Console.Cli;

namespace SensorProfile.Cli;

/// <summary>Every command, each with the question it answers and an example that works on the demo's output.</summary>
internal static class CommandList
{
    private static readonly Dictionary<string, string> Branches = new()
    {
        ["darks"] = "Which darks do I need, and do mine fit?",
        ["flats"] = "How many flats do I need?",
    };

    private const string Demo = "sensorprofile-demo",
        Profile = Demo + "/profile.json",
        Frames = Demo + "/frames";

    private static readonly Entry[] Entries =
    [
        Entry.Of<DemoCommand>(
            "demo",
            "What does this do? Simulates a night of a camera, characterises it and writes the report.",
            ["demo"],
            ["demo", "--out", "trial", "--seed", "2"]
        ),
        Entry.Of<ShotsCommand>(
            "shots",
            "Which frames do I take to characterise my camera?",
            ["shots", "--cooled", "--minutes", "120"],
            ["shots", "--have", Frames]
        ),
        Entry.Of<SurveyCommand>(
            "survey",
            "What have I got, and is it fit for use? Reads headers only.",
            ["survey", Frames],
            ["survey", Frames, "--table", "capture.csv"]
        ),
        Entry.Of<CharacteriseCommand>(
            "characterise",
            "What is my camera like? Exit code 1 when no setting gave read noise, gain, dark current and doubling "
                + "temperature.",
            ["characterise", Frames, "--out", "results"]
        ),
        Entry.Of<ReportCommand>(
            "report",
            "Show it again: the report of a stored profile.",
            ["report", Profile, "--out", "report-again"]
        ),
        Entry.Of<SetpointCommand>(
            "setpoint",
            "How cold should I run it?",
            ["setpoint", Profile, "--exposure", "300", "--sky", "2", "--ambient", "15", "--max-delta", "35"]
        ),
        Entry.Of<ExposureCommand>(
            "exposure",
            "Which gain setting, and how long an exposure?",
            ["exposure", Profile, "--sky", "0.5"],
            ["exposure", Profile, "--exposure", "60", "--sky", "0.5"]
        ),
        Entry.Of<DarksPlanCommand>(
            "darks plan",
            "Which darks do I shoot, and how many?",
            ["darks", "plan", Profile, "--exposure", "300", "--lights", "40", "--csv", "darks.csv"]
        ),
        Entry.Of<DarksMatchCommand>(
            "darks match",
            "How far off may my darks be? With folders: do these darks fit those lights?",
            ["darks", "match", Profile, "--exposure", "300", "--lights", "40"],
            ["darks", "match", "--lights", "lights", "--darks", Frames, "--profile", Profile]
        ),
        Entry.Of<DarksCheckCommand>(
            "darks check",
            "Is my dark library still good? Old masters against a few fresh darks.",
            ["darks", "check", Frames + "/dark_-10C_300s_001.fits", "--against", Frames, "--profile", Profile]
        ),
        Entry.Of<DarksPredictCommand>(
            "darks predict",
            "I have no dark that fits: can one be computed? From the maps, with its uncertainty, tested on darks "
                + "left out.",
            ["darks", "predict", Profile, "--temperature", "-12", "--exposure", "180", "--out", "dark-12C-180s.fits"]
        ),
        Entry.Of<FlatsPlanCommand>(
            "flats plan",
            "How many flats do I shoot, and at which level?",
            ["flats", "plan", Profile, "--exposure", "300", "--lights", "40", "--dithers", "20"]
        ),
        Entry.Of<DriftCommand>(
            "drift",
            "Is my sensor ageing? Compares profiles over the years; a folder stands for every profile in it.",
            ["drift", Demo, "--out", "drift"]
        ),
        Entry.Of<FleetCommand>(
            "fleet",
            "How are all my cameras? An archive's cameras, one line each with its verdict.",
            ["fleet", Demo]
        ),
        Entry.Of<DeskCommand>(
            "desk",
            "Show me in a browser: a page on this machine only, from frames to decisions.",
            ["desk", Demo],
            ["desk", Frames, "--no-browser"]
        ),
        Entry.Of<SimulateCommand>(
            "simulate",
            "What if? Writes the frames of a camera whose truth is known.",
            ["simulate", Demo + "/camera.json", "--out", "what-if", "--seed", "7"]
        ),
        Entry.Of<SetupCommand>(
            "setup",
            "Remember my telescope, sky and habits: writes a setup that the other commands read.",
            ["setup", "--focal-ratio", "5", "--pixel-size", "3.76", "--sky-brightness", "20.5", "--exposure", "300"],
            ["setup"]
        ),
        Entry.Of<HelpCommand>(
            "help",
            "The handbook: how to take the frames, read the report, what a finding means; also as web pages.",
            ["help"],
            ["help", "frames"],
            ["help", FindingCodes.BlackClipped],
            ["help", "--pages", "handbook"]
        ),
        Entry.Of<SchemaCommand>(
            "schema",
            "What is in a profile? Prints the JSON Schema of profile.json, of a setup, or of what a command prints "
                + "with --json.",
            ["schema"],
            ["schema", "setup"],
            ["schema", "darks", "match"]
        ),
        Entry.Of<CompletionCommand>(
            "completion",
            "Complete what I type: prints the script for your shell, made from the commands as they are.",
            ["completion", "bash"],
            ["completion", "powershell"]
        ),
        Entry.Of<ManCommand>("man", "Prints the manual page, for man.", ["man"]),
    ];

    public static IEnumerable<string> Names => Entries.Select(e => e.Name);

    /// <summary>Every example of every help, in order.</summary>
    public static IEnumerable<string[]> Examples => Entries.SelectMany(e => e.Examples);

    /// <summary>The command that the arguments name, to hint at its help; empty when they name none.</summary>
    public static string NameIn(IReadOnlyList<string> arguments)
    {
        string two = string.Join(' ', arguments.Take(2)),
            one = arguments.Count > 0 ? arguments[0] : "";
        return Entries.Any(e => e.Name == two) ? two
            : IsBranch(one) || Entries.Any(e => e.Name == one) ? one
            : "";
    }

    /// <summary>The command whose own help is asked for: "help darks match"; empty for none.</summary>
    public static IReadOnlyList<string> AskedHelp(IReadOnlyList<string> arguments) =>
        arguments is ["help", _, ..]
        && NameIn([.. arguments.Skip(1)]).Split(' ') is var words
        && words.Length == arguments.Count - 1
        && words[0].Length > 0
            ? words
            : [];

    /// <summary>Whether the word is the first of several commands: "darks".</summary>
    public static bool IsBranch(string word) => Branches.ContainsKey(word);

    /// <summary>The settings type of a command; null when there is no such command.</summary>
    public static Type? SettingsOf(string name) => Entries.FirstOrDefault(e => e.Name == name)?.Settings;

    public static void AddTo(IConfigurator config, Session session)
    {
        foreach (Entry entry in Entries.Where(e => !e.InBranch))
            entry.Add(config, session);
        foreach ((string name, string description) in Branches)
            config.AddBranch(name, branch =>
            {
                branch.SetDescription(description);
                foreach (Entry entry in Entries.Where(e => e.Name.StartsWith(name + " ", StringComparison.Ordinal)))
                    entry.AddToBranch(branch, session);
            });
    }

    private sealed record Entry(
        string Name,
        Type Settings,
        IReadOnlyList<string[]> Examples,
        Action<IConfigurator, Session> Add,
        Action<IConfigurator<CommandSettings>, Session> AddToBranch
    )
    {
        public bool InBranch => Name.Contains(' ', StringComparison.Ordinal);

        public static Entry Of<TCommand>(string name, string description, params string[][] examples)
            where TCommand : class, ICommandLimiter<CommandSettings>
        {
            string last = name.Split(' ')[^1];
            Type settings = typeof(TCommand)
                .GetInterfaces()
                .First(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(ICommand<>))
                .GetGenericArguments()[0];
            return new Entry(
                name,
                settings,
                examples,
                (config, session) => Finish(config.AddCommand<TCommand>(last), description, examples, session),
                (branch, session) => Finish(branch.AddCommand<TCommand>(last), description, examples, session)
            );
        }

        private static void Finish(
            ICommandConfigurator command,
            string description,
            string[][] examples,
            Session session
        )
        {
            command.WithDescription(description).WithData(session);
            foreach (string[] example in examples)
                command.WithExample(example);
        }
    }
}
