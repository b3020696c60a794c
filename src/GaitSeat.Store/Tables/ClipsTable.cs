using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Store;

internal sealed record ClipOnly(ClipRecord Clip) : IClipRow;

/// <summary>One row a clip. Written last: a clip is done when its file here is there.</summary>
internal static class ClipsTable
{
    internal const string Name = "clips";
    private const string NotProbed = "Probing the file told nothing.";
    private const string NotInSheet = "Not in the session sheet.";
    private const string IsMeasured = "The clip was measured.";

    internal static Table Table { get; } = new Table<ClipOnly>(
        Name,
        "One row a clip: what it is and what became of it.",
        [
            .. SharedColumns.Clip<ClipOnly>(),
            .. SharedColumns.Session<ClipOnly>(),
            .. Lengths(),
            .. Outcome(),
            .. Probed(),
            .. Counts(),
            .. SharedColumns.Provenance<ClipOnly>(),
        ],
        clip => [new(clip)]);

    /// <summary>What the sheet says beyond the columns that stand in the other tables.</summary>
    private static IEnumerable<Column<ClipOnly>> Lengths() =>
    [
        Columns.Real<ClipOnly>("rider_stature_cm", "cm", "Bare height of the rider.", r => r.Clip.Session?.Lengths.StatureCm, NotInSheet),
        Columns.Real<ClipOnly>("thigh_cm", "cm", "Hip joint to knee joint.", r => r.Clip.Session?.Lengths.ThighCm, NotInSheet),
        Columns.Real<ClipOnly>("lower_leg_cm", "cm", "Knee joint to ankle joint.", r => r.Clip.Session?.Lengths.LowerLegCm, NotInSheet),
        Columns.Text<ClipOnly>("note", "Note of the session sheet.", r => r.Clip.Session?.Note, NotInSheet),
        Columns.Text<ClipOnly>("extra", "Columns of the sheet that are not known here, as a JSON object, names in order.", r => ExtraOf(r.Clip.Session), "The sheet has none."),
        Columns.Text<ClipOnly>("session_hash", "SHA-256 over the clip's row of the sheet; tells whether the row was changed since.", r => SessionHash.Of(r.Clip.Session), "The clip has no row in the sheet."),
    ];

    private static IEnumerable<Column<ClipOnly>> Outcome() =>
    [
        Columns.Text<ClipOnly>("status", "`measured` or `set_aside`.", r => r.Clip.Status.ToTerm()),
        Columns.Text<ClipOnly>("reason", "Why the clip was set aside, a word that can be counted.", r => r.Clip.Reason, IsMeasured),
        Columns.Text<ClipOnly>("detail", "Why the clip was set aside, a sentence.", r => r.Clip.Detail, IsMeasured),
    ];

    private static IEnumerable<Column<ClipOnly>> Probed() =>
    [
        Columns.Real<ClipOnly>("duration_s", "s", "Length of the video.", r => r.Clip.Info?.DurationSeconds, NotProbed),
        Columns.Whole<ClipOnly>("width_px", "px", "Width of the upright picture.", r => r.Clip.Info?.WidthPx, NotProbed),
        Columns.Whole<ClipOnly>("height_px", "px", "Height of the upright picture.", r => r.Clip.Info?.HeightPx, NotProbed),
        Columns.Real<ClipOnly>("frame_rate_hz", "Hz", "Mean frame rate.", r => r.Clip.Info?.AverageFrameRateHz, NotProbed),
        Columns.Text<ClipOnly>("codec", "Codec as FFmpeg names it.", r => r.Clip.Info?.Codec, NotProbed),
    ];

    private static IEnumerable<Column<ClipOnly>> Counts() =>
    [
        Columns.Whole<ClipOnly>("frames_analysed", "frames", "Frames looked at, good or not.", r => r.Clip.FramesAnalysed),
        Columns.Whole<ClipOnly>("frames_left_out", "frames", "Frames left out; their reasons stand in `skipped`.", r => FramesLeftOut(r.Clip)),
        Columns.Whole<ClipOnly>("strides", "strides", "Strides measured.", r => r.Clip.Motion?.Strides.Count ?? 0),
        Columns.Whole<ClipOnly>("flagged", "findings", "Findings on the clip; more than 0: a coach should look.", r => r.Clip.Findings.Count),
    ];

    private static int FramesLeftOut(ClipRecord clip) =>
        clip.LeftOut.Where(l => l.Scope == LeftOutScope.Frame).Sum(l => l.Count);

    private static string? ExtraOf(Session? session) =>
        session is { Extra.Count: > 0 } ? JsonSerializer.Serialize(new SortedDictionary<string, string>(session.Extra.ToDictionary(), StringComparer.Ordinal)) : null;
}
