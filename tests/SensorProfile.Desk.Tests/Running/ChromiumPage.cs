using Microsoft.Playwright;

namespace SensorProfile.Desk.Tests.Running;

/// <summary>A window of Debian's Chromium that notes what a page complains of.</summary>
internal sealed class ChromiumPage : IAsyncDisposable
{
    public const string Program = "/usr/bin/chromium";
    private const float Patience = 120_000;

    private readonly IPlaywright playwright;
    private readonly IBrowser browser;
    private readonly List<string> complaints = [];

    private ChromiumPage(IPlaywright playwright, IBrowser browser, IPage page)
    {
        (this.playwright, this.browser, Page) = (playwright, browser, page);
        page.SetDefaultTimeout(Patience);
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
                complaints.Add(message.Text);
        };
        page.PageError += (_, error) => complaints.Add(error);
        page.Request += (_, request) => Asked.Add(request.Url);
    }

    public IPage Page { get; }

    /// <summary>Errors on the console: what the content security policy turned away is one.</summary>
    public IReadOnlyList<string> Complaints => complaints;

    /// <summary>Every address that was asked for.</summary>
    public List<string> Asked { get; } = [];

    public static async Task<ChromiumPage> Open(Uri address)
    {
        IPlaywright playwright = await Playwright.CreateAsync();
        IBrowser browser = await playwright.Chromium.LaunchAsync(
            new BrowserTypeLaunchOptions
            {
                ExecutablePath = Program,
                Args =
                [
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                ],
            }
        );
        ChromiumPage window = new(playwright, browser, await browser.NewPageAsync());
        await window.Page.GotoAsync(address.AbsoluteUri);
        await window.Page.WaitForSelectorAsync("h1");
        return window;
    }

    public async ValueTask DisposeAsync()
    {
        await browser.DisposeAsync();
        playwright.Dispose();
    }
}
