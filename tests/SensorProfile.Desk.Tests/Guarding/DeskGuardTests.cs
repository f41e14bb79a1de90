using System.Net;
using System.Net.WebSockets;
using System.Text.RegularExpressions;
using SensorProfile.Desk.Guarding;
using SensorProfile.Desk.Tests.Running;

namespace SensorProfile.Desk.Tests.Guarding;

/// <summary>Who may ask the desk: this machine's browser, its own pages, with the secret.</summary>
public sealed partial class DeskGuardTests(OpenDesk desk) : IClassFixture<OpenDesk>
{
    public static TheoryData<string> EveryKindOfAddress =>
        [
            "",
            "see",
            "handbook",
            "desk.css",
            "handbook.css",
            "_framework/blazor.web.js",
            "map/1/0.png",
            "result/1/profile.json",
            "_blazor",
        ];

    [Theory, MemberData(nameof(EveryKindOfAddress))]
    public async Task NothingIsServedWithoutTheSecret(string address)
    {
        using HttpClient client = desk.Client(withCookie: false);
        using HttpResponseMessage answer = await client.GetAsync(address);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Theory, MemberData(nameof(EveryKindOfAddress))]
    public async Task AWrongSecretIsNone(string address)
    {
        using HttpClient client = desk.Client(withCookie: false);
        string wrong = desk.Key[..^1] + (desk.Key[^1] == '0' ? '1' : '0');
        using HttpResponseMessage typed = await client.GetAsync($"{address}?{DeskSecret.Parameter}={wrong}");
        Assert.Equal(HttpStatusCode.Forbidden, typed.StatusCode);
        client.DefaultRequestHeaders.Add("Cookie", desk.Cookie.Replace(desk.Key, wrong, StringComparison.Ordinal));
        using HttpResponseMessage kept = await client.GetAsync(address);
        Assert.Equal(HttpStatusCode.Forbidden, kept.StatusCode);
    }

    [Fact]
    public async Task TheSecretBecomesACookieThatNoScriptReadsAndNoOtherSiteSends()
    {
        using HttpClient client = desk.Client(withCookie: false);
        using HttpResponseMessage answer = await client.GetAsync(desk.Address);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/", answer.Headers.Location!.OriginalString);
        string cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
        Assert.StartsWith(desk.Cookie, cookie, StringComparison.Ordinal);
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("evil.example", HttpStatusCode.Forbidden)]
    [InlineData("127.0.0.1.evil.example:PORT", HttpStatusCode.Forbidden)]
    [InlineData("127.0.0.1:1", HttpStatusCode.Forbidden)]
    [InlineData("127.0.0.1", HttpStatusCode.Forbidden)]
    [InlineData("127.0.0.1:PORT", HttpStatusCode.OK)]
    [InlineData("localhost:PORT", HttpStatusCode.OK)]
    public async Task OnlyTheNamesOfThisMachineAreAnswered(string host, HttpStatusCode expected)
    {
        using HttpClient client = desk.Client(withCookie: true);
        client.DefaultRequestHeaders.Host = host.Replace("PORT", $"{desk.Root.Port}", StringComparison.Ordinal);
        using HttpResponseMessage answer = await client.GetAsync("desk.css");
        Assert.Equal(expected, answer.StatusCode);
    }

    [Theory]
    [InlineData("http://evil.example")]
    [InlineData("http://127.0.0.1:1")]
    [InlineData("https://127.0.0.1:PORT")]
    [InlineData("null")]
    public async Task AnotherOriginIsTurnedAway(string origin)
    {
        using HttpClient client = desk.Client(withCookie: true);
        string from = origin.Replace("PORT", $"{desk.Root.Port}", StringComparison.Ordinal);
        client.DefaultRequestHeaders.Add("Origin", from);
        using HttpResponseMessage read = await client.GetAsync("desk.css");
        Assert.Equal(HttpStatusCode.Forbidden, read.StatusCode);
        using HttpResponseMessage changed = await client.PostAsync("_blazor/negotiate?negotiateVersion=1", null);
        Assert.Equal(HttpStatusCode.Forbidden, changed.StatusCode);
        using ClientWebSocket socket = Socket(from);
        await Assert.ThrowsAsync<WebSocketException>(() => socket.ConnectAsync(SocketAddress, CancellationToken.None));
        Assert.Equal(HttpStatusCode.Forbidden, socket.HttpStatusCode);
    }

    [Fact]
    public async Task ARequestThatChangesSomethingStatesItsOrigin()
    {
        using HttpClient client = desk.Client(withCookie: true);
        using HttpResponseMessage unstated = await client.PostAsync("_blazor/negotiate?negotiateVersion=1", null);
        Assert.Equal(HttpStatusCode.Forbidden, unstated.StatusCode);
        client.DefaultRequestHeaders.Add("Origin", desk.Root.GetLeftPart(UriPartial.Authority));
        using HttpResponseMessage own = await client.PostAsync("_blazor/negotiate?negotiateVersion=1", null);
        Assert.Equal(HttpStatusCode.OK, own.StatusCode);
    }

    [Fact]
    public async Task TheDesksOwnPageMayOpenAWebsocket()
    {
        using ClientWebSocket socket = Socket(desk.Root.GetLeftPart(UriPartial.Authority));
        await socket.ConnectAsync(SocketAddress, CancellationToken.None);
        Assert.Equal(WebSocketState.Open, socket.State);
    }

    [Fact]
    public async Task ThePageHoldsNoScriptOfItsOwnAndNamesNoOtherPlace()
    {
        using HttpClient client = desk.Client(withCookie: true);
        using HttpResponseMessage answer = await client.GetAsync("");
        string page = await answer.Content.ReadAsStringAsync(),
            policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
        Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
        string[] scripts = [.. Script().Matches(page).Select(m => m.Value)];
        Assert.Equal(3, scripts.Length);
        Assert.All(scripts, s => Assert.Matches("""^<script src="[a-z_/.]+"></script>$""", s));
        Assert.DoesNotContain("://", page, StringComparison.Ordinal);
    }

    private Uri SocketAddress => new($"ws://{desk.Root.Authority}/_blazor");

    private ClientWebSocket Socket(string origin)
    {
        ClientWebSocket socket = new();
        socket.Options.CollectHttpResponseDetails = true;
        socket.Options.SetRequestHeader("Origin", origin);
        socket.Options.SetRequestHeader("Cookie", desk.Cookie);
        return socket;
    }

    [GeneratedRegex("<script.*?</script>", RegexOptions.Singleline)]
    private static partial Regex Script();
}
