namespace GaitSeat.Model;

/// <summary>What probing a clip told. Sizes are those of the upright, display-corrected picture.</summary>
/// <param name="Path">Full path of the file.</param>
/// <param name="DurationSeconds">Length of the video stream, s; an estimate where the container does not say.</param>
/// <param name="WidthPx">Display width after rotation and sample aspect.</param>
/// <param name="HeightPx">Display height after rotation and sample aspect.</param>
/// <param name="AverageFrameRateHz">Frames over duration; for variable frame rate the mean.</param>
/// <param name="Codec">Codec name as FFmpeg writes it, such as <c>h264</c>.</param>
/// <param name="PixelFormat">Pixel format as FFmpeg writes it, such as <c>yuv420p10le</c>.</param>
/// <param name="RotationDegrees">Display rotation, clockwise: 0, 90, 180 or 270.</param>
/// <param name="Interlaced">Whether the stream says it is interlaced.</param>
/// <param name="Stream">Which stream of the file the pictures are, and its clock.</param>
public sealed record ClipInfo(
    string Path,
    double DurationSeconds,
    int WidthPx,
    int HeightPx,
    double AverageFrameRateHz,
    string Codec,
    string PixelFormat,
    int RotationDegrees,
    bool Interlaced,
    StreamInfo Stream);

/// <summary>The video stream of a clip: what decoding needs to know beside the picture.</summary>
/// <param name="Container">FFmpeg's name of the container.</param>
/// <param name="Index">Stream number within the file.</param>
/// <param name="TickNumerator">Seconds in a tick of the stream's clock: the numerator.</param>
/// <param name="TickDenominator">And the denominator.</param>
/// <param name="OriginTicks">Presentation time of the first frame, ticks.</param>
/// <param name="Transfer">Colour transfer, such as <c>smpte2084</c>; empty where not said.</param>
/// <param name="Colours">How the coded brightness and colour differences are meant.</param>
public sealed record StreamInfo(string Container, int Index, long TickNumerator, long TickDenominator, long OriginTicks, string Transfer, ColourMatrix Colours)
{
    /// <summary>High dynamic range: perceptual quantiser or hybrid log-gamma (ITU-R BT.2100).</summary>
    public bool IsHdr => Transfer is "smpte2084" or "arib-std-b67";

    public double ToSeconds(long ticks) => (double)((decimal)ticks * TickNumerator / TickDenominator);
}

/// <summary>A clip, frame or stride that was left out, and why.</summary>
/// <param name="Scope">What was left out.</param>
/// <param name="Reason">A stable snake_case word that can be counted, such as <c>no_video_stream</c> or <c>hole_in_points</c>.</param>
/// <param name="Count">How many of them (1 for a clip).</param>
/// <param name="Detail">A sentence for people: what was found, what is allowed.</param>
/// <param name="StartSeconds">Where in the clip, s; null where it is not one place.</param>
public sealed record LeftOut(LeftOutScope Scope, string Reason, int Count, string Detail, double? StartSeconds = null);

public enum LeftOutScope
{
    Clip,
    Frame,
    Stride,
}

/// <summary>A clip that cannot be measured. Carries the reason to the report; the rest of the batch goes on.</summary>
public sealed class ClipSetAsideException(string reason, string detail, Exception? inner = null) : Exception(detail, inner)
{
    /// <summary>A stable snake_case word, see <see cref="LeftOut.Reason"/>.</summary>
    public string Reason { get; } = reason;
}
