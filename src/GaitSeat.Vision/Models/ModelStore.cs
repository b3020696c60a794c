using System.Security.Cryptography;
using System.Text;
using GaitSeat.Vision.Import;

namespace GaitSeat.Vision.Models;

/// <summary>
/// The models as ONNX files in a cache outside git, made from restored weights when first asked for.
/// </summary>
/// <param name="weightsFolder">Folder <c>models</c> of the restored npm package.</param>
/// <param name="cacheFolder">Where ONNX files are kept; made if it is not there.</param>
public sealed class ModelStore(string weightsFolder, string cacheFolder)
{
    /// <summary><c>GAITSEAT_CACHE</c> if set, else a folder of the user's own.</summary>
    public static string DefaultCacheFolder
    {
        get
        {
            if (Environment.GetEnvironmentVariable("GAITSEAT_CACHE") is { Length: > 0 } set) return Path.GetFullPath(set);
            var own = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData);
            return Path.Combine(own.Length > 0 ? own : Path.GetTempPath(), "gaitseat", "models");
        }
    }

    /// <summary>The model's ONNX file, imported if the cache lacks it or holds a damaged one.</summary>
    /// <exception cref="ModelException">Weights are missing or damaged, or the graph cannot be imported.</exception>
    public ModelFile Ensure(ModelSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var topologyPath = Path.Combine(weightsFolder, source.Name + ".json");
        var topology = ReadChecked(topologyPath, source.TopologySha256);
        var weights = ReadChecked(Path.Combine(weightsFolder, source.Name + ".bin"), source.WeightsSha256);
        var path = Path.Combine(cacheFolder, $"{source.Name}-{KeyOf(topology, weights)[..12]}.onnx");
        var digestPath = path + ".sha256";
        if (File.Exists(path) && File.Exists(digestPath))
        {
            var sha = HashOfFile(path);
            if (sha == File.ReadAllText(digestPath).Trim()) return new ModelFile(source.Name, path, sha);
        }

        var onnx = GraphImporter.Import(
            TfjsGraph.Read(topologyPath), source.InputNode, ModelSource.InputName, source.InputShape, source.Outputs);
        var made = Convert.ToHexStringLower(SHA256.HashData(onnx));
        Directory.CreateDirectory(cacheFolder);
        WriteWhole(path, onnx);
        WriteWhole(digestPath, Encoding.ASCII.GetBytes(made + "\n"));
        return new ModelFile(source.Name, path, made);
    }

    /// <summary>The model hash of a run's provenance: SHA-256 over names and hashes, in the order of the names, lower-case hex.</summary>
    public static string HashOf(IEnumerable<ModelFile> models)
    {
        ArgumentNullException.ThrowIfNull(models);
        var lines = models.OrderBy(m => m.Name, StringComparer.Ordinal).Select(m => $"{m.Name} {m.Sha256}\n");
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Concat(lines))));
    }

    /// <summary>Runs a fixed picture through a model of the catalogue and compares with what the weights' own runtime made of it.</summary>
    /// <exception cref="ArgumentException">There are no reference values for this model.</exception>
    /// <exception cref="ModelException">The file cannot be loaded.</exception>
    public static ModelVerification Verify(ModelFile model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return ModelVerifier.Verify(model);
    }

    private static string KeyOf(byte[] topology, byte[] weights)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(topology);
        hash.AppendData(weights);
        hash.AppendData(Encoding.ASCII.GetBytes($"importer {GraphImporter.Version}"));
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static byte[] ReadChecked(string path, string sha256)
    {
        if (!File.Exists(path)) throw new ModelException($"model file not found: {path}; {Restore.Remedy}");
        var bytes = File.ReadAllBytes(path);
        var found = Convert.ToHexStringLower(SHA256.HashData(bytes));
        return found == sha256
            ? bytes
            : throw new ModelException($"model file is damaged: {path} has SHA-256 {found}, expected {sha256}; {Restore.Remedy}");
    }

    private static string HashOfFile(string path)
    {
        using var stream = File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }

    private static void WriteWhole(string path, byte[] bytes)
    {
        var beside = path + "." + Path.GetRandomFileName();
        File.WriteAllBytes(beside, bytes);
        File.Move(beside, path, overwrite: true);
    }
}
