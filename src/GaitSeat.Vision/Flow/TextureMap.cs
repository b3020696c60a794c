namespace GaitSeat.Vision.Flow;

/// <summary>The structure tensor of a part of a picture, mean over a small square around each px.</summary>
internal sealed class TextureMap
{
    // Half side of the square: 7 px across, about half a matching window, so that the texture lies inside the window.
    private const int Reach = 3;
    private const int Side = (2 * Reach) + 1;

    private float[] _xx = [];
    private float[] _xy = [];
    private float[] _yy = [];
    private float[] _columns = [];

    public int Left { get; private set; }

    public int Top { get; private set; }

    public int Width { get; private set; }

    public int Height { get; private set; }

    /// <summary>The part must keep <c>Reach + 1</c> px from the picture's border.</summary>
    public void Fill(GreyPicture picture, int left, int top, int width, int height)
    {
        (Left, Top, Width, Height) = (left, top, width, height);
        if (_xx.Length < width * height)
        {
            var room = WithRoomToGrow(width * height);
            (_xx, _xy, _yy) = (new float[room], new float[room], new float[room]);
        }

        var padded = width + (2 * Reach);
        if (_columns.Length < 3 * padded) _columns = new float[WithRoomToGrow(3 * padded)];
        Array.Clear(_columns);
        for (var y = -Reach; y < Reach; y++) AddRow(picture, top + y, padded, 1);
        for (var y = 0; y < height; y++)
        {
            AddRow(picture, top + y + Reach, padded, 1);
            SumAlong(_columns.AsSpan(0, padded), _xx.AsSpan(y * width, width));
            SumAlong(_columns.AsSpan(padded, padded), _xy.AsSpan(y * width, width));
            SumAlong(_columns.AsSpan(2 * padded, padded), _yy.AsSpan(y * width, width));
            AddRow(picture, top + y - Reach, padded, -1);
        }
    }

    public Tensor At(int x, int y)
    {
        var i = (y * Width) + x;
        return new(_xx[i], _xy[i], _yy[i]);
    }

    /// <summary>Half as much again: a horse that comes nearer asks for a little more at every frame.</summary>
    private static int WithRoomToGrow(int length) => length + (length / 2);

    private void AddRow(GreyPicture picture, int y, int padded, float sign)
    {
        var from = Left - Reach;
        var row = picture.Row(y).Slice(from - 1, padded + 2);
        var above = picture.Row(y - 1).Slice(from, padded);
        var below = picture.Row(y + 1).Slice(from, padded);
        var xx = _columns.AsSpan(0, padded);
        var xy = _columns.AsSpan(padded, padded);
        var yy = _columns.AsSpan(2 * padded, padded);
        for (var x = 0; x < padded; x++)
        {
            var gx = (row[x + 2] - row[x]) * 0.5f;
            var gy = (below[x] - above[x]) * 0.5f;
            xx[x] += sign * gx * gx;
            xy[x] += sign * gx * gy;
            yy[x] += sign * gy * gy;
        }
    }

    private static void SumAlong(ReadOnlySpan<float> columns, Span<float> means)
    {
        const float share = 1f / (Side * Side);
        var sum = 0f;
        for (var x = 0; x < Side - 1; x++) sum += columns[x];
        for (var x = 0; x < means.Length; x++)
        {
            sum += columns[x + Side - 1];
            means[x] = sum * share;
            sum -= columns[x];
        }
    }
}
