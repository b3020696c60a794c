using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>A clip as far as verdicts need to know it.</summary>
internal sealed record JudgedClip(string ClipKey, string ClipFile, string PipelineHash, string ModelHash, IReadOnlyList<int> Spells);

/// <summary>The clips, spells and findings of one run of a dataset.</summary>
internal sealed class JudgedRun
{
    private readonly Dictionary<string, JudgedClip> _clips;
    private readonly Dictionary<(string Clip, int Spell, string Fault), double?> _told;

    private JudgedRun(Dictionary<string, JudgedClip> clips, Dictionary<(string, int, string), double?> told) => (_clips, _told) = (clips, told);

    internal int Count => _clips.Count;

    internal static JudgedRun Read(Dataset dataset, string? pipelineHash)
    {
        using var query = new DatasetQuery(dataset.Folder);
        var run = DatasetRun.Choose(query, pipelineHash);
        var spells = query.Query($"SELECT clip_key, spell FROM spells WHERE {run.Where} ORDER BY spell").ToLookup(r => (string)r["clip_key"]!, r => (int)r["spell"]!);
        var clips = query.Query($"SELECT clip_key, clip_file FROM clips WHERE {run.Where} AND status = 'measured' ORDER BY clip_file, clip_key")
            .Select(r => new JudgedClip((string)r["clip_key"]!, (string)r["clip_file"]!, run.PipelineHash, run.ModelHash, [.. spells[(string)r["clip_key"]!]]));
        var told = query.Query($"SELECT clip_key, spell, fault, max(probability) AS probability FROM findings WHERE {run.Where} GROUP BY ALL");
        return new(
            clips.GroupBy(c => c.ClipFile, StringComparer.OrdinalIgnoreCase).ToDictionary(g => g.Key, g => g.First(), StringComparer.OrdinalIgnoreCase),
            told.ToDictionary(r => ((string)r["clip_key"]!, (int)r["spell"]!, (string)r["fault"]!), r => (double?)r["probability"]));
    }

    internal JudgedClip? Clip(string file) => _clips.GetValueOrDefault(file);

    /// <returns>Whether the run has a finding of the fault in the spell, and its probability where it gave one.</returns>
    internal (bool Flagged, double? Probability) Told(string clipKey, int spell, Fault fault) =>
        (_told.TryGetValue((clipKey, spell, fault.ToTerm()), out var probability), probability);
}
