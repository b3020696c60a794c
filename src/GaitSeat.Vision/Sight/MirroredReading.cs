using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// Reading a frame as a mirror shows it, and turning the answer back. A model places a hip a little differently on a rider who faces left than on one who
/// faces right; with every other frame mirrored, the smoothing of the tracks averages both, and the two reins are measured alike.
/// </summary>
internal static class MirroredReading
{
    /// <summary>Left and right of MoveNet's 17 COCO points.</summary>
    private static readonly int[] Coco = [0, 2, 1, 4, 3, 6, 5, 8, 7, 10, 9, 12, 11, 14, 13, 16, 15];

    /// <summary>Left and right of BlazePose's 33 points.</summary>
    private static readonly int[] Blaze =
    [
        0, 4, 5, 6, 1, 2, 3, 8, 7, 10, 9, 12, 11, 14, 13, 16, 15, 18, 17, 20, 19, 22, 21, 24, 23, 26, 25, 28, 27, 30, 29, 32, 31,
    ];

    public static Frame Of(Frame frame)
    {
        var mirrored = new Frame(frame.Index, frame.TimeSeconds, frame.WidthPx, frame.HeightPx);
        ReadOnlySpan<byte> from = frame.Rgb;
        var to = mirrored.Rgb;
        var rowBytes = 3 * frame.WidthPx;
        for (var y = 0; y < frame.HeightPx; y++)
        {
            var source = from.Slice(y * rowBytes, rowBytes);
            var target = to.Slice(y * rowBytes, rowBytes);
            for (int left = 0, right = rowBytes - 3; left < rowBytes; left += 3, right -= 3)
            {
                target[right] = source[left];
                target[right + 1] = source[left + 1];
                target[right + 2] = source[left + 2];
            }
        }

        return mirrored;
    }

    public static BoxPx Of(BoxPx box, int widthPx) => box with { X = widthPx - box.Right };

    /// <summary>The pose read in the mirror, back in the picture.</summary>
    public static RawPose Back(RawPose pose, BoxPx riderBox, int widthPx) =>
        new(riderBox, Back(pose.First, widthPx), pose.Second is { } second ? Back(second, widthPx) : null);

    private static RawPoints Back(RawPoints points, int widthPx)
    {
        var other = points.Count == PointOrder.CocoCount ? Coco : Blaze;
        var back = RawPoints.OfCount(points.Count);
        for (var i = 0; i < points.Count; i++)
        {
            back.X[i] = widthPx - points.X[other[i]];
            back.Y[i] = points.Y[other[i]];
            back.Score[i] = points.Score[other[i]];
        }

        return back;
    }
}
