using GaitSeat.Store;

namespace GaitSeat.Review.Clips;

/// <summary>What the screen needs to know of a clip. Sizes are those of the upright picture; NaN and 0 where probing told nothing.</summary>
public sealed record ClipFacts(string ClipKey, string ClipFile, int WidthPx, int HeightPx, double FrameRateHz)
{
    /// <summary>The measured clips of a run, by key.</summary>
    /// <exception cref="DatasetException">The dataset cannot be read.</exception>
    public static IReadOnlyDictionary<string, ClipFacts> Read(DatasetQuery query, DatasetRun run)
    {
        ArgumentNullException.ThrowIfNull(query);
        ArgumentNullException.ThrowIfNull(run);
        return query.Query("SELECT clip_key, clip_file, width_px, height_px, frame_rate_hz, pipeline_hash, model_hash FROM clips WHERE status = 'measured'")
            .Where(r => (string)r["pipeline_hash"]! == run.PipelineHash && (string)r["model_hash"]! == run.ModelHash)
            .Select(r => new ClipFacts((string)r["clip_key"]!, (string)r["clip_file"]!, (int?)r["width_px"] ?? 0, (int?)r["height_px"] ?? 0, (double?)r["frame_rate_hz"] ?? double.NaN))
            .ToDictionary(c => c.ClipKey, StringComparer.Ordinal);
    }
}
