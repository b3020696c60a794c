using GaitSeat.Pipeline.Clips;

namespace GaitSeat.Pipeline.Season;

/// <summary>What a run did. Everything left out is counted by reason.</summary>
/// <param name="Clips">One outcome for each clip of the folder.</param>
/// <param name="Elapsed">Wall clock of the run.</param>
public sealed record SeasonSummary(IReadOnlyList<ClipOutcome> Clips, TimeSpan Elapsed, string DatasetFolder, string PipelineHash, string ModelHash)
{
    public int Count(ClipEnd end) => Clips.Count(c => c.End == end);

    public int Frames => Clips.Sum(c => c.Frames);

    public int Strides => Clips.Sum(c => c.Strides.Count);

    /// <summary>Frames followed per second of wall clock, everything included; 0 when nothing was followed.</summary>
    public double FramesPerSecond => Elapsed > TimeSpan.Zero ? Frames / Elapsed.TotalSeconds : 0;

    /// <summary>The clips with findings, most probable first.</summary>
    public IEnumerable<ClipOutcome> Flagged => Clips
        .Where(c => c.Findings.Count > 0)
        .OrderByDescending(c => c.Findings.Max(f => f.ProbabilityPastThreshold));

    /// <summary>What was left out, by scope and reason.</summary>
    public IReadOnlyDictionary<string, int> LeftOutByReason => Clips
        .SelectMany(c => c.LeftOut)
        .GroupBy(l => $"{l.Scope}: {l.Reason}".ToLowerInvariant())
        .OrderBy(g => g.Key, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.Sum(l => l.Count));
}
