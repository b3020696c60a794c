using MathNet.Numerics.LinearAlgebra;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// Degrees of freedom by Satterthwaite: 2 V² / (g'Ag), V the variance of the estimate as a function of θ and log σ², g its gradient, A twice the inverse Hessian of the criterion
/// (Kuznetsova, Brockhoff and Christensen 2017, doi:10.18637/jss.v082.i13, section 2). Where weights come from known measurement errors they are held fixed, and so is σ² where they explain all of the residual and it lies at its bound.
/// </summary>
internal sealed class VarianceParameters
{
    /// <summary>Flatter directions are left out: at the boundary of zero variance the criterion does not tell them.</summary>
    private const double FlatShare = 1e-6;

    private readonly Objective _objective;
    private readonly double[] _point;
    private readonly int _free;
    private readonly Matrix<double> _covariance;

    public VarianceParameters(Solution solution)
    {
        _objective = solution.FreshObjective(solution.Settings.Criterion);
        _point = [.. solution.Theta, Math.Log(solution.ResidualVariance)];
        _free = solution.ResidualAtBound ? _point.Length - 1 : _point.Length;
        var hessian = Curvature.Of(p => _objective.AtWithVariance(Whole(p)), _point[.._free]).Hessian;
        var evd = Matrix<double>.Build.DenseOfArray(hessian).Evd(Symmetricity.Symmetric);
        var largest = evd.EigenValues.Max(v => v.Real);
        var inverse = evd.EigenValues.Select(v => v.Real > FlatShare * largest ? 2 / v.Real : 0).ToArray();
        _covariance = evd.EigenVectors * Matrix<double>.Build.DiagonalOfDiagonalArray(inverse) * evd.EigenVectors.Transpose();
    }

    /// <param name="contrast">On the orthonormal columns.</param>
    public double DegreesOfFreedom(double[] contrast)
    {
        var variance = Variance(contrast, _point);
        var gradient = Vector<double>.Build.Dense(Curvature.GradientOf(p => Variance(contrast, Whole(p)), _point[.._free]));
        return 2 * variance * variance / (gradient * (_covariance * gradient));
    }

    private double[] Whole(double[] free) => [.. free, .. _point.AsSpan(_free)];

    private double Variance(double[] contrast, double[] point)
    {
        _objective.Factored.Update(point.AsSpan(0, point.Length - 1));
        return Math.Exp(point[^1]) * FixedPart.Variance(_objective.Factored, contrast);
    }
}
