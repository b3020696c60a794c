using System.Globalization;
using System.Net;
using GaitSeat.Review.Clips;
using GaitSeat.Review.Marks;
using GaitSeat.Review.Questions;
using GaitSeat.Review.Seasons;
using GaitSeat.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace GaitSeat.Review.Web;

/// <summary>The review page cannot be opened.</summary>
public sealed class ReviewException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>The review page, on this machine's loopback address unless it is shared. It asks nothing of any other machine, and serves clips by their keys alone.</summary>
public sealed class ReviewSite : IAsyncDisposable
{
    private const int LargestBodyBytes = 16 * 1024, PageLines = 50, NarrowestPx = 200, WidestPx = 1600;
    private readonly WebApplication _app;
    private readonly Door _door;
    private readonly Desk _desk;
    private readonly MarkDesk _marks;
    private readonly PlayableCopies _copies;
    private readonly Share? _share;
    private readonly LogIn? _logIn;

    private ReviewSite(WebApplication app, Door door, Desk desk, MarkDesk marks, PlayableCopies copies, Share? share, LogIn? logIn) =>
        (_app, _door, _desk, _marks, _copies, _share, _logIn) = (app, door, desk, marks, copies, share, logIn);

    /// <summary>Where it is reached, without the token.</summary>
    public string Address => _share is null ? _app.Urls.First() : $"https://{_share.HostName}:{new Uri(_app.Urls.First()).Port}";

    /// <summary>The link to print; its token works once. Null once it was used, and where the page is shared and asks for a password instead.</summary>
    public string? Link => _door.Token is { } token ? $"{Address}{Guard.EnterPath}?token={token}" : null;

    /// <summary>How many questions there are, and how many are not shown for want of consent.</summary>
    public (int Shown, int Hidden) Questions => (_desk.Page(0, 0).Total, _desk.Page(0, 0).Hidden);

    /// <param name="judge">Pseudonym of who judges.</param>
    /// <param name="port">0 for one that is free.</param>
    /// <param name="share">How the page is shared; null for this machine alone.</param>
    /// <exception cref="ReviewException">The port is taken.</exception>
    /// <exception cref="DatasetException">The dataset cannot be read.</exception>
    public static async Task<ReviewSite> StartAsync(ReviewSeason season, string clipFolder, string judge, int port, TimeProvider time, Share? share = null)
    {
        ArgumentNullException.ThrowIfNull(season);
        using var query = new DatasetQuery(season.Dataset.Folder);
        return await StartAsync(season, clipFolder, new(clipFolder, ClipFacts.Read(query, season.Run), new(clipFolder, time), new(season.Dataset.Folder)), SeasonFacts.Read(query, season.Run), judge, port, time, share);
    }

    /// <param name="shelf">The clips of the run.</param>
    /// <param name="facts">What the season screen shows beyond the spells.</param>
    internal static async Task<ReviewSite> StartAsync(ReviewSeason season, string clipFolder, ClipShelf shelf, SeasonFacts facts, string judge, int port, TimeProvider time, Share? share)
    {
        var desk = new Desk(season, shelf, new(season.Dataset, season.Run, judge, time, shelf.IsErased));
        var log = new ShownLog(season, judge, time);
        var fileOf = facts.Clips.ToDictionary(c => c.ClipKey, c => c.ClipFile, StringComparer.Ordinal);
        var seasonDesk = new SeasonDesk(new(season.Spells, season.Flags, facts, key => fileOf.TryGetValue(key, out var file) && shelf.MayShow(key, file)), desk.Book, log);
        var copies = new PlayableCopies(season.Dataset.Folder);
        var marks = new MarkDesk(season, desk, judge, time);
        var door = new Door(share?.Password, time);
        var logIn = share is null ? null : new LogIn(door);
        var builder = WebApplication.CreateEmptyBuilder(new());
        builder.WebHost.UseKestrelCore().UseKestrelHttpsConfiguration().ConfigureKestrel(k =>
        {
            k.AddServerHeader = false;
            k.Limits.MaxRequestBodySize = LargestBodyBytes;
            if (share is null) k.Listen(IPAddress.Loopback, port);
            else k.Listen(share.Address, port, listen => listen.UseHttps(share.Certificate));
        });
        builder.Services.AddRoutingCore();
        var app = builder.Build();
        var guard = new Guard(door, logIn, share is null ? Guard.IsLoopbackName : host => share.Certificate.MatchesHostname(host.Trim('[', ']')));
        app.Use(next => context => guard.InvokeAsync(context, next));
        app.Use(next => context => SayingWhatFailsAsync(context, next));
        Map(app, new(door), desk, seasonDesk, new(season.Dataset, season.Run, clipFolder, shelf, time), marks, log, new(shelf, copies, log), guard);
        try
        {
            await app.StartAsync();
        }
        catch (IOException e)
        {
            await app.DisposeAsync();
            throw new ReviewException($"The review page cannot use port {port}: {e.Message} Give --port a free one, or leave it out.", e);
        }

        return new(app, door, desk, marks, copies, share, logIn);
    }

    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        _desk.Verdicts.Dispose();
        _marks.Dispose();
        _copies.Dispose();
        _logIn?.Dispose();
    }

    private static void Map(WebApplication app, Assets assets, Desk desk, SeasonDesk season, RunDesk run, MarkDesk marks, ShownLog log, ClipDoor clips, Guard guard)
    {
        var answers = new Answers(desk);
        app.UseRouting();
        foreach (var screen in Screen.All) app.MapGet(screen.Path, (RequestDelegate)(c => assets.PageAsync(c, screen)));
        app.MapGet("/app/{name}", (RequestDelegate)(c => Assets.FileAsync(c, (string)c.GetRouteValue("name")!)));
        // Browsers ask for this by themselves.
        app.MapGet("/favicon.ico", (RequestDelegate)(c => Assets.FileAsync(c, "icon.svg")));
        app.MapGet("/api/queue", (RequestDelegate)(c => c.Response.WriteAsJsonAsync(desk.Page(Whole(c, "from", 0, 0, int.MaxValue), PageLines))));
        app.MapGet("/api/questions/{id}", (RequestDelegate)(c => WithQuestionAsync(c, desk, async q =>
        {
            log.Tell("question", q.Spell.Provenance.ClipKey);
            await c.Response.WriteAsJsonAsync(await desk.ShowAsync(q, c.RequestAborted));
        })));
        app.MapGet("/api/questions/{id}/strip", (RequestDelegate)(c => WithQuestionAsync(c, desk, q => SvgAsync(c, desk.Strip(q, WidthOf(c))))));
        app.MapGet("/api/questions/{id}/history", (RequestDelegate)(c => WithQuestionAsync(c, desk, q => SvgAsync(c, desk.History(q, WidthOf(c))))));
        app.MapGet("/api/questions/{id}/tracks", (RequestDelegate)(c => WithQuestionAsync(c, desk, q => c.Response.WriteAsJsonAsync(desk.Overlay(q.Spell)))));
        app.MapGet("/api/questions/{id}/beside", (RequestDelegate)(c => WithQuestionAsync(c, desk, q => c.Response.WriteAsJsonAsync(desk.Beside(q)))));
        app.MapGet("/api/questions/{id}/beside/{other}", (RequestDelegate)(c => WithQuestionAsync(c, desk, q => BesideAsync(c, desk, q))));
        app.MapMethods("/clip/{key}", [HttpMethods.Get, HttpMethods.Head], (RequestDelegate)clips.ClipAsync);
        app.MapMethods("/clip/{key}/copy", [HttpMethods.Get, HttpMethods.Head], (RequestDelegate)clips.CopyAsync);
        app.MapPost("/api/copy", (RequestDelegate)clips.MakeCopyAsync);
        app.MapGet("/api/season", (RequestDelegate)(c => c.Response.WriteAsJsonAsync(season.Page())));
        app.MapGet("/api/season/{rider:int}", (RequestDelegate)(c => season.RiderAsync(c, int.Parse((string)c.GetRouteValue("rider")!, CultureInfo.InvariantCulture), WidthOf(c))));
        app.MapGet("/api/questions/{id}/marks", (RequestDelegate)(c => WithQuestionAsync(c, desk, q => marks.ShowAsync(c, q))));
        app.MapPost("/api/marks", (RequestDelegate)marks.SaveAsync);
        app.MapGet("/api/run", (RequestDelegate)run.PageAsync);
        app.MapPost("/api/retry", (RequestDelegate)run.RetryAsync);
        app.MapPost("/api/answer", (RequestDelegate)answers.AnswerAsync);
        app.MapPost("/api/undo", (RequestDelegate)answers.UndoAsync);
        app.MapPost("/logout", (RequestDelegate)guard.LogOutAsync);
        app.MapFallback(c => Guard.RefuseAsync(c, StatusCodes.Status404NotFound, "There is no such page."));
    }

    private static Task WithQuestionAsync(HttpContext context, Desk desk, Func<Question, Task> show) => desk.Find((string)context.GetRouteValue("id")!) is { } question
        ? show(question)
        : desk.RefuseAsync(context, (string)context.GetRouteValue("id")!);

    private static async Task BesideAsync(HttpContext context, Desk desk, Question question)
    {
        if (await desk.BesideAsync(question, (string)context.GetRouteValue("other")!, context.RequestAborted) is { } beside) await context.Response.WriteAsJsonAsync(beside);
        else await Guard.RefuseAsync(context, StatusCodes.Status404NotFound, "There is no such spell to look at beside this one, or its clip may not be shown.");
    }

    private static Task SvgAsync(HttpContext context, string svg)
    {
        context.Response.ContentType = "image/svg+xml";
        return context.Response.WriteAsync(svg);
    }

    private static int WidthOf(HttpContext context) => Whole(context, "width", WidestPx / 2, NarrowestPx, WidestPx);

    private static int Whole(HttpContext context, string name, int otherwise, int least, int most) =>
        int.TryParse(context.Request.Query[name].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? Math.Clamp(value, least, most) : otherwise;

    /// <summary>A dataset that cannot be read or written is said on the page, where the judge can do something about it.</summary>
    private static async Task SayingWhatFailsAsync(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (DatasetException e) when (!context.Response.HasStarted)
        {
            await Guard.RefuseAsync(context, StatusCodes.Status500InternalServerError, e.Message);
        }
    }
}
