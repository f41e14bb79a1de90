using System.Reflection;
using SensorProfile.Cli.Defaults;
using Spectre.Console.Cli;

namespace SensorProfile.Cli;

/// <summary>
/// Reads the command line, runs the command, and turns every ending into an exit code and at most one line on standard
/// error.
/// </summary>
internal static class CommandLine
{
    public static string Version { get; } =
        typeof(CommandLine).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion
        ?? "0";

    public static int Run(string[] arguments, Session session)
    {
        try
        {
            (string[] completed, RememberedOptions remembered) = SetupDefaults.Complete(
                arguments is [var only] && CommandList.IsBranch(only) ? [only, "--help"]
                    : CommandList.AskedHelp(arguments) is { Count: > 0 } command ? [.. command, "--help"]
                    : NegativeNumbers.Bind(arguments),
                session
            );
            session = session with { Remembered = remembered };
            int code = Parser(session).Run(completed);
            session.Results.Send();
            return code;
        }
        catch (Exception problem)
        {
            return FailureReport.Print(problem, arguments, session);
        }
    }

    /// <summary>The parser, with every command.</summary>
    public static CommandApp Parser(Session session)
    {
        CommandApp app = new();
        app.Configure(config =>
        {
            config.SetApplicationName("sensorprofile");
            config.SetApplicationVersion(Version);
            config.ConfigureConsole(session.HelpConsole);
            config.PropagateExceptions();
            config.UseStrictParsing();
            CommandList.AddTo(config, session);
        });
        return app;
    }
}
