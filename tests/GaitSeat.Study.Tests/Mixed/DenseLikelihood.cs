using GaitSeat.Study.Mixed;
using MathNet.Numerics.LinearAlgebra;

namespace GaitSeat.Study.Tests.Mixed;

/// <summary>The independent route: the marginal covariance of all rows written out, its likelihood by a dense Cholesky factor (Harville 1977, doi:10.1080/01621459.1977.10480998).</summary>
internal sealed record DenseLikelihood(MixedData Data)
{
    /// <summary>Minus twice the log likelihood (restricted or not), and the fixed effects with their covariance, at given covariances of the terms and residual variance.</summary>
    public (double Criterion, Vector<double> Fixed, Matrix<double> Covariance) At(MixedCriterion criterion, IReadOnlyList<double[,]> covariances, double residualVariance)
    {
        var root = Marginal(covariances, residualVariance).Cholesky();
        var x = Matrix<double>.Build.DenseOfColumnArrays(Data.Fixed.Select(c => c.Values));
        var y = Vector<double>.Build.Dense(Data.Outcome);
        var information = x.TransposeThisAndMultiply(root.Solve(x));
        var effects = information.Solve(x.TransposeThisAndMultiply(root.Solve(y)));
        var rest = y - x * effects;
        var value = root.DeterminantLn + rest * root.Solve(rest);
        var rows = criterion == MixedCriterion.Reml ? Data.Rows - Data.Fixed.Count : Data.Rows;
        if (criterion == MixedCriterion.Reml) value += information.Cholesky().DeterminantLn;
        return (value + rows * Math.Log(2 * Math.PI), effects, information.Inverse());
    }

    private Matrix<double> Marginal(IReadOnlyList<double[,]> covariances, double residualVariance)
    {
        var v = Matrix<double>.Build.Dense(Data.Rows, Data.Rows);
        for (var i = 0; i < Data.Rows; i++)
            for (var j = 0; j < Data.Rows; j++) v[i, j] = Data.Random.Select((t, k) => Shared(t, covariances[k], i, j)).Sum();
        for (var i = 0; i < Data.Rows; i++) v[i, i] += residualVariance / (Data.Weights?[i] ?? 1) + (Data.MeasurementVariance?[i] ?? 0);
        return v;
    }

    private static double Shared(RandomTerm term, double[,] covariance, int i, int j)
    {
        if (term.Groups.LevelOf[i] != term.Groups.LevelOf[j]) return 0;
        double sum = 0;
        for (var a = 0; a < term.Columns.Count; a++)
            for (var b = 0; b < term.Columns.Count; b++) sum += term.Columns[a].Values[i] * covariance[a, b] * term.Columns[b].Values[j];
        return sum;
    }
}
