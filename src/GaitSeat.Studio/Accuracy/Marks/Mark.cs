using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>How well a marked point could be seen.</summary>
public enum MarkVisibility
{
    /// <summary>The point itself, or the outline that fixes it, is seen.</summary>
    Clear,

    /// <summary>Under clothes, boot, helmet or rope: placed from what is seen around it.</summary>
    Judged,

    /// <summary>Not marked.</summary>
    Hidden,
}

/// <summary>One body point as marked in a picture.</summary>
/// <param name="Px">px of the picture, pixel (0,0) covers 0..1; missing where hidden.</param>
public readonly record struct Mark(PointPx Px, MarkVisibility Visibility)
{
    /// <summary>Half way between two markings of a point; the other one where this is hidden. The worse visibility counts.</summary>
    public Mark MeanWith(Mark other) =>
        Px.IsMissing ? other
        : other.Px.IsMissing ? this
        : new(new((Px.X + other.Px.X) / 2, (Px.Y + other.Px.Y) / 2), Visibility > other.Visibility ? Visibility : other.Visibility);
}
