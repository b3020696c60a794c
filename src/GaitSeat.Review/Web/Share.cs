using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace GaitSeat.Review.Web;

/// <summary>What sharing the page on a network takes: where to listen, the certificate that proves who answers, and the password that whoever comes in must know.</summary>
public sealed class Share
{
    /// <summary>Long enough not to be guessed over a network (NIST SP 800-63B-4, 3.1.1.2: 15 where a password stands alone).</summary>
    public const int ShortestPassword = 15;

    private const int LongestPassword = 1000;

    private Share(IPAddress address, X509Certificate2 certificate, string password) => (Address, Certificate, Password) = (address, certificate, password);

    internal IPAddress Address { get; }

    internal X509Certificate2 Certificate { get; }

    internal string Password { get; }

    /// <summary>The name in the certificate that the page is reached under.</summary>
    public string HostName => Certificate.GetNameInfo(X509NameType.DnsName, forIssuer: false) is { Length: > 0 } name ? name : Address.ToString();

    /// <param name="address">An address of this machine; 0.0.0.0 for all of them.</param>
    /// <param name="certificatePath">A PKCS #12 file (.pfx, .p12) with its private key.</param>
    /// <param name="certificatePassword">Of that file; null or empty for none.</param>
    /// <param name="password">Which those who come in must give.</param>
    /// <exception cref="ReviewException">One of them will not do; says which and what is allowed.</exception>
    public static Share Of(string address, string certificatePath, string? certificatePassword, string password, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(password);
        if (!IPAddress.TryParse(address, out var parsed)) throw new ReviewException($"'{address}' is no address to listen on; allowed is an IP address of this machine, or 0.0.0.0 for all of them.");
        if (password.Length is < ShortestPassword or > LongestPassword) throw new ReviewException($"The password has {password.Length} characters; {ShortestPassword} to {LongestPassword} are allowed.");
        return new(parsed, Load(certificatePath, certificatePassword, now), password);
    }

    private static X509Certificate2 Load(string path, string? password, DateTimeOffset now)
    {
        X509Certificate2 certificate;
        try
        {
            certificate = X509CertificateLoader.LoadPkcs12FromFile(path, password);
        }
        catch (Exception e) when (e is CryptographicException or IOException or UnauthorizedAccessException)
        {
            throw new ReviewException($"The certificate '{path}' cannot be read ({e.Message}). Give a PKCS #12 file (.pfx) and, where it has one, its password.", e);
        }

        var problem = !certificate.HasPrivateKey ? "it has no private key"
            : now.UtcDateTime < certificate.NotBefore.ToUniversalTime() ? FormattableString.Invariant($"it holds from {certificate.NotBefore.ToUniversalTime():yyyy-MM-dd} on")
            : now.UtcDateTime >= certificate.NotAfter.ToUniversalTime() ? FormattableString.Invariant($"it ran out on {certificate.NotAfter.ToUniversalTime():yyyy-MM-dd}")
            : null;
        if (problem is null) return certificate;
        certificate.Dispose();
        throw new ReviewException($"The certificate '{path}' will not do: {problem}.");
    }
}
