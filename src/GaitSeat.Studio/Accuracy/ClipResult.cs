using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>What the pipeline made of one clip.</summary>
/// <param name="AnalysisWidthPx">Width of the analysed picture, px.</param>
/// <param name="FramesFollowed">Frames in which a rider was looked at.</param>
/// <param name="LeftOut">Everything left out, by reason.</param>
/// <param name="SetAside">Why the whole clip was set aside; null where it was measured.</param>
public sealed record ClipResult(ClipMotion Motion, int AnalysisWidthPx, int FramesFollowed, IReadOnlyList<LeftOut> LeftOut, string? SetAside = null)
{
    public static ClipResult Without(string reason, int widthPx) => new(ClipMotion.Nothing, widthPx, 0, [], reason);
}
