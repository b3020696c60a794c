using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Where the two body-point models look.</summary>
public static class BodyCrops
{
    /// <summary>Upright square around the rider's box.</summary>
    public static CropTransform Around(BoxPx rider, double factor, int inputPx, bool mirrored) =>
        new(rider.Centre.X, rider.Centre.Y, Math.Max(rider.Width, rider.Height) * factor, 0, inputPx, mirrored);

    /// <summary>
    /// Square turned so that the trunk stands upright: centre at mid-hip, up along hip to shoulder, side a multiple of the trunk's length.
    /// Null when hips and shoulders fall together.
    /// </summary>
    public static CropTransform? AlongTorso(RawPoints coco, double factor, int inputPx, bool mirrored)
    {
        ArgumentNullException.ThrowIfNull(coco);
        int shoulder = PointOrder.CocoLeft(BodyPoint.Shoulder), hip = PointOrder.CocoLeft(BodyPoint.Hip);
        PointPx s = Middle(coco[shoulder], coco[shoulder + 1]), h = Middle(coco[hip], coco[hip + 1]);
        var torso = s.DistanceTo(h);
        if (torso < 1) return null;
        return new(h.X, h.Y, factor * torso, Math.Atan2(s.X - h.X, h.Y - s.Y), inputPx, mirrored);
    }

    private static PointPx Middle(PointPx a, PointPx b) => new((a.X + b.X) / 2, (a.Y + b.Y) / 2);
}
