using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>How the rider stands to the camera, as judged by eye.</summary>
public enum MarkedView
{
    /// <summary>Within about 20 deg of side-on.</summary>
    Side,

    /// <summary>About 20 to 50 deg, from ahead or from behind.</summary>
    Oblique,

    /// <summary>More than about 50 deg.</summary>
    Front,
}

/// <summary>A still or one frame of a clip with the near-side points marked in it, one marking pass.</summary>
public sealed record MarkedPicture
{
    /// <summary>The nine points that are marked, in the order of the file.</summary>
    public static IReadOnlyList<BodyPoint> Points { get; } =
    [
        BodyPoint.Ear, BodyPoint.Shoulder, BodyPoint.Elbow, BodyPoint.Wrist, BodyPoint.Hip, BodyPoint.Knee, BodyPoint.Ankle, BodyPoint.Heel, BodyPoint.Toe,
    ];

    /// <summary>File name of the still or clip, without a folder. One file shows one rider.</summary>
    public required string Picture { get; init; }

    /// <summary>SHA-256 of that file, lower-case hex.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Presentation time of the frame, s; null for a still.</summary>
    public required double? TimeSeconds { get; init; }

    public required int WidthPx { get; init; }

    public required int HeightPx { get; init; }

    /// <summary>Left or right of the picture.</summary>
    public required Facing Facing { get; init; }

    public required MarkedView View { get; init; }

    /// <summary>y of the highest point of head, helmet or hat, px.</summary>
    public required double RiderTopPx { get; init; }

    /// <summary>y of the lowest point of the near foot, px; null where it cannot be told.</summary>
    public required double? RiderBottomPx { get; init; }

    /// <summary>1 for the first marking, 2 for the second.</summary>
    public required int Pass { get; init; }

    /// <summary>By <see cref="Points"/>.</summary>
    public required IReadOnlyDictionary<BodyPoint, Mark> Marks { get; init; }

    public bool IsStill => TimeSeconds is null;

    /// <summary>Top of head, helmet or hat to sole as the rider sits, px: the yardstick of the errors; null where the sole cannot be told.</summary>
    public double? RiderSpanPx => RiderBottomPx - RiderTopPx;

    /// <summary>Leg length, px: twice the marked shank, since thigh and shank are alike (0.245 and 0.246 of stature, Drillis and Contini 1966) and a rider's thigh opens out of the picture plane; null where the shank is hidden.</summary>
    public double? LegPx => Marks[BodyPoint.Knee].Px.DistanceTo(Marks[BodyPoint.Ankle].Px) is > 0 and var shank ? 2 * shank : null;

    /// <summary>What tells one picture from another: file and time.</summary>
    public (string Picture, double? TimeSeconds) Key => (Picture, TimeSeconds);

    /// <summary>Both markings of a picture in one, each point half way between; a point that one of them hides is as the other has it.</summary>
    /// <exception cref="ArgumentException">It is another picture.</exception>
    public MarkedPicture MeanWith(MarkedPicture other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.Key != Key) throw new ArgumentException($"'{other.Picture}' is another picture than '{Picture}'.", nameof(other));
        return this with { Marks = Points.ToDictionary(p => p, p => Marks[p].MeanWith(other.Marks[p])) };
    }

    /// <summary>From one place in the picture to another, in percent of the rider's height: + forward is the way the rider faces, + up is up.</summary>
    /// <exception cref="InvalidOperationException">The rider's height is not known.</exception>
    public Offset Offset(PointPx from, PointPx to)
    {
        var percent = 100 / (RiderSpanPx ?? throw new InvalidOperationException($"The rider's height in '{Picture}' is not known."));
        var forward = Facing == Facing.Left ? -1 : 1;
        return new(forward * (to.X - from.X) * percent, (from.Y - to.Y) * percent);
    }
}
