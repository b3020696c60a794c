using System.Net;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Watch;
using Hangfire;
using Hangfire.Dashboard;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace GaitSeat.Cli.Watching;

/// <summary>
/// What a worker tells of itself: <c>/health</c> as JSON (503 while it pauses) and Hangfire's dashboard under <c>/queue</c>, read-only. Who may see it: <see cref="HealthDoor"/>.
/// </summary>
internal sealed class HealthPage : IAsyncDisposable
{
    private readonly WebApplication _app;

    private HealthPage(WebApplication app) => _app = app;

    /// <summary>Where it is reached.</summary>
    public string Address => _app.Urls.First();

    /// <exception cref="SeasonException">The port is taken.</exception>
    public static async Task<HealthPage> StartAsync(HealthDoor door, int port, WatchHost host)
    {
        var builder = WebApplication.CreateEmptyBuilder(new());
        builder.WebHost.UseKestrelCore().ConfigureKestrel(k => k.Listen(door.Address, port));
        builder.Services.AddRoutingCore();
        // Hangfire keeps its log provider for the whole process: the page's own would outlive the page and fail whoever asked it next.
        builder.Services.AddHangfire(c => c.UseStorage(host.Storage).UseNoOpLogProvider());
        var app = builder.Build();
        app.Use((context, next) => door.Refuses(context.Request.Host.Host, context.Request.Headers.Authorization) is { } status ? RefuseAsync(context, status) : next(context));
        app.UseRouting();
        app.UseHangfireDashboard("/queue", new() { IsReadOnlyFunc = _ => true, Authorization = [new AtTheDoor()] }, host.Storage);
        app.Map("/health", health => health.Run(context => TellAsync(context, host)));
        try
        {
            await app.StartAsync();
        }
        catch (IOException e)
        {
            await app.DisposeAsync();
            throw new SeasonException($"the health page cannot use port {port}: {e.Message} Give watch.health_port a free one, or 0 for none");
        }

        return new(app);
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    private static Task RefuseAsync(HttpContext context, HttpStatusCode status)
    {
        context.Response.StatusCode = (int)status;
        if (status == HttpStatusCode.Unauthorized) context.Response.Headers.WWWAuthenticate = "Basic realm=\"GaitSeat worker\", charset=\"UTF-8\"";
        return Task.CompletedTask;
    }

    private static Task TellAsync(HttpContext context, WatchHost host)
    {
        var m = host.Metrics;
        context.Response.StatusCode = m.Paused is null ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable;
        return context.Response.WriteAsJsonAsync(new Dictionary<string, object?>
        {
            ["status"] = m.Paused is null ? "well" : "paused",
            ["paused_because"] = m.Paused,
            ["worker"] = host.Name,
            ["running_s"] = Math.Round(m.Running.TotalSeconds),
            ["queue_length"] = m.Waiting,
            ["clips"] = m.Clips,
            ["set_aside"] = m.SetAside,
            ["retries"] = m.Retries,
            ["frames"] = m.Frames,
            ["frames_per_s"] = Math.Round(m.FramesPerSecond, 2),
        });
    }

    /// <summary>Who is let in is settled before the dashboard is asked; its own filter knows addresses only.</summary>
    private sealed class AtTheDoor : IDashboardAuthorizationFilter
    {
        public bool Authorize(DashboardContext context) => true;
    }
}
