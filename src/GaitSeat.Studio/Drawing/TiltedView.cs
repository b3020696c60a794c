namespace GaitSeat.Studio;

/// <summary>The surroundings seen by a camera turned about its axis: every pixel has its own direction.</summary>
internal readonly ref struct TiltedView(ReadOnlySpan<byte> cylinder, int columns, int rows, int widthPx, int heightPx)
{
    private readonly ReadOnlySpan<byte> _cylinder = cylinder;

    /// <param name="focalPx">Pixels of the cylinder per radian.</param>
    /// <param name="left">Direction of its first column, rad.</param>
    /// <param name="top">Its first row, px from the horizon.</param>
    public void Unroll(CameraState camera, double focalPx, double left, double top, Span<byte> rgb)
    {
        // Directions for the columns of an upright picture, wide enough for the corners; read in between.
        var spare = (int)(Math.Abs(Math.Sin(camera.RollRad)) * heightPx / 2) + 2;
        var column = new float[widthPx + 2 * spare + 2];
        var rowStep = new float[column.Length];
        for (var i = 0; i < column.Length; i++)
        {
            var angle = Math.Atan((i - spare - camera.CentreXPx) / camera.FocalPx);
            column[i] = (float)((camera.PanRad + angle - left) * focalPx - 0.5);
            rowStep[i] = (float)(Math.Cos(angle) / camera.FocalPx * focalPx);
        }

        var (acrossX, acrossY) = ((float)Math.Cos(camera.RollRad), (float)-Math.Sin(camera.RollRad));
        for (var y = 0; y < heightPx; y++)
        {
            var (x0, y0) = camera.Upright(0.5, y + 0.5);
            var (ux, uy) = ((float)x0 + spare, (float)(y0 - camera.CentreYPx));
            var target = rgb.Slice(3 * y * widthPx, 3 * widthPx);
            for (var x = 0; x < widthPx; x++, ux += acrossX, uy += acrossY)
            {
                var i = Math.Clamp((int)ux, 0, column.Length - 2);
                var part = ux - i;
                Put(target, 3 * x, column[i] + part * (column[i + 1] - column[i]), uy * (rowStep[i] + part * (rowStep[i + 1] - rowStep[i])) - (float)top - 0.5f);
            }
        }
    }

    private void Put(Span<byte> target, int to, float atColumn, float atRow)
    {
        var (column, row) = (Math.Clamp((int)atColumn, 0, columns - 2), Math.Clamp((int)atRow, 0, rows - 2));
        var (u, v) = (Math.Clamp((int)((atColumn - column) * FourTexels.One), 0, FourTexels.One), Math.Clamp((int)((atRow - row) * FourTexels.One), 0, FourTexels.One));
        FourTexels.Blend(_cylinder, 3 * (row * columns + column), 3 * columns, u, v, target, to);
    }
}
