using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;

namespace GaitSeat.Review.Web;

/// <summary>
/// Who may come in: whoever holds the link the program printed. Its token works once and is exchanged for a cookie that scripts cannot read and that no other site's
/// page makes the browser send; every write must also carry a second secret that only a page of ours can read. All three are random and die with the program.
/// </summary>
internal sealed class Door
{
    internal const string CookieName = "gaitseat-review";
    internal const string CsrfHeader = "X-GaitSeat-Csrf";
    private const int SecretBytes = 32;
    private readonly string _session = Secret();
    private string? _token = Secret();

    /// <summary>Of the printed link; null once it was used.</summary>
    internal string? Token => _token;

    internal string Csrf { get; } = Secret();

    /// <summary>Uses the token up and sets the cookie.</summary>
    /// <returns>False for a wrong or used token.</returns>
    internal bool TryEnter(HttpContext context)
    {
        if (_token is not { } token || !Same(context.Request.Query["token"].ToString(), token) || Interlocked.CompareExchange(ref _token, null, token) != token) return false;
        context.Response.Cookies.Append(CookieName, _session, new() { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/" });
        return true;
    }

    internal bool IsInside(HttpContext context) => Same(context.Request.Cookies[CookieName] ?? "", _session);

    /// <summary>Whether a write comes from a page of ours: its secret, its origin and the kind of its body.</summary>
    internal bool IsOwnWrite(HttpContext context, string origin) =>
        Same(context.Request.Headers[CsrfHeader].ToString(), Csrf) && context.Request.Headers.Origin == origin && context.Request.HasJsonContentType();

    private static string Secret() => WebEncoders.Base64UrlEncode(RandomNumberGenerator.GetBytes(SecretBytes));

    private static bool Same(string given, string wanted) => CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given), Encoding.UTF8.GetBytes(wanted));
}
