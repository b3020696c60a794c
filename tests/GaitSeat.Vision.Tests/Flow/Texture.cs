namespace GaitSeat.Vision.Tests.Flow;

/// <summary>
/// A made-up surface whose brightness is known between the pixels too: random heights on a lattice, joined by a smooth (cubic B-spline) surface,
/// so that a picture of it may be shifted, turned and zoomed exactly.
/// </summary>
internal sealed class Texture
{
    private const int Side = 256;

    private readonly float[] _heights = new float[Side * Side];
    private readonly double _grainPx;

    public Texture(int seed, double grainPx, double contrast)
    {
        var random = new Random(seed);
        for (var i = 0; i < _heights.Length; i++) _heights[i] = (float)((random.NextDouble() - 0.5) * 2 * contrast);
        _grainPx = grainPx;
    }

    public double At(double x, double y)
    {
        var (u, v) = (x / _grainPx, y / _grainPx);
        var (column, row) = ((int)Math.Floor(u), (int)Math.Floor(v));
        Span<double> alongX = stackalloc double[4];
        Span<double> alongY = stackalloc double[4];
        Basis(u - column, alongX);
        Basis(v - row, alongY);
        var sum = 0.0;
        for (var j = 0; j < 4; j++)
        {
            var from = ((row + j) & (Side - 1)) * Side;
            for (var i = 0; i < 4; i++) sum += alongX[i] * alongY[j] * _heights[from + ((column + i) & (Side - 1))];
        }

        return sum;
    }

    private static void Basis(double t, Span<double> weights)
    {
        weights[0] = (1 - t) * (1 - t) * (1 - t) / 6;
        weights[1] = ((3 * t * t * t) - (6 * t * t) + 4) / 6;
        weights[2] = ((-3 * t * t * t) + (3 * t * t) + (3 * t) + 1) / 6;
        weights[3] = t * t * t / 6;
    }
}
