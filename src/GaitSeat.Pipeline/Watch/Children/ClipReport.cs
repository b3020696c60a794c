using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Season;

namespace GaitSeat.Pipeline.Watch.Children;

/// <summary>What became of a clip, short enough to pass from the clip's process to the worker.</summary>
/// <param name="Flags">One line for each finding, most probable first.</param>
public sealed record ClipReport(ClipEnd End, string? Reason, string? Detail, int Frames, int Strides, IReadOnlyList<string> Flags)
{
    public static ClipReport Of(ClipOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        var flags = outcome.Findings.OrderByDescending(f => f.ProbabilityPastThreshold).Select(f => f.Summary);
        return new(outcome.End, outcome.Reason, outcome.Detail, outcome.Frames, outcome.Strides.Count, [.. flags]);
    }
}

/// <summary>Does one clip, wherever.</summary>
public interface IClipWorker
{
    /// <param name="clip">The clip.</param>
    /// <param name="session">Its row of the sheet; null where there is none.</param>
    /// <param name="progress">Told the number of frames followed so far.</param>
    /// <param name="ct">Stops between frames.</param>
    /// <exception cref="Policies.ClipCrashException">It came down.</exception>
    /// <exception cref="Policies.ClipKilledException">It, or a tool it uses, was ended from outside.</exception>
    /// <exception cref="Policies.ClipElsewhereException">Another worker has the clip in hand.</exception>
    /// <exception cref="IOException">Something could not be read or written.</exception>
    Task<ClipReport> DoAsync(KeyedClip clip, Session? session, IProgress<int> progress, CancellationToken ct);
}
