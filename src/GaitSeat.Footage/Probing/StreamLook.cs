namespace GaitSeat.Footage;

/// <summary>What ffprobe told of a clip's video stream and its first frames.</summary>
/// <param name="Format">FFmpeg's name of the container.</param>
/// <param name="Index">Stream number within the file.</param>
/// <param name="WidthPx">Width of the coded picture.</param>
/// <param name="HeightPx">Height of the coded picture.</param>
/// <param name="SampleAspect">Width of a pixel over its height.</param>
/// <param name="RotationDegrees">Display rotation, clockwise, 0, 90, 180 or 270.</param>
/// <param name="TickNumerator">Seconds in a tick of the stream's clock: the numerator.</param>
/// <param name="TickDenominator">And the denominator.</param>
/// <param name="OriginTicks">Presentation time of the first frame, ticks.</param>
/// <param name="FramesSeen">Decoded frames among the first packets.</param>
/// <param name="DurationSeconds">As the container says; null if it does not.</param>
/// <param name="RateHz">Mean frame rate as the container says; null if it does not.</param>
/// <param name="Transfer">Colour transfer, such as <c>smpte2084</c>; empty where not said.</param>
internal sealed record StreamLook(
    string Format,
    int Index,
    string Codec,
    string CodecTag,
    string PixelFormat,
    int WidthPx,
    int HeightPx,
    double SampleAspect,
    int RotationDegrees,
    bool Interlaced,
    bool Encrypted,
    long TickNumerator,
    long TickDenominator,
    long OriginTicks,
    int FramesSeen,
    double? DurationSeconds,
    double? RateHz,
    string Transfer)
{
    /// <summary>High dynamic range: perceptual quantiser or hybrid log-gamma (ITU-R BT.2100).</summary>
    public bool IsHdr => Transfer is "smpte2084" or "arib-std-b67";

    public double ToSeconds(long ticks) => (double)((decimal)ticks * TickNumerator / TickDenominator);

    /// <summary>Size of the upright picture with square pixels: the width carries the sample aspect, then the sides change places for a quarter turn.</summary>
    public (int WidthPx, int HeightPx) DisplaySize()
    {
        var width = Math.Max(1, (int)Math.Round(WidthPx * SampleAspect));
        return RotationDegrees % 180 == 0 ? (width, HeightPx) : (HeightPx, width);
    }
}
