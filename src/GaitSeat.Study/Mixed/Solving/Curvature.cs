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
        var value = function(x);
        var axes = Enumerable.Range(0, n).Select(i => Axis(function, x, i)).ToArray();
        var hessian = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            hessian[i, i] = axes[i].Second(value);
            for (var j = 0; j < i; j++)
            {
                var (hi, hj) = (axes[i].Step, axes[j].Step);
                var corners = function(Moved(x, (i, hi), (j, hj))) + function(Moved(x, (i, -hi), (j, -hj)));
                hessian[i, j] = hessian[j, i] = (corners + 2 * value - axes[i].Plus1 - axes[i].Minus1 - axes[j].Plus1 - axes[j].Minus1) / (2 * hi * hj);
            }
        }

        return new(value, [.. axes.Select(a => a.First)], hessian);
    }

    /// <summary>The gradient alone.</summary>
    public static double[] GradientOf(Func<double[], double> function, double[] x) => [.. x.Select((_, i) => Axis(function, x, i).First)];

    private static Line Axis(Func<double[], double> function, double[] x, int i)
    {
        var h = StepShare * Math.Max(Math.Abs(x[i]), SmallestSize);
        return new(h, function(Moved(x, (i, -2 * h))), function(Moved(x, (i, -h))), function(Moved(x, (i, h))), function(Moved(x, (i, 2 * h))));
    }

    private static double[] Moved(double[] x, params ReadOnlySpan<(int Index, double By)> moves)
    {
        var moved = (double[])x.Clone();
        foreach (var (index, by) in moves) moved[index] += by;
        return moved;
    }

    /// <summary>Values at one and two steps to either side.</summary>
    private readonly record struct Line(double Step, double Minus2, double Minus1, double Plus1, double Plus2)
    {
        public double First => (8 * (Plus1 - Minus1) - (Plus2 - Minus2)) / (12 * Step);

        public double Second(double middle) => (16 * (Plus1 + Minus1) - (Plus2 + Minus2) - 30 * middle) / (12 * Step * Step);
    }
}
