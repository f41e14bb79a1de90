using SensorProfile.Cli.LocalPage;
using SensorProfile.Desk.Tests.Running;

namespace SensorProfile.Desk.Tests.Browsing;

/// <summary>The desk ends a while after its last window, not before.</summary>
public sealed class LastWindowTests
{
    private static readonly TimeSpan Long = TimeSpan.FromMinutes(2);

    [BrowserFact]
    public async Task TheDeskEndsWithItsLastWindow()
    {
        DeskOptions options = new() { Patience = TimeSpan.FromSeconds(1) };
        await using DeskServer desk = await DeskServer.Start(
            new CommandDoor(OpenDesk.Quiet),
            options,
            CancellationToken.None
        );
        Task run = desk.Run(CancellationToken.None);
        ChromiumPage first = await ChromiumPage.Open(desk.Address),
            second = await ChromiumPage.Open(desk.Address);
        await first.Page.GotoAsync("about:blank");
        await first.DisposeAsync();
        await Task.Delay(2 * options.Patience);
        Assert.False(run.IsCompleted); // the second window is still open
        await second.Page.GotoAsync("about:blank");
        await run.WaitAsync(Long);
        await second.DisposeAsync();
    }

    [BrowserFact]
    public async Task AWindowWhoseDeskHasEndedSaysSo()
    {
        DeskServer desk = await DeskServer.Start(
            new CommandDoor(OpenDesk.Quiet),
            new DeskOptions(),
            CancellationToken.None
        );
        await using ChromiumPage window = await ChromiumPage.Open(desk.Address);
        await desk.DisposeAsync();
        await window.Page.Locator("#components-reconnect-modal").WaitForAsync();
    }
}
