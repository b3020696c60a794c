using System.Net;
using System.Security.Cryptography;
using System.Text;
using GaitSeat.Pipeline.Season;

namespace GaitSeat.Cli.Watching;

/// <summary>Who may see the health page: this machine alone, or whoever knows the password.</summary>
internal sealed class HealthDoor
{
    /// <summary>The variable the password comes in: neither the command line nor the pipeline file, which others can read.</summary>
    public const string PasswordVariable = "GAITSEAT_HEALTH_PASSWORD";

    /// <summary>Long enough not to be guessed over a network (NIST SP 800-63B-4, 3.1.1.2: 15 where a password stands alone).</summary>
    private const int ShortestPassword = 15;

    private static readonly string[] _ownNames = ["localhost", "127.0.0.1", "[::1]"];
    private readonly byte[]? _passwordHash;

    private HealthDoor(IPAddress address, byte[]? passwordHash) => (Address, _passwordHash) = (address, passwordHash);

    public IPAddress Address { get; }

    /// <summary>What whoever runs the worker should know; null where nothing is open.</summary>
    public string? Warning => IPAddress.IsLoopback(Address)
        ? null
        : $"the health page and the queue's dashboard listen on {Address} for every machine that reaches it; they ask for the password of {PasswordVariable}, which travels unencrypted: put a proxy with TLS before them, or use a tunnel and 127.0.0.1";

    /// <param name="address">Address to listen on.</param>
    /// <param name="password">Null or empty for none.</param>
    /// <exception cref="SeasonException">It is no address, or open without a password, or the password is too short.</exception>
    public static HealthDoor Of(string address, string? password)
    {
        if (!IPAddress.TryParse(address, out var parsed))
            throw new SeasonException($"watch.health_address is '{address}'; allowed is an IP address of this machine, such as 127.0.0.1, or 0.0.0.0 for all of them");
        if (string.IsNullOrEmpty(password))
        {
            return IPAddress.IsLoopback(parsed)
                ? new(parsed, null)
                : throw new SeasonException($"watch.health_address is {address}, which others can reach; that needs a password of at least {ShortestPassword} characters in the variable {PasswordVariable}");
        }

        return password.Length >= ShortestPassword
            ? new(parsed, Hash(password))
            : throw new SeasonException($"the password in {PasswordVariable} has {password.Length} characters; at least {ShortestPassword} are needed");
    }

    /// <summary>Without a password only this machine gets here, but a page from elsewhere could through its browser: requests under another host's name are refused.</summary>
    /// <param name="host">Name the request was sent to.</param>
    /// <param name="authorization">The header; HTTP Basic, any user name.</param>
    /// <returns>Null to let it in; else the status to answer with.</returns>
    public HttpStatusCode? Refuses(string host, string? authorization)
    {
        if (_passwordHash is null) return _ownNames.Contains(host) ? null : HttpStatusCode.Forbidden;
        return PasswordIn(authorization) is { } given && CryptographicOperations.FixedTimeEquals(Hash(given), _passwordHash) ? null : HttpStatusCode.Unauthorized;
    }

    private static string? PasswordIn(string? authorization)
    {
        const string Scheme = "Basic ";
        if (authorization?.StartsWith(Scheme, StringComparison.OrdinalIgnoreCase) != true) return null;
        var bytes = new byte[authorization.Length];
        if (!Convert.TryFromBase64String(authorization[Scheme.Length..].Trim(), bytes, out var length)) return null;
        var text = Encoding.UTF8.GetString(bytes, 0, length);
        return text.IndexOf(':') is >= 0 and var colon ? text[(colon + 1)..] : null;
    }

    /// <summary>Hashed so that the comparison is over equal lengths, whatever was sent.</summary>
    private static byte[] Hash(string password) => SHA256.HashData(Encoding.UTF8.GetBytes(password));
}
