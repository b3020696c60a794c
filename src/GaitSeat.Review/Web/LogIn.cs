using System.Net;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Http;

namespace GaitSeat.Review.Web;

/// <summary>Lets those in who know the password of a shared page, a few tries at a time.</summary>
internal sealed class LogIn(Door door) : IDisposable
{
    internal const string Path = "/login";

    /// <summary>Tries within the window, right or wrong: of one address, and of all together.</summary>
    internal const int TriesOfOne = 5, TriesOfAll = 50;

    private const int LongestPassword = 1000;
    private static readonly TimeSpan Window = TimeSpan.FromMinutes(5);

    private readonly PartitionedRateLimiter<IPAddress> _ofOne = PartitionedRateLimiter.Create<IPAddress, IPAddress>(
        address => RateLimitPartition.GetFixedWindowLimiter(address, _ => new() { PermitLimit = TriesOfOne, Window = Window, QueueLimit = 0 }));

    private readonly FixedWindowRateLimiter _ofAll = new(new() { PermitLimit = TriesOfAll, Window = Window, QueueLimit = 0 });

    internal async Task TryAsync(HttpContext context)
    {
        using var one = _ofOne.AttemptAcquire(context.Connection.RemoteIpAddress ?? IPAddress.None);
        if (!one.IsAcquired)
        {
            await TooManyAsync(context);
            return;
        }

        using var all = _ofAll.AttemptAcquire();
        if (!all.IsAcquired) await TooManyAsync(context);
        else if (await Body.ReadAsync<GivenPassword>(context) is { } given)
        {
            if (given.Password?.Length <= LongestPassword && door.TryLogIn(context, given.Password)) await context.Response.WriteAsJsonAsync(new Guard.Message("Come in."));
            else await Guard.RefuseAsync(context, StatusCodes.Status401Unauthorized, "That is not the password.");
        }
    }

    public void Dispose()
    {
        _ofOne.Dispose();
        _ofAll.Dispose();
    }

    private static Task TooManyAsync(HttpContext context)
    {
        context.Response.Headers.RetryAfter = ((int)Window.TotalSeconds).ToString(System.Globalization.CultureInfo.InvariantCulture);
        return Guard.RefuseAsync(context, StatusCodes.Status429TooManyRequests, $"Too many tries. Wait {Window.TotalMinutes:0} minutes.");
    }

    private sealed record GivenPassword(string? Password);
}
