using System.Globalization;
using Microsoft.AspNetCore.Http;

namespace SensorProfile.Desk.Guarding;

/// <summary>
/// Guards every request: only from this machine's browser, only from pages of the desk itself, only with the secret.
/// </summary>
/// <remarks>
/// A page of another site could reach 127.0.0.1 through the user's browser, by a host name that resolves there (Host
/// reveals it) or by a request of its own (Origin reveals it, websockets included). The secret comes once in the address,
/// then as a cookie that no script can read and no other site can send.
/// </remarks>
internal sealed class DeskGuard(RequestDelegate next, DeskSecret secret, Func<Uri?> root)
{
    /// <summary>What the pages may load: only the desk's own files; the drawings' colours are style
    /// attributes, scripts are files.</summary>
    internal const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' data:; "
        + "connect-src 'self'; font-src 'self'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    public Task Invoke(HttpContext context)
    {
        HttpRequest request = context.Request;
        AddHeaders(context.Response.Headers);
        if (root() is not { } desk || !IsOurs(request.Host, desk))
            return Refuse(context, "This page is for the machine that it runs on.");
        if (!IsOwnOrigin(request, desk))
            return Refuse(context, "Only pages of the desk itself may ask it.");
        string cookie = string.Create(CultureInfo.InvariantCulture, $"sensorprofile-desk-{desk.Port}");
        string? typed = request.Query[DeskSecret.Parameter];
        if (HttpMethods.IsGet(request.Method) && typed is not null && secret.Is(typed))
            return LetIn(context, cookie);
        return secret.Is(request.Cookies[cookie])
            ? next(context)
            : Refuse(context, "Open the address that the terminal printed: it holds the key to this page.");
    }

    private static void AddHeaders(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers.CacheControl = "no-store";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
    }

    private static bool IsOurs(HostString host, Uri desk) =>
        host.Port == desk.Port && (host.Host == desk.Host || host.Host == "localhost");

    /// <summary>A browser states the origin of any request that changes something or opens a websocket; a plain visit has
    /// none.</summary>
    private static bool IsOwnOrigin(HttpRequest request, Uri desk)
    {
        string? origin = request.Headers.Origin;
        bool needed =
            !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method)
            || request.HttpContext.WebSockets.IsWebSocketRequest
            || request.Headers.Upgrade.Count > 0;
        if (string.IsNullOrEmpty(origin))
            return !needed;
        return Uri.TryCreate(origin, UriKind.Absolute, out Uri? from)
            && from.Scheme == desk.Scheme
            && from.Port == desk.Port
            && from.Host == request.Host.Host;
    }

    private static Task LetIn(HttpContext context, string cookie)
    {
        context.Response.Cookies.Append(
            cookie,
            context.Request.Query[DeskSecret.Parameter].ToString(),
            new CookieOptions
            {
                HttpOnly = true,
                SameSite = Microsoft.AspNetCore.Http.SameSiteMode.Strict,
                Path = "/",
                IsEssential = true,
            }
        );
        // redirects, so that the key leaves the address bar and the history
        context.Response.Redirect(context.Request.Path);
        return Task.CompletedTask;
    }

    private static Task Refuse(HttpContext context, string why)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(why, context.RequestAborted);
    }
}
