using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>One instant as the camera sees it: puts places of the rider's plane into the picture.</summary>
internal readonly struct View(CameraState camera, Standing standing)
{
    private readonly Projection _projection = new(camera, standing);

    /// <summary>1 to the right of the picture, -1 to the left.</summary>
    public int Facing { get; } = standing.Facing == Model.Facing.Right ? 1 : -1;

    /// <summary>Picture scale in the horse's middle plane, px per m.</summary>
    public float PxPerM { get; } = (float)StudioCamera.Project(camera, standing, default).PxPerM;

    public Vector2 Px(PlanePoint point, double near)
    {
        var px = _projection.Of(point.At(near)).Px;
        return new((float)px.X, (float)px.Y);
    }

    /// <summary>Lays a part between two joints at given depths.</summary>
    /// <param name="length">Distance of the joints in the part, m.</param>
    /// <param name="size">Stretch across, 1 for parts drawn in true size.</param>
    public Placement Between(PlanePoint first, double firstNear, PlanePoint second, double secondNear, float length, float size)
    {
        var (from, fromPxPerM) = _projection.Of(first.At(firstNear));
        var (to, toPxPerM) = _projection.Of(second.At(secondNear));
        var scale = (fromPxPerM + toPxPerM) / 2;
        return Placement.Between(new((float)from.X, (float)from.Y), new((float)to.X, (float)to.Y), length, (float)scale * size, Facing);
    }
}
