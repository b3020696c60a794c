using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>A clip as far as verdicts need to know it.</summary>
internal sealed record JudgedClip(string ClipKey, string ClipFile, string PipelineHash, string ModelHash, IReadOnlyList<int> Spells);

/// <summary>The clips, spells and flags of one run of a dataset; where no flags were made yet, the findings of the rules.</summary>
internal sealed class JudgedRun
{
    private readonly Dictionary<string, JudgedClip> _clips;
    private readonly Dictionary<(string Clip, int Spell, string Fault), (double? Probability, string? Classifier)> _told;

    private JudgedRun(Dictionary<string, JudgedClip> clips, Dictionary<(string, int, string), (double?, string?)> told) => (_clips, _told) = (clips, told);

    internal int Count => _clips.Count;

    internal static JudgedRun Read(Dataset dataset, string? pipelineHash)
    {
        using var query = new DatasetQuery(dataset.Folder);
        var run = DatasetRun.Choose(query, pipelineHash);
        var spells = query.Query($"SELECT clip_key, spell FROM spells WHERE {run.Where} ORDER BY spell").ToLookup(r => (string)r["clip_key"]!, r => (int)r["spell"]!);
        var clips = query.Query($"SELECT clip_key, clip_file FROM clips WHERE {run.Where} AND status = 'measured' ORDER BY clip_file, clip_key")
            .Select(r => new JudgedClip((string)r["clip_key"]!, (string)r["clip_file"]!, run.PipelineHash, run.ModelHash, [.. spells[(string)r["clip_key"]!]]));
        var said = query.Query($"SELECT 1 FROM flags WHERE {run.Where} LIMIT 1").Count > 0 ? "max(classifier_hash) AS classifier FROM flags" : "NULL AS classifier FROM findings";
        var told = query.Query($"SELECT clip_key, spell, fault, max(probability) AS probability, {said} WHERE {run.Where} GROUP BY ALL");
        return new(
            clips.GroupBy(c => c.ClipFile, StringComparer.OrdinalIgnoreCase).ToDictionary(g => g.Key, g => g.First(), StringComparer.OrdinalIgnoreCase),
            told.ToDictionary(r => ((string)r["clip_key"]!, (int)r["spell"]!, (string)r["fault"]!), r => ((double?)r["probability"], r["classifier"] as string)));
    }

    internal JudgedClip? Clip(string file) => _clips.GetValueOrDefault(file);

    /// <returns>Whether the run flags the fault in the spell, the probability where it gave one, and the fault model that was asked.</returns>
    internal (bool Flagged, double? Probability, string? Classifier) Told(string clipKey, int spell, Fault fault) =>
        (_told.TryGetValue((clipKey, spell, fault.ToTerm()), out var told), told.Probability, told.Classifier);
}
