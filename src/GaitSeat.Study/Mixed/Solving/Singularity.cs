using MathNet.Numerics.LinearAlgebra;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>Whether a term's covariance has lost a direction.</summary>
internal static class Singularity
{
    /// <param name="share">Smallest spread, relative to the residual's, along any direction of the scaled columns.</param>
    public static bool Of(double[] lambda, int width, double share) =>
        Matrix<double>.Build.Dense(width, width, (i, j) => lambda[i * width + j]).Svd(computeVectors: false).S.Minimum() < share;
}
