namespace GaitSeat.Vision.Models;

/// <summary>A published file that must be as it was when its hash was pinned.</summary>
/// <param name="Bytes">Its length.</param>
/// <param name="Sha256">SHA-256 of its bytes, lower-case hex.</param>
public sealed record SourceFile(long Bytes, string Sha256)
{
    /// <exception cref="ModelException">The file is missing, cut short or changed; the message says which, and the remedy.</exception>
    internal byte[] Read(string path)
    {
        if (!File.Exists(path)) throw new ModelException($"model file not found: {path}; {Restore.Remedy}");
        var bytes = File.ReadAllBytes(path);
        if (bytes.Length != Bytes)
        {
            throw new ModelException($"model file is damaged: {path} has {bytes.Length} bytes, expected {Bytes}; {Restore.Remedy}");
        }

        var found = Models.Sha256.Of(bytes);
        return found == Sha256
            ? bytes
            : throw new ModelException($"model file is damaged: {path} has SHA-256 {found}, expected {Sha256}; {Restore.Remedy}");
    }
}
