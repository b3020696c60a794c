using System.Globalization;
using System.Text;
using GaitSeat.Vision.Import;

namespace GaitSeat.Vision.Models;

/// <summary>The models as ONNX files in a cache outside git, made from restored weights when first asked for.</summary>
/// <param name="weightsFolder">Folder <c>models</c> of the restored npm package.</param>
/// <param name="cacheFolder">Where ONNX files are kept; made if it is not there.</param>
public sealed class ModelStore(string weightsFolder, string cacheFolder)
{
    private readonly OnnxCache _cache = new(cacheFolder);

    /// <summary><c>GAITSEAT_CACHE</c> if set, else a folder of the user's own.</summary>
    public static string DefaultCacheFolder
    {
        get
        {
            if (Environment.GetEnvironmentVariable("GAITSEAT_CACHE") is { Length: > 0 } set) return Path.GetFullPath(set);
            var own = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
            return Path.Combine(own.Length > 0 ? own : Path.GetTempPath(), "gaitseat", "models");
        }
    }

    /// <summary>The model's ONNX file, imported if the cache lacks it or holds a damaged one.</summary>
    /// <exception cref="ModelException">Weights are missing or damaged, the graph cannot be imported, or the cache cannot be written.</exception>
    public ModelFile Ensure(ModelSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var topologyPath = Path.Combine(weightsFolder, source.Name + ".json");
        var topology = source.Topology.Read(topologyPath);
        var weights = source.Weights.Read(Path.Combine(weightsFolder, source.Name + ".bin"));
        var key = Sha256.Of(topology, weights, Encoding.UTF8.GetBytes(RecipeOf(source)));
        return _cache.Find(source.Name, key) ?? _cache.Put(source.Name, key, Import(source, topologyPath));
    }

    /// <summary>The model hash of a run's provenance: SHA-256 over names and hashes, whatever their order, lower-case hex.</summary>
    public static string HashOf(IEnumerable<ModelFile> models)
    {
        ArgumentNullException.ThrowIfNull(models);
        var lines = models.Select(m => $"{m.Name} {m.Sha256}\n").Order(StringComparer.Ordinal);
        return Sha256.Of(Encoding.UTF8.GetBytes(string.Concat(lines)));
    }

    /// <summary>Runs a fixed picture through a model of the catalogue and compares with what the weights' own runtime made of it.</summary>
    /// <param name="device">What to run on if it is there.</param>
    /// <exception cref="ArgumentException">There are no reference values for this model.</exception>
    /// <exception cref="ModelException">The file cannot be loaded.</exception>
    public static ModelVerification Verify(ModelFile model, InferenceDevice device = InferenceDevice.Cpu)
    {
        ArgumentNullException.ThrowIfNull(model);
        return ModelVerifier.Verify(model, device);
    }

    /// <summary>What besides the published bytes decides the bytes of the ONNX file.</summary>
    private static string RecipeOf(ModelSource source) => string.Create(
        CultureInfo.InvariantCulture,
        $"importer {GraphImporter.Version}; {source.InputNode} [{string.Join(',', source.InputShape)}] to {string.Join(", ", source.Outputs)}");

    private static byte[] Import(ModelSource source, string topologyPath) =>
        GraphImporter.Import(TfjsGraph.Read(topologyPath), source.InputNode, ModelSource.InputName, source.InputShape, source.Outputs);
}
