using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;

namespace GaitSeat.Review.Web;

/// <summary>
/// Who may come in. On this machine alone: whoever holds the link the program printed, whose token works once. Shared on a network: whoever knows the password. Either is
/// exchanged for a cookie that scripts cannot read and that no other site's page makes the browser send; every write must also carry a second secret that only a page of
/// ours can read. All secrets are random and die with the program.
/// </summary>
/// <param name="password">Null where the page is not shared.</param>
internal sealed class Door(string? password, TimeProvider time)
{
    internal const string CsrfHeader = "X-GaitSeat-Csrf";
    private const int SecretBytes = 32;
    private static readonly TimeSpan SharedSession = TimeSpan.FromHours(12);

    /// <summary>Until when a cookie is good, by its hash.</summary>
    private readonly ConcurrentDictionary<string, DateTimeOffset> _sessions = new(StringComparer.Ordinal);

    private string? _token = password is null ? Secret() : null;

    /// <summary>Of the printed link; null once it was used, and where the page is shared.</summary>
    internal string? Token => _token;

    internal bool IsShared => password is not null;

    /// <summary>The prefix makes browsers refuse the cookie from any other host and without encryption.</summary>
    internal string CookieName => IsShared ? "__Host-gaitseat-review" : "gaitseat-review";

    internal string Csrf { get; } = Secret();

    /// <summary>Uses the token up and sets the cookie.</summary>
    /// <returns>False for a wrong or used token.</returns>
    internal bool TryEnter(HttpContext context)
    {
        if (_token is not { } token || !Same(context.Request.Query["token"].ToString(), token) || Interlocked.CompareExchange(ref _token, null, token) != token) return false;
        Admit(context, DateTimeOffset.MaxValue);
        return true;
    }

    /// <summary>Sets the cookie for whoever knows the password.</summary>
    internal bool TryLogIn(HttpContext context, string? given)
    {
        if (password is null || given is null || !Same(given, password)) return false;
        Admit(context, time.GetUtcNow() + SharedSession);
        return true;
    }

    internal bool IsInside(HttpContext context) =>
        context.Request.Cookies[CookieName] is { Length: > 0 } cookie && _sessions.TryGetValue(Hash(cookie), out var until) && time.GetUtcNow() < until;

    /// <summary>Whether a write comes from a page of ours: its secret, its origin and the kind of its body.</summary>
    internal bool IsOwnWrite(HttpContext context, string origin) => Same(context.Request.Headers[CsrfHeader].ToString(), Csrf) && IsOwnForm(context, origin);

    /// <summary>As <see cref="IsOwnWrite"/> without the secret, which nobody outside can know.</summary>
    internal static bool IsOwnForm(HttpContext context, string origin) => context.Request.Headers.Origin == origin && context.Request.HasJsonContentType();

    /// <summary>Ends the session of the one who asks: its cookie is worth nothing from now on, wherever it is.</summary>
    internal void Leave(HttpContext context)
    {
        if (context.Request.Cookies[CookieName] is { Length: > 0 } cookie) _sessions.TryRemove(Hash(cookie), out _);
        context.Response.Cookies.Delete(CookieName, new() { HttpOnly = true, Secure = IsShared, SameSite = SameSiteMode.Strict, Path = "/" });
    }

    private void Admit(HttpContext context, DateTimeOffset until)
    {
        var session = Secret();
        _sessions[Hash(session)] = until;
        context.Response.Cookies.Append(CookieName, session, new() { HttpOnly = true, Secure = IsShared, SameSite = SameSiteMode.Strict, Path = "/" });
    }

    private static string Secret() => WebEncoders.Base64UrlEncode(RandomNumberGenerator.GetBytes(SecretBytes));

    private static string Hash(string secret) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    /// <summary>By their hashes, so that not even the length is told by the time it takes.</summary>
    private static bool Same(string given, string wanted) =>
        CryptographicOperations.FixedTimeEquals(SHA256.HashData(Encoding.UTF8.GetBytes(given)), SHA256.HashData(Encoding.UTF8.GetBytes(wanted)));
}
