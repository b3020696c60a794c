namespace GaitSeat.Store;

/// <summary>What a person may mark on a still: the rider's near side, and what tells where saddle and stirrup are. Terms as in the tables, by <c>ToTerm</c>.</summary>
public enum HandPoint
{
    Shoulder,
    Hip,
    Knee,
    Ankle,
    Heel,
    Toe,

    /// <summary>The ball of the foot, on the stirrup iron's tread.</summary>
    Tread,

    /// <summary>The bar that the stirrup leather hangs from.</summary>
    StirrupBar,

    /// <summary>A point of the horse's trunk under the saddle: where the girth leaves the flap.</summary>
    Girth,
}

/// <summary>One point that a person marked on one frame, or took back.</summary>
/// <param name="TimeSeconds">Presentation time of the frame, from the start of the video.</param>
/// <param name="WidthPx">Of the upright picture that <paramref name="XPx"/> and <paramref name="YPx"/> are in.</param>
/// <param name="XPx">NaN, with <paramref name="YPx"/>, where an earlier mark of the judge is taken back.</param>
/// <param name="SawTool">Whether the marker began from the tool's points; such marks lean towards them.</param>
/// <param name="Judge">Pseudonym of who marked.</param>
/// <param name="ToolXPx">The tool's point in that frame, in the same picture; NaN where it had none.</param>
public sealed record HandMark(
    string ClipKey,
    string ClipFile,
    double TimeSeconds,
    int WidthPx,
    int HeightPx,
    HandPoint Point,
    double XPx,
    double YPx,
    bool SawTool,
    string Judge,
    DateTimeOffset MarkedAt,
    double ToolXPx,
    double ToolYPx,
    string PipelineHash,
    string ModelHash)
{
    public bool IsTakenBack => double.IsNaN(XPx) || double.IsNaN(YPx);

    /// <summary>The marks that stand: of one judge's marks on one point of one frame the latest, unless it takes it back.</summary>
    public static IReadOnlyList<HandMark> Standing(IEnumerable<HandMark> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        return
        [
            .. marks.GroupBy(m => (m.ClipKey, m.Judge, m.Point, Frame: Math.Round(m.TimeSeconds, 3))).Select(g => g.MaxBy(m => m.MarkedAt)!).Where(m => !m.IsTakenBack)
                .OrderBy(m => m.ClipKey, StringComparer.Ordinal).ThenBy(m => m.TimeSeconds).ThenBy(m => m.Judge, StringComparer.Ordinal).ThenBy(m => m.Point),
        ];
    }
}
