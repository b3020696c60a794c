using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>Parts as bodies with true perspective; what lies in front hides what lies behind, whatever the order.</summary>
/// <param name="aside">Shift of the picture, px: instants of one exposure are drawn a part of a pixel apart, so that edges come out soft.</param>
internal sealed class SolidScene(Canvas canvas, CameraState camera, Standing standing, Vector2 aside) : IScene
{
    /// <summary>Light from the upper left, in front: x right, y up, z to the viewer; the same as on cards.</summary>
    private static readonly Vector3 Light = Vector3.Normalize(new Vector3(-0.45f, 0.72f, 0.62f));
    private const float Ambient = 0.60f;
    private const float SkyShare = 0.10f;
    private const float Direct = 0.52f;

    private readonly Rasteriser _raster = new(canvas, standing.Facing == Model.Facing.Right ? -1 : 1);
    private readonly Projection _projection = new(camera, standing);
    private readonly (double Sin, double Cos) _pan = Math.SinCos(camera.PanRad);
    private readonly float _turned = (float)Math.Abs(Math.Sin(standing.YawDeg * Math.PI / 180));
    private Corner[] _corners = [];

    public void Draw(Part part, PlanePoint first, double firstNear, PlanePoint second, double secondNear, float length, float size, float dim)
    {
        var (a, b) = part.Build.Centred ? (0, 0) : (firstNear, secondNear);
        // Seen from ahead or behind, the far side is in no shade.
        var light = dim + (1 - dim) * _turned;
        DrawOne(part.Solid, first.At(a), second.At(b), length, size, light);
        if (part.Build.BothSides) DrawOne(part.Solid, first.At(-a), second.At(-b), length, size, light);
    }

    public void Finish() => _raster.Finish();

    private void DrawOne(Solid solid, Point3 first, Point3 second, float length, float size, float light)
    {
        if (_corners.Length < solid.Points.Length) _corners = new Corner[solid.Points.Length];
        var axis = second - first;
        var along = new Vector3((float)axis.Forward, (float)axis.Up, (float)axis.Near) / length;
        var front = Vector3.Normalize(new Vector3(-along.Y, along.X, 0)) * size;
        var across = new Vector3(0, 0, size);
        var origin = new Vector3((float)first.Forward, (float)first.Up, (float)first.Near);
        var unitAlong = Vector3.Normalize(along);
        for (var i = 0; i < solid.Points.Length; i++)
        {
            var (p, n) = (solid.Points[i], solid.Normals[i]);
            var place = origin + along * p.X + front * p.Y + across * p.Z;
            var normal = unitAlong * n.X + front / size * n.Y + across / size * n.Z;
            _corners[i] = Seen(place, p, light * LitBy(normal));
        }

        _raster.Take(solid.Colours);
        for (var i = 0; i < solid.Triangles.Length; i += 3)
            _raster.Fill(_corners[solid.Triangles[i]], _corners[solid.Triangles[i + 1]], _corners[solid.Triangles[i + 2]]);
    }

    private Corner Seen(Vector3 place, Vector3 part, float light)
    {
        var (px, pxPerM) = _projection.Of(new Point3(place.X, place.Y, place.Z));
        return new((float)px.X + aside.X, (float)px.Y + aside.Y, new Vector4((float)pxPerM, light, part.X, part.Y));
    }

    private float LitBy(Vector3 normal)
    {
        // Into the camera's directions: right, up, towards.
        var x = normal.X * standing.ForwardX + normal.Z * standing.NearX;
        var depth = normal.X * standing.ForwardDepth + normal.Z * standing.NearDepth;
        var seen = new Vector3((float)(x * _pan.Cos - depth * _pan.Sin), normal.Y, (float)-(x * _pan.Sin + depth * _pan.Cos));
        return Ambient + SkyShare * seen.Y + Direct * MathF.Max(0, Vector3.Dot(seen, Light));
    }
}
