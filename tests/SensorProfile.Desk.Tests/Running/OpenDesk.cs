using System.Globalization;
using SensorProfile.Cli;
using SensorProfile.Cli.LocalPage;
using SensorProfile.Cli.Terminal;
using SensorProfile.Desk.Serving;

namespace SensorProfile.Desk.Tests.Running;

/// <summary>A desk on a free port of this machine, with the whole program behind it.</summary>
public sealed class OpenDesk : IAsyncLifetime
{
    private readonly string own = Directory.CreateTempSubdirectory("desk-config-").FullName;
    private DeskServer? server;

    /// <summary>With the secret.</summary>
    public Uri Address => server!.Address;

    /// <summary>Without it.</summary>
    public Uri Root => new(Address.GetLeftPart(UriPartial.Authority) + "/");

    /// <summary>The secret.</summary>
    public string Key => Address.Query.Split('=')[1];

    /// <summary>The program as the desk asks it.</summary>
    internal CommandDoor Door { get; } = new(Quiet);

    /// <summary>The results that are open in it.</summary>
    internal ResultShelf Shelf => server!.Shelf;

    /// <summary>A session that prints nowhere.</summary>
    internal static Session Quiet =>
        new(
            new ResultStream(() => Stream.Null, isTerminal: false),
            new StandardErrorStream(TextWriter.Null, isTerminal: false, TimeProvider.System),
            TimeProvider.System,
            CancellationToken.None
        );

    public async Task InitializeAsync()
    {
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        // nobody's own setup is read or written
        Environment.SetEnvironmentVariable("XDG_CONFIG_HOME", own);
        server = await DeskServer.Start(Door, new DeskOptions(), CancellationToken.None);
    }

    public async Task DisposeAsync()
    {
        await server!.DisposeAsync();
        Directory.Delete(own, recursive: true);
    }

    /// <summary>A client that follows no redirect and keeps no cookie of itself.</summary>
    public HttpClient Client(bool withCookie)
    {
        HttpClient client = new(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false })
        {
            BaseAddress = Root,
        };
        if (withCookie)
            client.DefaultRequestHeaders.Add("Cookie", Cookie);
        return client;
    }

    /// <summary>As the browser sends it.</summary>
    public string Cookie => string.Create(CultureInfo.InvariantCulture, $"sensorprofile-desk-{Root.Port}={Key}");
}
