using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>The surroundings seen by a camera turned about its axis: every pixel has its own direction.</summary>
internal readonly ref struct TiltedView(ReadOnlySpan<byte> cylinder, int columns, int rows, int widthPx, int heightPx)
{
    private const int One = FourTexels.One;
    private readonly ReadOnlySpan<byte> _cylinder = cylinder;

    /// <param name="focalPx">Pixels of the cylinder per radian.</param>
    /// <param name="left">Direction of its first column, rad.</param>
    /// <param name="top">Its first row, px from the horizon.</param>
    public void Unroll(CameraState camera, double focalPx, double left, double top, Span<byte> rgb)
    {
        // Directions for the columns of an upright picture, wide enough for the corners; read in between.
        var spare = (int)(Math.Abs(Math.Sin(camera.RollRad)) * heightPx / 2) + 2;
        var directions = Directions(camera, spare, focalPx, left);
        var (acrossX, acrossY) = ((float)Math.Cos(camera.RollRad), (float)-Math.Sin(camera.RollRad));
        var tilt = new Tilt(camera);
        for (var y = 0; y < heightPx; y++)
        {
            var (x0, y0) = tilt.Upright(0.5, y + 0.5);
            var (ux, uy) = ((float)x0 + spare, (float)(y0 - camera.CentreYPx));
            var target = rgb.Slice(3 * y * widthPx, 3 * widthPx);
            for (var x = 0; x < widthPx; x++, ux += acrossX, uy += acrossY)
            {
                var i = Math.Clamp(float.ConvertToIntegerNative<int>(ux), 0, directions.Length - 1);
                var (column, step) = directions[i].Between(ux - i);
                Put(target, 3 * x, column, uy * step - (float)top - 0.5f);
            }
        }
    }

    private Direction[] Directions(CameraState camera, int spare, double focalPx, double left)
    {
        var at = new Vector2[widthPx + 2 * spare + 2];
        for (var i = 0; i < at.Length; i++)
        {
            var angle = Math.Atan((i - spare - camera.CentreXPx) / camera.FocalPx);
            at[i] = new((float)((camera.PanRad + angle - left) * focalPx - 0.5), (float)(Math.Cos(angle) / camera.FocalPx * focalPx));
        }

        return [.. at.Zip(at.Skip(1), (a, b) => new Direction(a, b - a))];
    }

    private void Put(Span<byte> target, int to, float atColumn, float atRow)
    {
        var column = Math.Clamp(float.ConvertToIntegerNative<int>(atColumn), 0, columns - 2);
        var row = Math.Clamp(float.ConvertToIntegerNative<int>(atRow), 0, rows - 2);
        var u = Math.Clamp(float.ConvertToIntegerNative<int>((atColumn - column) * One), 0, One);
        var v = Math.Clamp(float.ConvertToIntegerNative<int>((atRow - row) * One), 0, One);
        FourTexels.Blend(_cylinder, FourTexels.TexelBytes * (row * columns + column), FourTexels.TexelBytes * columns, u, v, target, to);
    }

    /// <summary>Where a column of the upright picture looks: column of the cylinder, and rows of it per pixel.</summary>
    private readonly record struct Direction(Vector2 Here, Vector2 ToNext)
    {
        public (float Column, float RowStep) Between(float part)
        {
            var at = Here + part * ToNext;
            return (at.X, at.Y);
        }
    }
}
