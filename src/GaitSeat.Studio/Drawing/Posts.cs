using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>A post as it stands in the picture.</summary>
internal readonly record struct PostInPicture(int Number, Vector2 Foot, Vector2 Top, float HalfWidthPx)
{
    /// <summary>Whether it hides a place in the picture.</summary>
    public bool Hides(double x, double y)
    {
        if (y < Top.Y || y > Foot.Y) return false;
        var middle = Top.X + (Foot.X - Top.X) * (y - Top.Y) / (Foot.Y - Top.Y);
        return Math.Abs(x - middle) < HalfWidthPx;
    }
}

/// <summary>Posts between camera and rider, evenly along a rail that keeps its distance from the track.</summary>
internal sealed class Posts
{
    public const double HeightM = 2.15;
    public const double WidthM = 0.11;

    /// <summary>The rail's distance over the horse's least distance.</summary>
    private const double RailShare = 0.62;

    /// <summary>Posts on a straight rail stand this far to either side, m.</summary>
    private const double ReachM = 45;

    private readonly (double X, double Depth)[] _places;

    /// <param name="nearestM">Least distance of the horse from the camera.</param>
    public Posts(ClipScript script, double nearestM)
    {
        var rail = RailShare * nearestM;
        _places = script.PostEveryM <= 0 ? [] : IsStraight(script) ? Straight(rail, script.PostEveryM) : Round(rail, script.PostEveryM);
    }

    public IEnumerable<PostInPicture> Seen(CameraState camera)
    {
        for (var i = 0; i < _places.Length; i++)
        {
            var (x, depth) = _places[i];
            var (sin, cos) = Math.SinCos(camera.PanRad);
            if (x * sin + depth * cos < 1) continue;
            var standing = new Standing(x, depth, 1, 0, 0, -1);
            var (foot, pxPerM) = StudioCamera.Project(camera, standing, default);
            var top = StudioCamera.Project(camera, standing, new Point3(0, HeightM, 0)).Px;
            yield return new(i, new((float)foot.X, (float)foot.Y), new((float)top.X, (float)top.Y), (float)(pxPerM * WidthM / 2));
        }
    }

    private static bool IsStraight(ClipScript script) =>
        script.Way is Way.Line or Way.CircleFromOutside || (script.Way == Way.Usual && script.Camera == CameraWork.Static);

    private static (double, double)[] Straight(double rail, double every)
    {
        var half = (int)(ReachM / every);
        return [.. Enumerable.Range(-half, 2 * half + 1).Select(i => ((i + 0.37) * every, rail))];
    }

    private static (double, double)[] Round(double rail, double every)
    {
        var count = Math.Max(1, (int)(2 * Math.PI * rail / every));
        return [.. Enumerable.Range(0, count).Select(i => (i + 0.37) * 2 * Math.PI / count).Select(a => (rail * Math.Sin(a), rail * Math.Cos(a)))];
    }
}
