using Microsoft.AspNetCore.Http;

namespace GaitSeat.Review.Web;

/// <summary>Stands before every request: the headers that bind the browser, then who asks, under what name, and whether a write is ours.</summary>
/// <param name="logIn">Null where the page is not shared.</param>
/// <param name="isOwnName">Whether the page answers under a host name.</param>
internal sealed class Guard(Door door, LogIn? logIn, Func<string, bool> isOwnName)
{
    internal const string EnterPath = "/enter";

    private const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; media-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private const int HttpsPort = 443;

    private static readonly string[] LoopbackNames = ["localhost", "127.0.0.1", "[::1]"];

    /// <summary>What the page that asks for the password is made of; nothing of the dataset.</summary>
    private static readonly string[] Open = ["/app/tokens.css", "/app/base.css", "/app/login.css", "/app/login.js", "/app/icon.svg", "/favicon.ico"];

    /// <summary>The names of this machine to itself.</summary>
    internal static bool IsLoopbackName(string host) => LoopbackNames.Contains(host);

    internal async Task InvokeAsync(HttpContext context, RequestDelegate next)
    {
        Bind(context.Response.Headers);
        var request = context.Request;
        var origin = $"{request.Scheme}://{request.Host}";
        // A page from elsewhere that has made its own name point to this machine still sends that name.
        if (!isOwnName(request.Host.Host) || !IsOwnPort(context)) await RefuseAsync(context, StatusCodes.Status403Forbidden, "This page answers under its own address only.");
        else if (request.Headers["Sec-Fetch-Site"].ToString() is "cross-site" or "same-site" && request.Path != EnterPath && !IsFirstVisit(context)) await RefuseAsync(context, StatusCodes.Status403Forbidden, "Requests from other pages are refused.");
        else if (request.Path == EnterPath && HttpMethods.IsGet(request.Method)) await EnterAsync(context);
        else if (logIn is not null && request.Path == LogIn.Path && HttpMethods.IsPost(request.Method)) await LogInAsync(context, origin);
        else if (!door.IsInside(context)) await OutsideAsync(context, next);
        else if (!HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method) && !door.IsOwnWrite(context, origin)) await RefuseAsync(context, StatusCodes.Status403Forbidden, "The write did not come from this page.");
        else await next(context);
    }

    /// <summary>Reached by those inside alone, with a write of the page's own.</summary>
    internal Task LogOutAsync(HttpContext context)
    {
        door.Leave(context);
        return context.Response.WriteAsJsonAsync(new Message("Logged out."));
    }

    private static void Bind(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
        // Footage of people is not to lie in the browser's cache.
        headers.CacheControl = "no-store";
    }

    /// <summary>Browsers leave a scheme's own port out of the name.</summary>
    private static bool IsOwnPort(HttpContext context) => (context.Request.Host.Port ?? (context.Request.IsHttps ? HttpsPort : -1)) == context.Connection.LocalPort;

    /// <summary>A link to a shared page, in a mail for instance, may be followed as far as the page that asks for the password; the strict cookie does not come with it.</summary>
    private bool IsFirstVisit(HttpContext context) => door.IsShared && context.Request.Path == "/" && HttpMethods.IsGet(context.Request.Method) && context.Request.Headers["Sec-Fetch-Mode"] == "navigate";

    /// <summary>The way on is a page and not a redirect: from a redirect that began elsewhere the browser would hold the new cookie back.</summary>
    private Task EnterAsync(HttpContext context)
    {
        if (!door.TryEnter(context)) return RefuseAsync(context, StatusCodes.Status401Unauthorized, "This link has been used or is wrong. Start 'gaitseat review' again for a new one.");
        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync("<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>GaitSeat review</title><link rel=\"icon\" href=\"/app/icon.svg\" type=\"image/svg+xml\"><meta http-equiv=\"refresh\" content=\"0;url=/\"><p><a href=\"/\">Go on to the review</a></p></html>");
    }

    private Task LogInAsync(HttpContext context, string origin) => Door.IsOwnForm(context, origin)
        ? logIn!.TryAsync(context)
        : RefuseAsync(context, StatusCodes.Status403Forbidden, "The password did not come from this page.");

    private Task OutsideAsync(HttpContext context, RequestDelegate next)
    {
        var isRead = HttpMethods.IsGet(context.Request.Method);
        if (door.IsShared && isRead && Open.Contains(context.Request.Path.Value)) return next(context);
        if (door.IsShared && isRead && Screen.All.Any(s => s.Path == context.Request.Path.Value)) return Assets.LogInAsync(context);
        return RefuseAsync(context, StatusCodes.Status401Unauthorized, door.IsShared ? "Log in first." : "Open the link the program printed. Each start prints a new one, and it works once.");
    }

    internal static Task RefuseAsync(HttpContext context, int status, string message)
    {
        context.Response.StatusCode = status;
        // Somebody who opens an old link or the bare address reads a sentence; the page's own scripts read JSON.
        if (context.Request.Headers["Sec-Fetch-Mode"] != "navigate") return context.Response.WriteAsJsonAsync(new Message(message));
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(message);
    }

    /// <summary>What every refusal says.</summary>
    internal sealed record Message(string Text);
}
