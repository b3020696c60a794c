namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// θ, the free numbers, as the lower-triangular factors Λ of the terms' covariances relative to the residual variance: Σ = σ² Λ Λ' (Bates et al. 2015, doi:10.18637/jss.v067.i01, section 2.2).
/// A change of sign of a column of Λ changes nothing, so that the likelihood is even about zero variance and needs no bounds.
/// </summary>
internal static class RelativeFactor
{
    public static int Count(Scaling scaling) => scaling.Slopes.Sum(s => s.Width * (s.Width + 1) / 2);

    /// <summary>Λ of each term, width × width.</summary>
    public static double[][] Of(Scaling scaling, ReadOnlySpan<double> theta)
    {
        var factors = new double[scaling.Slopes.Length][];
        var next = 0;
        for (var t = 0; t < factors.Length; t++)
        {
            var width = scaling.Slopes[t].Width;
            factors[t] = new double[width * width];
            for (var i = 0; i < width; i++)
                for (var j = 0; j <= i; j++) factors[t][i * width + j] = theta[next++];
        }

        return factors;
    }

    /// <summary>Diagonal Λ with one value per term.</summary>
    public static double[] Diagonal(Scaling scaling, ReadOnlySpan<double> perTerm)
    {
        var theta = new double[Count(scaling)];
        var next = 0;
        for (var t = 0; t < scaling.Slopes.Length; t++)
            for (var i = 0; i < scaling.Slopes[t].Width; i++)
                for (var j = 0; j <= i; j++) theta[next++] = i == j ? perTerm[t] : 0;
        return theta;
    }
}
