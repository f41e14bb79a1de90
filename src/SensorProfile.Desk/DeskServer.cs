using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using SensorProfile.Desk.Asking;
using SensorProfile.Desk.Deciding;
using SensorProfile.Desk.Framing;
using SensorProfile.Desk.Guarding;
using SensorProfile.Desk.Measuring;
using SensorProfile.Desk.Pages;
using SensorProfile.Desk.Serving;

namespace SensorProfile.Desk;

/// <summary>The local page: a web server for this machine only, and only for those who know its secret.</summary>
internal sealed class DeskServer : IAsyncDisposable
{
    // a window whose connection is lost counts as open for this long
    private static readonly TimeSpan Retention = TimeSpan.FromMinutes(1);

    private readonly WebApplication app;
    private readonly OpenWindows windows;

    private DeskServer(WebApplication app, Uri address)
    {
        this.app = app;
        Address = address;
        windows = app.Services.GetRequiredService<OpenWindows>();
    }

    /// <summary>The address to open, with the secret.</summary>
    public Uri Address { get; }

    /// <summary>The results currently open.</summary>
    internal ResultShelf Shelf => app.Services.GetRequiredService<ResultShelf>();

    /// <summary>Starts serving.</summary>
    /// <exception cref="AddressInUseException">The port is taken.</exception>
    public static async Task<DeskServer> Start(IDeskDoor door, DeskOptions options, CancellationToken stop)
    {
        DeskSecret secret = new();
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder
            .WebHost.UseKestrelCore()
            .ConfigureKestrel(kestrel =>
            {
                kestrel.AddServerHeader = false;
                kestrel.Listen(IPAddress.Loopback, options.Port);
            });
        AddServices(builder.Services, door, options, secret);
        WebApplication app = builder.Build();
        Uri? root = null;
        app.Use(next => new DeskGuard(next, secret, () => root).Invoke);
        app.UseWebSockets();
        app.UseRouting();
        app.UseAntiforgery();
        DeskFiles.Map(app);
        app.MapRazorComponents<App>()
            .AddInteractiveServerRenderMode(blazor => blazor.ContentSecurityFrameAncestorsPolicy = null);
        try
        {
            await app.StartAsync(stop);
        }
        catch (IOException problem) when (problem.InnerException is AddressInUseException)
        {
            await app.DisposeAsync();
            throw problem.InnerException;
        }
        root = new Uri(
            app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First()
        );
        return new DeskServer(app, new Uri(root, $"?{DeskSecret.Parameter}={secret.Text}"));
    }

    /// <summary>Serves until it is stopped, or until its last window has been closed for a while.</summary>
    public Task Run(CancellationToken stop) => windows.WaitForTheEnd(stop);

    public async ValueTask DisposeAsync()
    {
        app.Services.GetRequiredService<MeasureJob>().Cancel();
        await app.StopAsync();
        await app.DisposeAsync();
    }

    private static void AddServices(IServiceCollection services, IDeskDoor door, DeskOptions options, DeskSecret secret)
    {
        services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(2));
        services.AddRouting();
        // keys live only as long as the desk, so that nothing is written among the user's own files
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        services
            .AddRazorComponents()
            .AddInteractiveServerComponents(circuit => circuit.DisconnectedCircuitRetentionPeriod = Retention);
        services.AddSingleton(door);
        services.AddSingleton(options);
        services.AddSingleton(secret);
        services.AddSingleton<OpenWindows>();
        services.AddSingleton<ResultShelf>();
        services.AddSingleton<SurveyedFrames>();
        services.AddSingleton<MeasureJob>();
        services.AddSingleton<NightForm>();
        services.AddScoped<CircuitHandler>(provider => provider.GetRequiredService<OpenWindows>().Watch());
    }
}
