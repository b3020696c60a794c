using GaitSeat.Model;

namespace GaitSeat.Vision.Models;

/// <summary>ONNX files in a folder, each with its SHA-256 beside it. A file appears whole or not at all.</summary>
internal sealed class OnnxCache(string folder)
{
    /// <summary>Characters of the key in a file name: 48 bits, far more than a handful of models needs.</summary>
    private const int KeyLength = 12;

    /// <summary>The file kept under a key, or null if there is none or it is damaged.</summary>
    public ModelFile? Find(string name, string key)
    {
        var path = PathOf(name, key);
        if (!File.Exists(path) || !File.Exists(DigestOf(path))) return null;
        var found = Sha256.OfFile(path);
        return found == File.ReadAllText(DigestOf(path)).Trim() ? new ModelFile(name, path, found) : null;
    }

    /// <exception cref="ModelException">The folder cannot be written to.</exception>
    public ModelFile Put(string name, string key, byte[] onnx)
    {
        var path = PathOf(name, key);
        var digest = Sha256.Of(onnx);
        try
        {
            // Several workers may make the same file at once: the last rename wins, the bytes are the same.
            AtomicFile.WriteBytes(path, file => file.Write(onnx));
            AtomicFile.WriteText(DigestOf(path), digest + "\n");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ModelException($"cannot write to the model cache {folder}: {e.Message}; set GAITSEAT_CACHE to a folder that can be written", e);
        }

        return new ModelFile(name, path, digest);
    }

    private string PathOf(string name, string key) => Path.Combine(folder, $"{name}-{key[..KeyLength]}.onnx");

    private static string DigestOf(string path) => path + ".sha256";
}
