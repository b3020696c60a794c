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
        // Whole vectors; what lies beyond the last column is never written.
        var padded = (widthPx + Vector<int>.Count - 1) / Vector<int>.Count * Vector<int>.Count;
        Span<float> column = stackalloc float[padded];
        Span<float> row = stackalloc float[padded];
        for (var y = 0; y < heightPx; y++)
        {
            var (x0, y0) = tilt.Upright(0.5, y + 0.5);
            var (ux, uy) = ((float)x0 + spare, (float)(y0 - camera.CentreYPx));
            for (var x = 0; x < widthPx; x++, ux += acrossX, uy += acrossY)
            {
                var i = Math.Clamp(float.ConvertToIntegerNative<int>(ux), 0, directions.Length - 1);
                var part = ux - i;
                var (here, toNext) = (directions[i].Here, directions[i].ToNext);
                column[x] = here.X + part * toNext.X;
                row[x] = uy * (here.Y + part * toNext.Y);
            }

            UnrollRow(column, row, (float)top, rgb.Slice(3 * y * widthPx, 3 * widthPx));
        }
    }

    private void UnrollRow(ReadOnlySpan<float> column, ReadOnlySpan<float> row, float top, Span<byte> target)
    {
        Span<int> at = stackalloc int[column.Length];
        Span<int> right = stackalloc int[column.Length];
        Span<int> down = stackalloc int[column.Length];
        for (var x = 0; x < column.Length; x += Vector<int>.Count)
        {
            var (c, u) = Split(new Vector<float>(column[x..]), columns - 2);
            var (r, v) = Split(new Vector<float>(row[x..]) - new Vector<float>(top) - new Vector<float>(0.5f), rows - 2);
            (FourTexels.TexelBytes * (r * columns + c)).CopyTo(at[x..]);
            u.CopyTo(right[x..]);
            v.CopyTo(down[x..]);
        }

        FourTexels.BlendRow(_cylinder, at, FourTexels.TexelBytes * columns, right, down, target);
    }

    // Whole texels, kept within the cylinder, and the weight of the next one.
    private static (Vector<int> Whole, Vector<int> Weight) Split(Vector<float> at, int last)
    {
        var whole = Vector.Min(Vector.Max(Vector.ConvertToInt32Native(at), Vector<int>.Zero), new Vector<int>(last));
        var weight = Vector.ConvertToInt32Native((at - Vector.ConvertToSingle(whole)) * One);
        return (whole, Vector.Min(Vector.Max(weight, Vector<int>.Zero), new Vector<int>(One)));
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

    /// <summary>Where a column of the upright picture looks. X: column of the cylinder; Y: rows of it per pixel.</summary>
    private readonly record struct Direction(Vector2 Here, Vector2 ToNext);
}
