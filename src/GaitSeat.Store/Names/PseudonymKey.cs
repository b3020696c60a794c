using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>A key file that cannot be opened.</summary>
public sealed class KeyFileException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>
/// Names behind pseudonyms, in a file of its own that only a passphrase opens: AES-256-GCM under a key from PBKDF2-HMAC-SHA256. Keep it apart from the dataset; who loses the passphrase loses the names.
/// </summary>
public sealed class PseudonymKey
{
    /// <summary>Rounds of PBKDF2: what OWASP's Password Storage Cheat Sheet asks for HMAC-SHA256 since 2023.</summary>
    private const int Rounds = 600_000;

    /// <summary>A file that asks for more than this is not ours: it would only keep the machine busy.</summary>
    private const int MostRounds = 10_000_000;
    private const int SaltBytes = 16, KeyBytes = 32, NonceBytes = 12, TagBytes = 16, Version = 1;
    private const string Format = "gaitseat-key";

    private readonly SortedDictionary<string, string> _names = new(StringComparer.Ordinal);

    public IReadOnlyList<string> Pseudonyms => [.. _names.Keys];

    /// <exception cref="KeyFileException">There is no such file, it is damaged, or the passphrase is another.</exception>
    public static PseudonymKey Open(string path, string passphrase)
    {
        ArgumentException.ThrowIfNullOrEmpty(passphrase);
        var sealedKey = Read(path);
        var text = new byte[sealedKey.Text.Length];
        try
        {
            using var aes = new AesGcm(KeyOf(passphrase, sealedKey.Salt, sealedKey.Rounds), TagBytes);
            aes.Decrypt(sealedKey.Nonce, sealedKey.Text, sealedKey.Tag, text, Header(sealedKey.Rounds));
        }
        catch (AuthenticationTagMismatchException e)
        {
            throw new KeyFileException($"'{path}' does not open: the passphrase is another one, or the file was changed since it was written. Nothing of it can be read.", e);
        }

        var key = new PseudonymKey();
        foreach (var (pseudonym, name) in JsonSerializer.Deserialize<Dictionary<string, string>>(text)!) key._names[pseudonym] = name;
        CryptographicOperations.ZeroMemory(text);
        return key;
    }

    /// <summary>Adds a name, or replaces the one that stood there.</summary>
    public void Set(string pseudonym, string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(pseudonym);
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        _names[pseudonym.Trim()] = name.Trim();
    }

    /// <returns>Whether it was there.</returns>
    public bool Remove(string pseudonym) => _names.Remove(pseudonym);

    /// <returns>Null where the pseudonym is not in the key.</returns>
    public string? NameOf(string pseudonym) => _names.GetValueOrDefault(pseudonym);

    /// <summary>Pseudonyms whose name is this; the case of letters does not matter.</summary>
    public IReadOnlyList<string> Find(string name) => [.. _names.Where(n => string.Equals(n.Value, name.Trim(), StringComparison.OrdinalIgnoreCase)).Select(n => n.Key)];

    /// <summary>Pseudonyms of those whose name, or a part of it of at least four letters, stands in a file's name.</summary>
    public IReadOnlyList<string> NamedIn(string fileName)
    {
        const int ShortestPart = 4;
        ArgumentNullException.ThrowIfNull(fileName);
        var letters = Letters(Path.GetFileNameWithoutExtension(fileName));
        return [.. _names.Where(n => n.Value.Split(' ', '-', ',').Append(n.Value).Select(Letters).Any(p => p.Length >= ShortestPart && letters.Contains(p, StringComparison.Ordinal))).Select(n => n.Key)];
    }

    /// <summary>Writes the file anew, whole or not at all, under a fresh salt and nonce, for its owner alone.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Save(string path, string passphrase)
    {
        ArgumentException.ThrowIfNullOrEmpty(passphrase);
        var (salt, nonce, tag) = (RandomNumberGenerator.GetBytes(SaltBytes), RandomNumberGenerator.GetBytes(NonceBytes), new byte[TagBytes]);
        var plain = JsonSerializer.SerializeToUtf8Bytes(_names);
        var text = new byte[plain.Length];
        using (var aes = new AesGcm(KeyOf(passphrase, salt, Rounds), TagBytes)) aes.Encrypt(nonce, plain, text, tag, Header(Rounds));
        CryptographicOperations.ZeroMemory(plain);
        AtomicFile.WriteText(Path.GetFullPath(path), JsonSerializer.Serialize(new Sealed(Format, Version, Rounds, salt, nonce, tag, text)) + "\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);
    }

    private static Sealed Read(string path)
    {
        if (!File.Exists(path)) throw new KeyFileException($"There is no key file '{path}'. 'gaitseat key add' makes one.");
        try
        {
            var key = JsonSerializer.Deserialize<Sealed>(File.ReadAllText(path)) ?? throw new JsonException("it is empty");
            if (key.Format != Format) throw new JsonException("it is no key file");
            if (key.Version != Version) throw new KeyFileException($"'{path}' is of version {key.Version}; this program reads version {Version}.");
            return key is { Rounds: > 0 and <= MostRounds, Salt.Length: SaltBytes, Nonce.Length: NonceBytes, Tag.Length: TagBytes, Text: not null } ? key : throw new JsonException("parts of it are missing or cut");
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException)
        {
            throw new KeyFileException($"The key file '{path}' is damaged ({e.Message}). Restore it from a copy.", e);
        }
    }

    private static byte[] KeyOf(string passphrase, byte[] salt, int rounds) => Rfc2898DeriveBytes.Pbkdf2(passphrase, salt, rounds, HashAlgorithmName.SHA256, KeyBytes);

    /// <summary>Sealed with the text, so that nobody can weaken the rounds unnoticed.</summary>
    private static byte[] Header(int rounds) => Encoding.UTF8.GetBytes(FormattableString.Invariant($"{Format} {Version} {rounds}"));

    private static string Letters(string text) => string.Concat(text.Where(char.IsLetter)).ToUpperInvariant();

    private sealed record Sealed(string Format, int Version, int Rounds, byte[] Salt, byte[] Nonce, byte[] Tag, byte[] Text);
}
