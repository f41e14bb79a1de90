using System.Globalization;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Desk.Tests.Running;

namespace SensorProfile.Desk.Tests.Browsing;

/// <summary>The whole way in a real browser: a folder of frames, measured, seen, decided.</summary>
public sealed class FromFramesToDecisionsTests(OpenDesk desk) : IClassFixture<OpenDesk>, IDisposable
{
    /// <summary>A folder for pictures of every page at three widths; none are made unless it is set.</summary>
    private const string PicturesVariable = "SENSORPROFILE_DESK_PICTURES";

    private static readonly (int Width, int Height)[] sizes = [(1280, 900), (800, 900), (390, 800)];
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [BrowserFact]
    public async Task AFolderOfFramesBecomesACardAndDecisions()
    {
        SimulatedNight.Write(folder["frames"], SimulatedNight.Full);
        SortedDictionary<string, string> before = TemporaryFolder.Digests(folder["frames"]);
        await using ChromiumPage window = await ChromiumPage.Open(desk.Address);
        IPage page = window.Page;

        await page.GetByLabel("Folder with your frames").FillAsync(folder["frames"]);
        await page.GetByLabel("Folder with your frames").PressAsync("Enter");
        await page.GetByText("Ready to characterise").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "10", Exact = true }).WaitForAsync(); // the bias frames
        await Look(window, "bring");

        await page.GetByRole(AriaRole.Button, new() { Name = "Measure these frames" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Measure", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "See the card" }).WaitForAsync();
        await Look(window, "measure");
        Assert.True(File.Exists(folder["frames-profile/profile.json"]));

        await page.GetByRole(AriaRole.Link, new() { Name = "See the card" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "What to retake, or to watch" }).WaitForAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "How these numbers were obtained" }).WaitForAsync();
        await page.Locator(".stage svg").ClickAsync();
        await page.GetByRole(AriaRole.Cell, new() { Name = "counts as" }).WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Zoom in" }).ClickAsync();
        // half the sides around the pixel in the middle, give or take where the pointer fell
        await page.GetByText(new Regex("Columns (40|41|42) to (119|120|121), rows (30|31|32) to (89|90|91)"))
            .WaitForAsync();
        await Look(window, "see");

        await page.GetByRole(AriaRole.Link, new() { Name = "Decide with it" }).ClickAsync();
        await Answered(page);
        string first = await page.Locator(".answers .sentence").First.InnerTextAsync();
        await page.Locator("#exposure").FocusAsync();
        await page.Keyboard.PressAsync("Home"); // the shortest light: hardly any dark current to cool away
        await Answered(page);
        string second = await page.Locator(".answers .sentence").First.InnerTextAsync();
        Assert.StartsWith("Run at", first, StringComparison.Ordinal);
        Assert.NotEqual(first, second);
        await page.GetByText("--exposure=1 ").First.WaitForAsync();
        await Look(window, "decide");

        await page.GetByRole(AriaRole.Link, new() { Name = "Library" }).ClickAsync();
        await page.GetByLabel("Folder with results or an archive").FillAsync(folder.Path);
        await page.GetByLabel("Folder with results or an archive").PressAsync("Enter");
        await page.GetByText("Tarn-9M is in order.").WaitForAsync();
        await Look(window, "library");

        Assert.Equal(before, TemporaryFolder.Digests(folder["frames"]));
        Assert.All(window.Asked, a => Assert.StartsWith(desk.Root.AbsoluteUri, a, StringComparison.Ordinal));
        Assert.Empty(window.Complaints);
    }

    [BrowserFact]
    public async Task TheHandbookIsReadBesideTheWork()
    {
        await using ChromiumPage window = await ChromiumPage.Open(desk.Address);
        IPage page = window.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Handbook", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Handbook", Exact = true }).WaitForAsync();
        await Look(window, "handbook");
        await page.GetByRole(AriaRole.Link, new() { Name = "Every finding" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "black-clipped" }).WaitForAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "How to take the frames" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Flat pairs" }).WaitForAsync();
        await Look(window, "handbook-frames");
        Assert.All(window.Asked, a => Assert.StartsWith(desk.Root.AbsoluteUri, a, StringComparison.Ordinal));
        Assert.Empty(window.Complaints);
    }

    [BrowserFact]
    public async Task AScriptInACamerasNameIsOnlyText()
    {
        const string name = "<img src=x onerror=document.title='hit'>Tarn<script>document.title='hit'</script>";
        TarnProfile.WriteNamed(folder["profile.json"], name);
        await using ChromiumPage window = await ChromiumPage.Open(desk.Address);
        await window.Page.GotoAsync(new Uri(desk.Root, "see?result=" + Uri.EscapeDataString(folder.Path)).AbsoluteUri);
        await window.Page.GetByRole(AriaRole.Heading, new() { Name = name }).WaitForAsync();
        await window.Page.GetByRole(AriaRole.Heading, new() { Name = "What to retake, or to watch" }).WaitForAsync();
        Assert.Equal(0, await window.Page.Locator("img[src=x]").CountAsync());
        Assert.Equal(name, await window.Page.TitleAsync());
        Assert.Empty(window.Complaints);
    }

    private static async Task Answered(IPage page)
    {
        await page.WaitForFunctionAsync(
            "() => document.querySelector('.answers')?.getAttribute('aria-busy') === 'false' "
                + "&& document.querySelectorAll('.answers .sentence').length === 5"
        );
    }

    /// <summary>No serious fault of accessibility at any width, nothing wider than the window; a picture where one is
    /// asked for.</summary>
    private static async Task Look(ChromiumPage window, string name)
    {
        string? pictures = Environment.GetEnvironmentVariable(PicturesVariable);
        foreach ((int width, int height) in sizes)
        {
            await window.Page.SetViewportSizeAsync(width, height);
            int wide = await window.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth");
            Assert.True(wide <= width, $"{name} is {wide} px wide in a window of {width}.");
            if (pictures is not null)
                await window.Page.ScreenshotAsync(
                    new()
                    {
                        FullPage = true,
                        Path = Path.Combine(
                            pictures,
                            string.Create(CultureInfo.InvariantCulture, $"{name}-{width}.png")
                        ),
                    }
                );
        }
        AxeResult found = await window.Page.RunAxe();
        string[] serious =
        [
            .. found
                .Violations.Where(v => v.Impact is "serious" or "critical")
                .Select(v => $"{name}: {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Select(n => n.Html))}"),
        ];
        Assert.Empty(serious);
        await window.Page.SetViewportSizeAsync(sizes[0].Width, sizes[0].Height);
    }
}
