using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>One row a point marked by hand. Files are only ever added; another place for the same point is a later row.</summary>
internal static class MarksTable
{
    internal const string Name = "marks";
    internal const string TimeFormat = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";
    private const string TakenBack = "The judge's mark on that point of that frame is taken back.";

    internal static Table<HandMark> Table { get; } = new(
        Name,
        "One row a point that a person marked on a still frame, beside the tool's. Rows are only added; of one judge's rows on the same point of the same frame the latest counts.",
        [
            Columns.Text<HandMark>("clip_key", "SHA-256 of the clip's bytes, lower-case hex.", m => m.ClipKey),
            Columns.Text<HandMark>("clip_file", "File name of the clip when it was marked.", m => m.ClipFile),
            Columns.Real<HandMark>("time_s", "s", "Presentation time of the frame, from the start of the video.", m => m.TimeSeconds),
            Columns.Whole<HandMark>("width_px", "px", "Width of the upright picture the mark is in.", m => m.WidthPx),
            Columns.Whole<HandMark>("height_px", "px", "Height of that picture.", m => m.HeightPx),
            Columns.Text<HandMark>("point", "What was marked: " + string.Join(", ", Enum.GetValues<HandPoint>().Select(p => $"`{p.ToTerm()}`")) + ".", m => m.Point.ToTerm()),
            Columns.Real<HandMark>("x_px", "px", "To the right; pixel 0 covers 0..1.", m => m.XPx, TakenBack),
            Columns.Real<HandMark>("y_px", "px", "Downwards.", m => m.YPx, TakenBack),
            Columns.Text<HandMark>("began", "`tool` where the marker began from the tool's points, which such marks lean towards; `blind` where they were not shown.", m => m.SawTool ? "tool" : "blind"),
            Columns.Text<HandMark>("judge", "Pseudonym of who marked.", m => m.Judge),
            Columns.Text<HandMark>("marked_at", "When, UTC, ISO 8601 to the millisecond; sorts as text.", m => m.MarkedAt.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture)),
            Columns.Real<HandMark>("tool_x_px", "px", "The tool's point in that frame, in the same picture.", m => m.ToolXPx, "The tool had none."),
            Columns.Real<HandMark>("tool_y_px", "px", "Downwards.", m => m.ToolYPx, "The tool had none."),
            Columns.Text<HandMark>("pipeline_hash", "SHA-256 over every setting of the run whose points those are.", m => m.PipelineHash),
            Columns.Text<HandMark>("model_hash", "SHA-256 over names and hashes of its body-point models.", m => m.ModelHash),
            Columns.Whole<HandMark>("schema_version", "", "Version of the layout of the tables.", _ => Provenance.CurrentSchemaVersion),
        ],
        _ => []);
}
