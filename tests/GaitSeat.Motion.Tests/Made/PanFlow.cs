using MathNet.Numerics.LinearRegression;

namespace GaitSeat.Motion.Tests.Made;

/// <summary>What a camera that only turns does to the picture (the exact quadratic flow of a pinhole, to first order of the turn), and the growth a fit reads from it.</summary>
internal static class PanFlow
{
    private const int Across = 16, Down = 9;

    /// <summary>
    /// Growth, as a share, of the best shift, turn, growth and bend about a place to the right of the middle, over windows in even rows all over a part of the picture as wide and as high as given.
    /// </summary>
    public static double Growth(double panRad, double focalPx, double placePx, double widthPx, double heightPx)
    {
        List<double[]> rows = [];
        List<double> shifts = [];
        for (var i = 0; i < Across; i++)
        {
            for (var j = 0; j < Down; j++)
            {
                double u = widthPx * ((i + 0.5) / Across - 0.5), v = heightPx * ((j + 0.5) / Down - 0.5);
                double x = (u - placePx) / widthPx, y = v / widthPx;
                rows.Add([1, 0, x, -y, x * x, x * y]);
                shifts.Add(-panRad * (focalPx + u * u / focalPx));
                rows.Add([0, 1, y, x, x * y, y * y]);
                shifts.Add(-panRad * u * v / focalPx);
            }
        }

        return MultipleRegression.QR([.. rows], [.. shifts], intercept: false)[2] / widthPx;
    }
}
