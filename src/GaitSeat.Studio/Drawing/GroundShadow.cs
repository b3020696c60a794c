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

    public static void Draw(Canvas canvas, CameraState camera, Standing standing, ReadOnlySpan<PlanePoint> hooves)
    {
        var (sin, cos) = Math.SinCos(camera.PanRad);
        var away = standing.X * sin + standing.Depth * cos;
        var lens = camera.FocalPx * StudioCamera.HeightM;
        // Turned about its axis the picture's rows run across the ground's: a few more are looked at.
        var spare = Math.Abs(Math.Sin(camera.RollRad)) * Math.Max(Math.Abs(canvas.X - camera.TurnXPx), Math.Abs(canvas.X + canvas.Width - camera.TurnXPx));
        var first = Math.Max(0, (int)(camera.CentreYPx + lens / (away + Reach) - spare) - canvas.Y);
        var last = Math.Min(canvas.Height - 1, (int)(camera.CentreYPx + lens / Math.Max(1, away - Reach) + spare) - canvas.Y);
        for (var y = first; y <= last; y++)
        {
            var row = canvas.Row(y);
            for (var x = 0; x < row.Length; x++)
            {
                var (px, py) = camera.Upright(canvas.X + x + 0.5, canvas.Y + y + 0.5);
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

    private static float At(double dx, double dd, Standing standing, ReadOnlySpan<PlanePoint> hooves)
    {
        var (sx, sd) = (dx - 0.28, dd - 0.25);
        var along = sx * standing.ForwardX + sd * standing.ForwardDepth;
        var across = sx * standing.NearX + sd * standing.NearDepth;
        var body = Soft((along + 0.10) / 1.35, across / 0.55) * Darkest;
        var (f, n) = (dx * standing.ForwardX + dd * standing.ForwardDepth, dx * standing.NearX + dd * standing.NearDepth);
        for (var i = 0; i < hooves.Length; i++)
        {
            var close = Math.Max(0, 1 - hooves[i].Up / 0.15);
            if (close > 0) body += (float)close * HoofDark * Soft((f - hooves[i].Forward - 0.03) / 0.16, (n - (i % 2 == 0 ? 0.15 : -0.15)) / 0.12);
        }

        return MathF.Min(0.6f, body);
    }

    private static float Soft(double x, double y) => 1 - Tint.Step(0.25f, 1, (float)(x * x + y * y));
}
