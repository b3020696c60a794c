using MathNet.Numerics.LinearAlgebra;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>Where a minimisation ended.</summary>
/// <param name="Decrement">How far above the optimum the quadratic model says the value still is, twice over.</param>
internal sealed record Minimum(double[] X, double Value, double[,] Hessian, double Decrement, int Iterations)
{
    /// <summary>Within half a millionth of a deviance unit of an optimum. 3.84 units make a 95 % interval.</summary>
    public bool Converged => Decrement < 1e-6;
}

/// <summary>Damped Newton steps on a smooth function of few variables, unbounded. Directions of negative curvature are walked down; steps are halved until the value falls.</summary>
internal static class Newton
{
    /// <summary>The step from here squares the error: about 1e-17 of a deviance unit is left.</summary>
    private const double DecrementGoal = 1e-9;
    private const double SmallestShare = 1e-7;
    private const int MaxHalvings = 40;

    public static Minimum Minimise(Func<double[], double> function, double[] start, int maxIterations)
    {
        var x = (double[])start.Clone();
        for (var iteration = 1; ; iteration++)
        {
            var local = Curvature.Of(function, x);
            if (!double.IsFinite(local.Value) || local.Gradient.Any(g => !double.IsFinite(g))) return new(x, local.Value, local.Hessian, double.PositiveInfinity, iteration);
            var (step, decrement) = Step(local);
            var end = new Minimum(x, local.Value, local.Hessian, decrement, iteration);
            if (iteration == maxIterations) return end;
            var (next, value) = Descend(function, x, local.Value, step);
            // The last step is taken too: it brings a point that is good to half the digits to all of them.
            if (decrement < DecrementGoal) return value <= local.Value ? end with { X = next, Value = value } : end;
            if (!(value < local.Value)) return end;
            x = next;
        }
    }

    private static (double[] Step, double Decrement) Step(Curvature local)
    {
        var evd = Matrix<double>.Build.DenseOfArray(local.Hessian).Evd(Symmetricity.Symmetric);
        var values = evd.EigenValues.Select(v => v.Real).ToArray();
        var floor = SmallestShare * Math.Max(values.Max(Math.Abs), 1e-300);
        var gradient = Vector<double>.Build.Dense(local.Gradient);
        var step = Vector<double>.Build.Dense(values.Length);
        double decrement = 0;
        for (var i = 0; i < values.Length; i++)
        {
            var direction = evd.EigenVectors.Column(i);
            var along = direction * gradient;
            var curvature = Math.Max(Math.Abs(values[i]), floor);
            step -= direction * (along / curvature);
            decrement += along * along / curvature;
        }

        return ([.. step], decrement);
    }

    private static (double[] X, double Value) Descend(Func<double[], double> function, double[] x, double value, double[] step)
    {
        var length = Math.Sqrt(step.Sum(s => s * s));
        var share = Math.Min(1, Math.Max(0.5, Math.Sqrt(x.Sum(v => v * v))) / length);
        var best = (X: x, Value: double.PositiveInfinity);
        for (var i = 0; i < MaxHalvings; i++, share /= 2)
        {
            var moved = x.Select((v, k) => v + share * step[k]).ToArray();
            best = (moved, function(moved));
            if (best.Value < value) return best;
        }

        return best;
    }
}
