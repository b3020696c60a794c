using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>What the pipeline saw in a marked picture.</summary>
/// <param name="Picture">The picture and its marks.</param>
/// <param name="Facing">The side the pipeline took the rider to face.</param>
/// <param name="Points">Near-side points by <see cref="BodyPoint"/>, px of the marked picture; missing where not seen.</param>
/// <param name="MissingReason">Why there is no rider, as a stable word; null where there is one.</param>
public sealed record PictureReading(MarkedPicture Picture, Facing Facing, IReadOnlyList<PointPx> Points, string? MissingReason)
{
    /// <summary>The rider was taken to face the other way, so the other side's points were read.</summary>
    public const string FacingWrong = "facing_wrong";

    /// <summary>The marks do not tell the rider's height, so there is nothing to give an error in percent of.</summary>
    public const string HeightNotMarked = "rider_height_not_marked";

    /// <summary>Why the picture cannot be compared; null where it can.</summary>
    public string? LeftOutReason =>
        MissingReason ?? (Facing != Picture.Facing ? FacingWrong : Picture.RiderSpanPx is null ? HeightNotMarked : null);

    public static PictureReading Missing(MarkedPicture picture, string reason) => new(picture, Facing.Unknown, [], reason);
}
