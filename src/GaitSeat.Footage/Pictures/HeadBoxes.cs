using GaitSeat.Model;

namespace GaitSeat.Footage.Pictures;

/// <summary>
/// Where heads may be in a frame. In doubt it takes more: a head missed in a frame is looked for in the frames around it and in the top of the rider's box; where neither box nor shoulder is known
/// and the head was not seen both before and after, the whole picture is taken, since a rider crosses a standing picture faster than any padding reaches.
/// What was seen in other frames never stands alone where the rider's box is known: a camera may have moved since.
/// </summary>
internal static class HeadBoxes
{
    /// <summary>Share of a person's box, from the top, that surely holds the head: 0.18 of the box when mounted, more when bent forward.</summary>
    private const double TopShare = 0.3;

    /// <summary>How far a detector's box may cut into the helmet, share of the box height.</summary>
    private const double BoxSlack = 0.05;

    /// <summary>How far a box may lag to either side, upwards, and how far down the head may then lie, shares of its height. Set so that the faces of the made sets are covered (docs/privacy.md).</summary>
    private const double LagShare = 0.35, LagUpShare = 0.2, LagTopShare = 0.45;

    /// <summary>From the shoulder point to the middle of the head, in head sides.</summary>
    private const double ShoulderToHead = 0.95;

    /// <summary>How much larger the area is where only the shoulder tells of the head: it may nod to either side.</summary>
    private const double ShoulderOnlyFactor = 1.4;

    public static IReadOnlyList<BoxPx> Of(OverlayScene scene, int widthPx, int heightPx, OverlaySettings settings)
    {
        var boxes = new List<BoxPx>();
        foreach (var other in scene.Others ?? []) boxes.Add(Top(other));
        var own = scene.TraceIndex < 0 ? null : At(scene, scene.TraceIndex, heightPx, settings);
        List<BoxPx> found = own is { } head ? [head] : AroundInTime(scene, heightPx, settings);
        boxes.AddRange(found);
        // A head that is not in the top of the rider's box is not believed.
        if (scene.Rider is { } rider && !(own is { } box && Top(rider).Contains(box.Centre))) boxes.Add(WideTop(rider, widthPx));
        if (found.Count == 0 && scene.Rider is null) boxes.Add(new BoxPx(0, 0, widthPx, heightPx));
        return boxes;
    }

    /// <summary>The part of a person's box that holds the head.</summary>
    public static BoxPx Top(BoxPx person) =>
        new(person.X - person.Height * BoxSlack, person.Y - person.Height * BoxSlack, person.Width + 2 * person.Height * BoxSlack, person.Height * (TopShare + BoxSlack));

    /// <summary>
    /// The top of a rider's box whose head was not seen. Such a box lags: it is read five times a second and carried on between. A rider at the edge of the picture comes or goes, and is covered up to it.
    /// </summary>
    private static BoxPx WideTop(BoxPx rider, int widthPx)
    {
        var side = rider.Height * LagShare;
        var (left, right) = (rider.X - side, rider.Right + side);
        if (left < side) left = Math.Min(left, 0);
        if (right > widthPx - side) right = Math.Max(right, widthPx);
        return new(left, rider.Y - rider.Height * LagUpShare, right - left, rider.Height * (LagUpShare + LagTopShare));
    }

    private static List<BoxPx> AroundInTime(OverlayScene scene, int heightPx, OverlaySettings settings)
    {
        var boxes = new List<BoxPx>();
        if (scene.TraceIndex < 0) return boxes;
        var (before, after) = (Search(scene, -1, settings.HeadMemorySeconds, heightPx, settings), Search(scene, 1, settings.HeadMemorySeconds, heightPx, settings));
        // Between the two the head took some way: all of it.
        if (before is { } early && after is { } late) boxes.Add(Join(early, late));
        else if (scene.Rider is not null && (before ?? after) is { } near) boxes.Add(near);
        if (AboveShoulder(scene, heightPx, settings) is { } above) boxes.Add(above);
        return boxes;
    }

    /// <summary>Head from ear and nose in one frame.</summary>
    private static BoxPx? At(OverlayScene scene, int index, int heightPx, OverlaySettings settings)
    {
        var side = HeadSize.Px(scene.Trace, index, index == scene.TraceIndex ? scene.Rider : null, heightPx) * settings.HeadPadding;
        BoxPx? box = null;
        foreach (var point in (BodyPoint[])[BodyPoint.Ear, BodyPoint.Nose])
        {
            var p = scene.Trace.Points[(int)point][index];
            if (!p.IsMissing) box = Join(box, Square(p, side));
        }

        return box;
    }

    private static BoxPx? AboveShoulder(OverlayScene scene, int heightPx, OverlaySettings settings)
    {
        var shoulder = scene.Trace.Points[(int)BodyPoint.Shoulder][scene.TraceIndex];
        if (shoulder.IsMissing) return null;
        var side = HeadSize.Px(scene.Trace, scene.TraceIndex, scene.Rider, heightPx);
        return Square(shoulder with { Y = shoulder.Y - side * ShoulderToHead }, side * settings.HeadPadding * ShoulderOnlyFactor);
    }

    private static BoxPx? Search(OverlayScene scene, int step, double withinSeconds, int heightPx, OverlaySettings settings)
    {
        var times = scene.Trace.TimeSeconds;
        for (var i = scene.TraceIndex + step; i >= 0 && i < times.Length && Math.Abs(times[i] - scene.TimeSeconds) <= withinSeconds; i += step)
        {
            if (At(scene, i, heightPx, settings) is { } box) return box;
        }

        return null;
    }

    private static BoxPx Square(PointPx centre, double side) => new(centre.X - side / 2, centre.Y - side / 2, side, side);

    private static BoxPx Join(BoxPx? a, BoxPx b)
    {
        if (a is not { } first) return b;
        var (x, y) = (Math.Min(first.X, b.X), Math.Min(first.Y, b.Y));
        return new(x, y, Math.Max(first.Right, b.Right) - x, Math.Max(first.Bottom, b.Bottom) - y);
    }
}
