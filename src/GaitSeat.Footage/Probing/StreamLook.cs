using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>What ffprobe told of a clip's video stream and its first frames.</summary>
/// <param name="Stream">Which stream it is, and its clock.</param>
/// <param name="WidthPx">Width of the coded picture.</param>
/// <param name="HeightPx">Height of the coded picture.</param>
/// <param name="SampleAspect">Width of a pixel over its height.</param>
/// <param name="RotationDegrees">Display rotation, clockwise, 0, 90, 180 or 270.</param>
/// <param name="FramesSeen">Decoded frames among the first packets.</param>
/// <param name="DurationSeconds">As the container says; null if it does not.</param>
/// <param name="RateHz">Mean frame rate as the container says; null if it does not.</param>
internal sealed record StreamLook(
    StreamInfo Stream,
    string Codec,
    string CodecTag,
    string PixelFormat,
    int WidthPx,
    int HeightPx,
    double SampleAspect,
    int RotationDegrees,
    bool Interlaced,
    bool Encrypted,
    int FramesSeen,
    double? DurationSeconds,
    double? RateHz)
{
    /// <summary>Size of the upright picture with square pixels: the width carries the sample aspect, then the sides change places for a quarter turn.</summary>
    public (int WidthPx, int HeightPx) DisplaySize()
    {
        var width = Math.Max(1, (int)Math.Round(WidthPx * SampleAspect));
        return RotationDegrees % 180 == 0 ? (width, HeightPx) : (HeightPx, width);
    }
}
