using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>The shadow of horse and rider on the ground, softened by an open sky.</summary>
internal static class GroundShadow
{
    private const double Reach = 1.9;
    /// <summary>No shadow falls further than this from the horse's middle, m.</summary>
    private const double Farthest = 2.3;
    private const float Darkest = 0.42f;
    private const float HoofDark = 0.25f;

    /// <summary>Half lengths along and across the horse where the shadows of body and hoof end, m.</summary>
    private const double BodyLong = 1.35;
    private const double BodyWide = 0.55;
    private const double HoofLong = 0.16;
    private const double HoofWide = 0.12;

    public static void Draw(Canvas canvas, CameraState camera, Standing standing, ReadOnlySpan<PlanePoint> hooves)
    {
        var (sin, cos) = Math.SinCos(camera.PanRad);
        var tilt = new Tilt(camera);
        var away = standing.X * sin + standing.Depth * cos;
        var lens = camera.FocalPx * StudioCamera.HeightM;
        // Turned about its axis the picture's rows run across the ground's: a few more are looked at.
        var spare = Math.Abs(Math.Sin(camera.RollRad)) * Math.Max(Math.Abs(canvas.X - camera.TurnXPx), Math.Abs(canvas.X + canvas.Width - camera.TurnXPx));
        var first = Math.Max(0, (int)(camera.CentreYPx + lens / (away + Reach) - spare) - canvas.Y);
        var last = Math.Min(canvas.Height - 1, (int)(camera.CentreYPx + lens / Math.Max(1, away - Reach) + spare) - canvas.Y);
        for (var y = first; y <= last; y++)
        {
            var (from, endExcl) = ColumnsOf(y, canvas, camera, tilt, standing);
            if (from >= endExcl) continue;
            var row = canvas.Row(y, from, endExcl);
            for (var x = 0; x < row.Length; x++)
            {
                var (px, py) = tilt.Upright(canvas.X + from + x + 0.5, canvas.Y + y + 0.5);
                if (py <= camera.CentreYPx + 1) continue;
                var depth = lens / (py - camera.CentreYPx);
                var across = (px - camera.CentreXPx) / camera.FocalPx * depth;
                var (dx, dd) = (across * cos + depth * sin - standing.X, -across * sin + depth * cos - standing.Depth);
                if (dx * dx + dd * dd > Farthest * Farthest) continue;
                // Light from the upper left and the front: the shadow lies to the right and behind.
                var shade = At(dx, dd, standing, hooves);
                if (shade > 0.004f) row[x] = new Vector4(row[x].AsVector3() * (1 - shade), row[x].W);
            }
        }
    }

    // Columns of a row outside which all ground is further than the shadow falls. Times the height below the horizon, which is even along the row
    // as all else here, the distance is the root of a quadratic; taken a pixel wider, since each pixel is asked again.
    private static (int From, int EndExcl) ColumnsOf(int y, Canvas canvas, CameraState camera, Tilt tilt, Standing standing)
    {
        var (sin, cos) = Math.SinCos(camera.PanRad);
        (double X, double Depth, double Far) Ground(double column)
        {
            var (px, py) = tilt.Upright(canvas.X + column + 0.5, canvas.Y + y + 0.5);
            var (below, right) = (py - camera.CentreYPx, (px - camera.CentreXPx) * StudioCamera.HeightM);
            var lens = camera.FocalPx * StudioCamera.HeightM;
            return (right * cos + lens * sin - standing.X * below, -right * sin + lens * cos - standing.Depth * below, Farthest * below);
        }

        var (at, next) = (Ground(0), Ground(1));
        var (stepX, stepDepth, stepFar) = (next.X - at.X, next.Depth - at.Depth, next.Far - at.Far);
        var square = stepX * stepX + stepDepth * stepDepth - stepFar * stepFar;
        var half = at.X * stepX + at.Depth * stepDepth - at.Far * stepFar;
        var discriminant = half * half - square * (at.X * at.X + at.Depth * at.Depth - at.Far * at.Far);
        if (square <= 0) return (0, canvas.Width);
        if (discriminant < 0) return (0, 0);
        var root = Math.Sqrt(discriminant);
        return ((int)Math.Clamp((-half - root) / square - 1, 0, canvas.Width), (int)Math.Clamp((-half + root) / square + 2, 0, canvas.Width));
    }

    private static float At(double dx, double dd, Standing standing, ReadOnlySpan<PlanePoint> hooves)
    {
        var (sx, sd) = (dx - 0.28, dd - 0.25);
        var along = sx * standing.ForwardX + sd * standing.ForwardDepth;
        var across = sx * standing.NearX + sd * standing.NearDepth;
        var body = Soft(along + 0.10, BodyLong, across, BodyWide) * Darkest;
        var (f, n) = (dx * standing.ForwardX + dd * standing.ForwardDepth, dx * standing.NearX + dd * standing.NearDepth);
        for (var i = 0; i < hooves.Length; i++)
        {
            var close = Math.Max(0, 1 - hooves[i].Up / 0.15);
            if (close > 0) body += (float)close * HoofDark * Soft(f - hooves[i].Forward - 0.03, HoofLong, n - (i % 2 == 0 ? 0.15 : -0.15), HoofWide);
        }

        return MathF.Min(0.6f, body);
    }

    // 1 in the middle, 0 from the ellipse on.
    private static float Soft(double along, double halfLong, double across, double halfWide)
    {
        if (Math.Abs(along) >= halfLong || Math.Abs(across) >= halfWide) return 0;
        var (x, y) = (along / halfLong, across / halfWide);
        return 1 - Tint.Step(0.25f, 1, (float)(x * x + y * y));
    }
}
