namespace GaitSeat.Vision.Sight;

/// <summary>
/// What a model read in a mirror, with left and right put right. A model places a hip a little differently on a rider who faces left than on one who
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

    public static RawPoints SidesChanged(RawPoints points)
    {
        var other = points.Count == PointOrder.CocoCount ? Coco : Blaze;
        var changed = RawPoints.OfCount(points.Count);
        for (var i = 0; i < points.Count; i++)
        {
            changed.X[i] = points.X[other[i]];
            changed.Y[i] = points.Y[other[i]];
            changed.Score[i] = points.Score[other[i]];
        }

        return changed;
    }
}
