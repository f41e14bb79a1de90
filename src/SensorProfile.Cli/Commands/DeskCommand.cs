using System.ComponentModel;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.LocalPage;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary><c>desk</c>: show me, in a browser.</summary>
internal sealed class DeskCommand : Command<DeskCommand.Settings>
{
    // the web server asks for it, and the runtime ends the program where it finds none; its own names, newest first
    private static readonly string[] OpenSsl = ["libssl.so.3", "libssl.so.1.1"];

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Port is < 0 or > ushort.MaxValue)
            throw CommandFailure.WrongCommandLine($"--port {settings.Port}: a port is a number from 1 to 65535.");
        if (settings.Folder is { } folder && !Directory.Exists(folder))
            throw CommandFailure.UnreadableInput($"{folder}: there is no such folder.");
        if (OperatingSystem.IsLinux() && !Array.Exists(OpenSsl, HasLibrary))
            throw CommandFailure.UnreadableInput(
                "The desk needs OpenSSL, which is not on this system: install it (Debian: libssl3). The other commands do without."
            );
        Serve((Session)context.Data!, settings);
        return ExitCodes.Answered;
    }

    private static bool HasLibrary(string name)
    {
        if (!NativeLibrary.TryLoad(name, out nint library))
            return false;
        NativeLibrary.Free(library);
        return true;
    }

    // in a separate method, so that other commands do not load a web server
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Serve(Session session, Settings settings) =>
        DeskRun.UntilClosed(
            session,
            settings.Folder is { } folder ? Path.GetFullPath(folder) : null,
            settings.Port ?? 0,
            !settings.NoBrowser
        );

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "[FOLDER]")]
        [Description("Frames, results or an archive to start with.")]
        public string? Folder { get; init; }

        [CommandOption("--port <N>")]
        [Description("Port on this machine; default: a free one.")]
        [TypeConverter(typeof(WholeNumber<int>))]
        public int? Port { get; init; }

        [CommandOption("--no-browser")]
        [Description("Only print the address; do not open it.")]
        public bool NoBrowser { get; init; }
    }
}
