using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// An erasure that was begun: written before anything is taken away and deleted when a search has found nothing left, so that one that was killed half-way is finished by the next.
/// </summary>
/// <param name="Rider">Pseudonym; null where only clips are meant.</param>
/// <param name="ClipFiles">File names that no other clip has.</param>
/// <param name="Originals">Full paths of source clips to delete as well; empty where they stay.</param>
/// <param name="ClipFolder">Where the sheet and the consent file lie whose rows go too; null where they stay.</param>
public sealed record ForgetOrder(string? Rider, IReadOnlyList<string> ClipKeys, IReadOnlyList<string> ClipFiles, IReadOnlyList<string> Originals, string? ClipFolder)
{
    public const string FileName = "forgetting.json";

    [System.Text.Json.Serialization.JsonIgnore]
    public Traces Traces => field ??= new(Rider, ClipKeys, ClipFiles);

    /// <summary>The one that was begun and not finished; null where there is none.</summary>
    /// <exception cref="DatasetException">The file is there and cannot be read.</exception>
    public static ForgetOrder? Unfinished(string datasetFolder)
    {
        var path = Path.Combine(datasetFolder, FileName);
        if (!File.Exists(path)) return null;
        try
        {
            return JsonSerializer.Deserialize<ForgetOrder>(File.ReadAllText(path)) ?? throw new JsonException("it is empty");
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"'{path}', the note of an erasure that was not finished, cannot be read ({e.Message}). Delete it and forget the rider again.", e);
        }
    }

    /// <summary>Notes that the erasure begins.</summary>
    public void Begin(string datasetFolder) => AtomicFile.WriteText(Path.Combine(datasetFolder, FileName), JsonSerializer.Serialize(this));

    /// <summary>Notes that nothing is left.</summary>
    public static void End(string datasetFolder) => File.Delete(Path.Combine(datasetFolder, FileName));
}
