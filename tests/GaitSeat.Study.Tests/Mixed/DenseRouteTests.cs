using GaitSeat.Study.Mixed;

namespace GaitSeat.Study.Tests.Mixed;

/// <summary>Unbalanced, crossed, nested, weighted: the block route against the likelihood written out in full, and a grid about the optimum that holds nothing better.</summary>
public sealed class DenseRouteTests
{
    [Theory]
    [InlineData(MixedCriterion.Reml, false, false, false)]
    [InlineData(MixedCriterion.Ml, false, false, false)]
    [InlineData(MixedCriterion.Reml, true, false, false)]
    [InlineData(MixedCriterion.Reml, false, true, false)]
    [InlineData(MixedCriterion.Ml, true, true, false)]
    [InlineData(MixedCriterion.Reml, false, false, true)]
    [InlineData(MixedCriterion.Ml, true, false, true)]
    public void Optimum_IsThatOfTheFullLikelihood(MixedCriterion criterion, bool nested, bool weights, bool measured) =>
        AssertOptimum(criterion, MadeRows.Of(seed: 8, nested, weights, measured));

    [Fact]
    public void ThreeFactors_HaveTheOptimumOfTheFullLikelihood() => AssertOptimum(MixedCriterion.Reml, MadeRows.WithSessions(8));

    private static void AssertOptimum(MixedCriterion criterion, MixedData data)
    {
        var fit = MixedModel.Fit(data, new() { Criterion = criterion });
        Assert.False(fit.IsSingular);
        var dense = new DenseLikelihood(data);
        double[][,] covariances = [.. fit.Random.Select(r => r.Covariance)];
        var variance = fit.ResidualSd * fit.ResidualSd;
        var (value, effects, covariance) = dense.At(criterion, covariances, variance);
        Assert.Equal(value, fit.CriterionValue, 1e-7);
        for (var j = 0; j < effects.Count; j++)
        {
            Assert.Equal(effects[j], fit.Fixed[j].Estimate, 1e-7);
            Assert.Equal(Math.Sqrt(covariance[j, j]), fit.Fixed[j].StandardError, 1e-7);
        }

        Assert.All(Neighbours(covariances, variance), n => Assert.True(dense.At(criterion, n.Covariances, n.Residual).Criterion > value, "a better point stands beside the optimum"));
    }

    /// <summary>One variance parameter at a time moved by half a percent up and down; far more than the fit may be off, far less than what the data can tell.</summary>
    private static IEnumerable<(double[][,] Covariances, double Residual)> Neighbours(double[][,] covariances, double residual)
    {
        foreach (var factor in new[] { 0.995, 1.005 })
        {
            yield return (covariances, residual * factor);
            for (var t = 0; t < covariances.Length; t++)
                for (var a = 0; a < covariances[t].GetLength(0); a++)
                    for (var b = 0; b <= a; b++) yield return (Scaled(covariances, t, a, b, factor), residual);
        }
    }

    private static double[][,] Scaled(double[][,] covariances, int term, int a, int b, double factor)
    {
        double[][,] copy = [.. covariances.Select(c => (double[,])c.Clone())];
        copy[term][a, b] *= factor;
        copy[term][b, a] = copy[term][a, b];
        return copy;
    }
}
