using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>One compacted file and what it was made from.</summary>
/// <param name="Path">Relative to the compact folder, with slashes.</param>
/// <param name="Bytes">Length of the file; another length means it was cut or replaced.</param>
/// <param name="Fingerprint">Hash over name, length and time of the sources, see <see cref="SourceFile.Fingerprint"/>.</param>
/// <param name="Sources">Names of the clips' files.</param>
internal sealed record CompactPart(string Path, string? Season, string? Rider, long Rows, long Bytes, string Fingerprint, IReadOnlyList<string> Sources);

/// <summary>What the compacted files of one table hold: kept beside them in <c>_manifest.json</c>, a name that Hive, Spark and Arrow pass over.</summary>
/// <param name="Layout">Version of this file's own layout.</param>
/// <param name="SchemaVersion">Version of the tables' layout the parts are written in.</param>
/// <param name="FolderTicks">Time of the table's folder when its files were listed, where that tells any later change; else null.</param>
internal sealed record CompactManifest(int Layout, int SchemaVersion, long? FolderTicks, IReadOnlyList<CompactPart> Parts)
{
    internal const int CurrentLayout = 1;

    internal static string PathOf(string datasetFolder, string table) => Path.Combine(PartFolder.Of(datasetFolder), table, "_manifest.json");

    /// <returns>Null where there is none, or none that this program understands: the clips' files are then read, which hold everything.</returns>
    internal static CompactManifest? Read(string datasetFolder, string table)
    {
        var path = PathOf(datasetFolder, table);
        if (!File.Exists(path)) return null;
        try
        {
            using var stream = File.OpenRead(path);
            return JsonSerializer.Deserialize<CompactManifest>(stream) is { Layout: CurrentLayout } manifest ? manifest : null;
        }
        catch (Exception e) when (e is JsonException or IOException)
        {
            return null;
        }
    }

    internal void Write(string datasetFolder, string table) => AtomicFile.WriteText(PathOf(datasetFolder, table), JsonSerializer.Serialize(this));
}
