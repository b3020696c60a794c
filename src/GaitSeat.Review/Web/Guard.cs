using Microsoft.AspNetCore.Http;

namespace GaitSeat.Review.Web;

/// <summary>Stands before every request: the headers that bind the browser, then who asks, under what name, and whether a write is ours.</summary>
internal sealed class Guard(Door door)
{
    internal const string EnterPath = "/enter";

    private const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; media-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private static readonly string[] OwnNames = ["localhost", "127.0.0.1", "[::1]"];

    internal async Task InvokeAsync(HttpContext context, RequestDelegate next)
    {
        Bind(context.Response.Headers);
        var request = context.Request;
        // A page from elsewhere that has made its own name point to this machine still sends that name.
        if (!OwnNames.Contains(request.Host.Host) || request.Host.Port != context.Connection.LocalPort) await RefuseAsync(context, StatusCodes.Status403Forbidden, "This page answers under its own address only.");
        else if (request.Headers["Sec-Fetch-Site"].ToString() is "cross-site" or "same-site" && request.Path != EnterPath) await RefuseAsync(context, StatusCodes.Status403Forbidden, "Requests from other pages are refused.");
        else if (request.Path == EnterPath && HttpMethods.IsGet(request.Method)) await EnterAsync(context);
        else if (!door.IsInside(context)) await RefuseAsync(context, StatusCodes.Status401Unauthorized, "Open the link the program printed. Each start prints a new one, and it works once.");
        else if (!HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method) && !door.IsOwnWrite(context, $"{request.Scheme}://{request.Host}")) await RefuseAsync(context, StatusCodes.Status403Forbidden, "The write did not come from this page.");
        else await next(context);
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

    /// <summary>The way on is a page and not a redirect: from a redirect that began elsewhere the browser would hold the new cookie back.</summary>
    private Task EnterAsync(HttpContext context)
    {
        if (!door.TryEnter(context)) return RefuseAsync(context, StatusCodes.Status401Unauthorized, "This link has been used or is wrong. Start 'gaitseat review' again for a new one.");
        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync("<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>GaitSeat review</title><link rel=\"icon\" href=\"/app/icon.svg\" type=\"image/svg+xml\"><meta http-equiv=\"refresh\" content=\"0;url=/\"><p><a href=\"/\">Go on to the review</a></p></html>");
    }

    internal static Task RefuseAsync(HttpContext context, int status, string message)
    {
        context.Response.StatusCode = status;
        return context.Response.WriteAsJsonAsync(new Message(message));
    }

    /// <summary>What every refusal says.</summary>
    internal sealed record Message(string Text);
}
