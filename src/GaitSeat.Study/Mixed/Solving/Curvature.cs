namespace GaitSeat.Study.Mixed.Solving;

/// <summary>Value, gradient and Hessian of a smooth function of few variables by central differences, of fourth order along the axes.</summary>
internal sealed record Curvature(double Value, double[] Gradient, double[,] Hessian)
{
    /// <summary>Step as a share of the variable: the error of the gradient then is about 1e-10 of the curvature times the variable, as is that of rounding.</summary>
    private const double StepShare = 5e-3;

    /// <summary>Variables smaller than this are stepped as if they had this size.</summary>
    private const double SmallestSize = 2e-2;

    public static Curvature Of(Func<double[], double> function, double[] x)
    {
        var n = x.Length;
        var steps = Array.ConvertAll(x, v => StepShare * Math.Max(Math.Abs(v), SmallestSize));
        var value = function(x);
        var gradient = new double[n];
        var hessian = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            var h = steps[i];
            double minus2 = At(i, -2), minus1 = At(i, -1), plus1 = At(i, 1), plus2 = At(i, 2);
            gradient[i] = (8 * (plus1 - minus1) - (plus2 - minus2)) / (12 * h);
            hessian[i, i] = (16 * (plus1 + minus1) - (plus2 + minus2) - 30 * value) / (12 * h * h);
            for (var j = 0; j < i; j++)
                hessian[i, j] = hessian[j, i] = (Corner(i, j, 1, 1) - Corner(i, j, 1, -1) - Corner(i, j, -1, 1) + Corner(i, j, -1, -1)) / (4 * h * steps[j]);
        }

        return new(value, gradient, hessian);

        double At(int i, int k) => Corner(i, i, k, 0);

        double Corner(int i, int j, int ki, int kj)
        {
            var moved = (double[])x.Clone();
            moved[i] += ki * steps[i];
            moved[j] += kj * steps[j];
            return function(moved);
        }
    }
}
