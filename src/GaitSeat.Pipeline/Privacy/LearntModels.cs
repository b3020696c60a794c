using System.Text;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Privacy;

/// <summary>
/// Fault models that learnt from a clip: what they said of it while it was held out stands beside them. What a model learnt cannot be taken out of it, so it goes as a whole;
/// the fault is left to its rule until <c>train</c> learns anew from what is left.
/// </summary>
public static class LearntModels
{
    private const string Folder = "fault-models", InUse = "in-use.json";

    /// <summary>Takes away the models that learnt from clips they may not learn from any more.</summary>
    /// <returns>Folders relative to the dataset, with slashes.</returns>
    public static IReadOnlyList<string> Drop(string datasetFolder, IReadOnlyCollection<string> clipKeys)
    {
        ArgumentNullException.ThrowIfNull(clipKeys);
        if (clipKeys.Count == 0) return [];
        var models = Find(datasetFolder, new(null, clipKeys, []));
        Delete(datasetFolder, models);
        return models;
    }

    /// <returns>Folders relative to the dataset, with slashes.</returns>
    internal static IReadOnlyList<string> Find(string datasetFolder, Traces traces)
    {
        var root = Path.Combine(datasetFolder, Folder);
        return Directory.Exists(root)
            ? [.. Directory.EnumerateDirectories(root).SelectMany(Directory.EnumerateDirectories).Where(m => Tells(m, traces)).Select(m => Path.GetRelativePath(datasetFolder, m).Replace('\\', '/')).Order(StringComparer.Ordinal)]
            : [];
    }

    /// <summary>The note of what is in use goes first: a model without its note is only not used.</summary>
    internal static void Delete(string datasetFolder, IReadOnlyList<string> models)
    {
        foreach (var model in models.Select(m => Path.Combine(datasetFolder, m)).Where(Directory.Exists))
        {
            var note = Path.Combine(Path.GetDirectoryName(model)!, InUse);
            if (File.Exists(note) && File.ReadAllText(note).Contains(Path.GetFileName(model), StringComparison.Ordinal)) File.Delete(note);
            Directory.Delete(model, recursive: true);
        }
    }

    private static bool Tells(string model, Traces traces) =>
        Directory.EnumerateFiles(model, "*", SearchOption.AllDirectories).Any(f => traces.In(Encoding.Latin1.GetString(File.ReadAllBytes(f))));
}
