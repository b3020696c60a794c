namespace GaitSeat.Store;

/// <summary>One row of the clips table, read back for a summary.</summary>
/// <param name="DurationSeconds">Length of the video, s; null where probing failed.</param>
/// <param name="Strides">Strides measured.</param>
/// <param name="Flagged">Findings on the clip.</param>
public sealed record ClipRow(
    string ClipKey,
    string ClipFile,
    string PipelineHash,
    string ModelHash,
    ClipStatus Status,
    string? Reason,
    string? Detail,
    DateOnly? SessionDate,
    string? Rider,
    string? Horse,
    double? DurationSeconds,
    int FramesAnalysed,
    int FramesLeftOut,
    int Strides,
    int Flagged);
