using System.Text.Encodings.Web;
using GaitSeat.Faults;
using Microsoft.AspNetCore.Http;

namespace GaitSeat.Review.Web;

/// <summary>The files of the page, which lie in the program itself: there is no folder to step out of.</summary>
internal sealed class Assets(Door door)
{
    /// <summary>Only where the page is shared: on this machine the session ends with the program.</summary>
    private const string LogOutButton = "<button type=\"button\" id=\"log-out\">Log out</button>";

    private static readonly Dictionary<string, string> Types = new(StringComparer.Ordinal) { [".js"] = "text/javascript; charset=utf-8", [".css"] = "text/css; charset=utf-8", [".svg"] = "image/svg+xml" };

    internal async Task PageAsync(HttpContext context, Screen screen)
    {
        (string Mark, string Html)[] parts =
        [
            ("body", (await ReadAsync(screen.Name + ".html"))!), ("name", screen.Name), ("title", screen.Title), ("screens", screen.Ways),
            ("tools", screen.Tools + (door.IsShared ? LogOutButton : "")), ("csrf", door.Csrf), ("cautions", HtmlEncoder.Default.Encode(Cautions.Text)),
        ];
        context.Response.ContentType = "text/html; charset=utf-8";
        await context.Response.WriteAsync(parts.Aggregate((await ReadAsync("shell.html"))!, (page, part) => page.Replace($"{{{{{part.Mark}}}}}", part.Html, StringComparison.Ordinal)));
    }

    /// <summary>The page that asks for the password; it holds no secret.</summary>
    internal static async Task LogInAsync(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status401Unauthorized;
        context.Response.ContentType = "text/html; charset=utf-8";
        await context.Response.WriteAsync((await ReadAsync("login.html"))!);
    }

    internal static async Task FileAsync(HttpContext context, string name)
    {
        if (!Types.TryGetValue(Path.GetExtension(name), out var type) || await ReadAsync(name) is not { } text)
        {
            await Guard.RefuseAsync(context, StatusCodes.Status404NotFound, "There is no such file.");
            return;
        }

        context.Response.ContentType = type;
        await context.Response.WriteAsync(text);
    }

    private static async Task<string?> ReadAsync(string name)
    {
        await using var stream = typeof(Assets).Assembly.GetManifestResourceStream(name);
        if (stream is null) return null;
        using var reader = new StreamReader(stream);
        return await reader.ReadToEndAsync();
    }
}
