using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>Where a part lies in the picture: its first joint, and the pixels one metre along x and y of the part spans.</summary>
internal readonly record struct Placement(Vector2 Origin, Vector2 AlongX, Vector2 AlongY)
{
    /// <summary>Between two joints in the picture. The + side is the front for a horse that faces right; <paramref name="facing"/> -1 mirrors it.</summary>
    /// <param name="length">Distance of the joints in the part, m.</param>
    /// <param name="pxPerM">Scale across the part.</param>
    public static Placement Between(Vector2 first, Vector2 second, float length, float pxPerM, int facing)
    {
        var along = second - first;
        var px = Math.Max(along.Length(), 1e-3f);
        var across = new Vector2(along.Y, -along.X) * (facing * pxPerM / px);
        return new(first, along / length, across);
    }
}
