using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>One instant as the camera sees it: puts places of the rider's plane into the picture.</summary>
internal readonly struct View(CameraState camera, Standing standing)
{
    /// <summary>1 to the right of the picture, -1 to the left.</summary>
    public int Facing { get; } = standing.Facing == Model.Facing.Right ? 1 : -1;

    /// <summary>Picture scale in the horse's middle plane, px per m.</summary>
    public float PxPerM { get; } = (float)StudioCamera.Project(camera, standing, default).PxPerM;

    public Vector2 Px(PlanePoint point, double near)
    {
        var px = StudioCamera.Project(camera, standing, point.At(near)).Px;
        return new((float)px.X, (float)px.Y);
    }

    /// <summary>Lays a part between two joints at given depths.</summary>
    /// <param name="length">Distance of the joints in the part, m.</param>
    /// <param name="size">Stretch across, 1 for parts drawn in true size.</param>
    public Placement Between(PlanePoint first, double firstNear, PlanePoint second, double secondNear, float length, float size)
    {
        var scale = (StudioCamera.Project(camera, standing, first.At(firstNear)).PxPerM + StudioCamera.Project(camera, standing, second.At(secondNear)).PxPerM) / 2;
        return Placement.Between(Px(first, firstNear), Px(second, secondNear), length, (float)scale * size, Facing);
    }
}
