using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>
/// The surroundings, painted once on a cylinder around the camera and unrolled into each frame. The camera only turns and zooms,
/// so this is exact: a pinhole picture at any pan and focal length.
/// </summary>
internal sealed class Backdrop
{
    private const int MarginPx = 4;
    private const int One = FourTexels.One;

    private readonly int _widthPx;
    private readonly int _heightPx;
    private readonly double _focalPx;
    private readonly double _left;
    private readonly double _top;
    private readonly int _columns;
    private readonly int _rows;
    private readonly byte[] _texels;

    /// <param name="states">The camera over the whole clip, ends included.</param>
    /// <param name="farthestM">Greatest distance of the horse: the fence stands beyond.</param>
    /// <param name="blurPx">How far a standing thing runs across the picture during the exposure, px.</param>
    public Backdrop(ClipScript script, IReadOnlyList<CameraState> states, double farthestM, double blurPx)
    {
        (_widthPx, _heightPx) = (script.WidthPx, script.HeightPx);
        // A long way round is painted at half the detail: surroundings out of focus, and a quarter of the paint.
        var fine = script.Way == Way.Usual ? 1 : 0.5;
        _focalPx = fine * states.Max(s => s.FocalPx);
        var shortest = states.Min(s => s.FocalPx);
        var spare = CornerPx(states);
        var half = Math.Atan((_widthPx / 2.0 + spare) / shortest);
        _left = states.Min(s => s.PanRad) - half - MarginPx / _focalPx;
        var right = states.Max(s => s.PanRad) + half + MarginPx / _focalPx;
        _top = -(states.Max(s => s.CentreYPx) + spare) / shortest * _focalPx - MarginPx;
        var bottom = (_heightPx + spare - states.Min(s => s.CentreYPx)) / shortest * _focalPx + MarginPx;
        _columns = (int)Math.Ceiling((right - _left) * _focalPx) + 2;
        _rows = (int)Math.Ceiling(bottom - _top) + 2;
        _texels = Paint(new Scenery(script, farthestM, _focalPx), (int)Math.Round(fine * blurPx));
    }

    /// <summary>Writes the surroundings as the camera sees them into a whole frame.</summary>
    public void Unroll(CameraState camera, Span<byte> rgb)
    {
        if (camera.RollRad != 0)
        {
            new TiltedView(_texels, _columns, _rows, _widthPx, _heightPx).Unroll(camera, _focalPx, _left, _top, rgb);
            return;
        }

        // Whole vectors; what lies beyond the last column is never written.
        var padded = (_widthPx + Vector<int>.Count - 1) / Vector<int>.Count * Vector<int>.Count;
        Span<int> column = stackalloc int[padded];
        Span<int> share = stackalloc int[_widthPx];
        Span<float> rowStep = stackalloc float[padded];
        for (var x = 0; x < _widthPx; x++)
        {
            var angle = Math.Atan((x + 0.5 - camera.CentreXPx) / camera.FocalPx);
            var at = (camera.PanRad + angle - _left) * _focalPx - 0.5;
            var whole = Math.Clamp((int)Math.Floor(at), 0, _columns - 2);
            column[x] = FourTexels.TexelBytes * whole;
            share[x] = (int)(Math.Clamp(at - whole, 0, 1) * One);
            // A column of the picture shows a vertical line: heights shrink by the cosine of its angle.
            rowStep[x] = (float)(Math.Cos(angle) / camera.FocalPx * _focalPx);
        }

        for (var y = 0; y < _heightPx; y++)
            UnrollRow((float)(y + 0.5 - camera.CentreYPx), column, share, rowStep, rgb.Slice(3 * y * _widthPx, 3 * _widthPx));
    }

    // How much further than an upright picture the corners of a turned one reach.
    private double CornerPx(IReadOnlyList<CameraState> states) =>
        Math.Sin(states.Max(s => Math.Abs(s.RollRad))) * Math.Max(_widthPx, _heightPx) / 2;

    private void UnrollRow(float fromCentre, ReadOnlySpan<int> column, ReadOnlySpan<int> share, ReadOnlySpan<float> rowStep, Span<byte> target)
    {
        var stride = FourTexels.TexelBytes * _columns;
        var offset = new Vector<float>((float)-_top - 0.5f);
        Span<int> texel = stackalloc int[column.Length];
        Span<int> down = stackalloc int[column.Length];
        for (var x = 0; x < column.Length; x += Vector<int>.Count)
        {
            var at = fromCentre * new Vector<float>(rowStep[x..]) + offset;
            var row = Vector.ConvertToInt32Native(at);
            (row * stride + new Vector<int>(column[x..])).CopyTo(texel[x..]);
            Vector.ConvertToInt32Native((at - Vector.ConvertToSingle(row)) * One).CopyTo(down[x..]);
        }

        FourTexels.BlendRow(_texels, texel, stride, share, down, target);
    }

    private byte[] Paint(Scenery scenery, int blurPx)
    {
        var texels = new byte[FourTexels.TexelBytes * _columns * _rows];
        Parallel.For(0, _rows, row =>
        {
            var line = new Vector3[_columns];
            var slope = (float)((row + 0.5 + _top) / _focalPx);
            for (var column = 0; column < _columns; column++) line[column] = scenery.At((float)(_left + (column + 0.5) / _focalPx), slope);
            if (blurPx > 1) line = Blurred(line, blurPx);
            for (var column = 0; column < _columns; column++) Put(texels.AsSpan(FourTexels.TexelBytes * (row * _columns + column), FourTexels.TexelBytes), line[column]);
        });
        return texels;
    }

    private static Vector3[] Blurred(Vector3[] line, int length)
    {
        var blurred = new Vector3[line.Length];
        for (var i = 0; i < line.Length; i++)
        {
            var sum = Vector3.Zero;
            for (var k = 0; k < length; k++) sum += line[Math.Clamp(i + k - length / 2, 0, line.Length - 1)];
            blurred[i] = sum / length;
        }

        return blurred;
    }

    private static void Put(Span<byte> rgb, Vector3 colour)
    {
        colour = Vector3.Clamp(colour, Vector3.Zero, Vector3.One) * 255 + new Vector3(0.5f);
        (rgb[0], rgb[1], rgb[2]) = ((byte)colour.X, (byte)colour.Y, (byte)colour.Z);
    }
}
