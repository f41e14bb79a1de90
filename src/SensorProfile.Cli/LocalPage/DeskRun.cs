using Microsoft.AspNetCore.Connections;
using SensorProfile.Desk;

namespace SensorProfile.Cli.LocalPage;

/// <summary>One run of the desk, from printing its address to its end.</summary>
/// <remarks>Only this class and its neighbours refer to the desk's library, so that no other command loads it.</remarks>
internal static class DeskRun
{
    /// <summary>Serves until the last window has been closed, or the user stops it.</summary>
    /// <exception cref="CommandFailure">The port is taken.</exception>
    /// <exception cref="OperationCanceledException">The user stopped it.</exception>
    public static void UntilClosed(Session session, string? folder, int port, bool opensBrowser) =>
        Serve(session, new DeskOptions { Folder = folder, Port = port }, opensBrowser).GetAwaiter().GetResult();

    private static async Task Serve(Session session, DeskOptions options, bool opensBrowser)
    {
        await using DeskServer desk = await Start(session, options);
        session.Results.WriteRaw(desk.Address.AbsoluteUri + "\n");
        session.Results.Send();
        session.Side.WriteLine(
            "The desk is open at this address, on this machine only. It ends with Ctrl-C, or a minute after its last window closes."
        );
        if (opensBrowser)
            Browser.Open(desk.Address);
        await desk.Run(session.Stop);
    }

    private static async Task<DeskServer> Start(Session session, DeskOptions options)
    {
        try
        {
            return await DeskServer.Start(new CommandDoor(session), options, session.Stop);
        }
        catch (AddressInUseException problem)
        {
            throw CommandFailure.WrongCommandLine(
                $"Port {options.Port} is taken by another program: leave --port out, and a free one is found.",
                problem
            );
        }
    }
}
