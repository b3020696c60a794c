using GaitSeat.Study.Mixed;
using GaitSeat.Study.Tests.References;
using MathNet.Numerics.LinearAlgebra;

namespace GaitSeat.Study.Tests.Mixed;

public sealed class InfluenceTests
{
    [Theory]
    [InlineData(false, 0)]
    [InlineData(false, 1)]
    [InlineData(true, 0)]
    public void LeavingALevelOut_IsTheFitOfTheOtherRows(bool nested, int term)
    {
        var data = MadeRows.Of(8, nested);
        var fit = MixedModel.Fit(data);
        var covariance = Matrix<double>.Build.DenseOfArray(fit.FixedCovariance);
        var all = Vector<double>.Build.DenseOfEnumerable(fit.Fixed.Select(f => f.Estimate));
        var levels = data.Random[term].Groups;
        foreach (var left in Influence.Of(fit, term))
        {
            var level = levels.Levels.ToList().IndexOf(left.Level);
            var rest = MixedModel.Fit(data.Where(i => levels.LevelOf[i] != level));
            for (var j = 0; j < all.Count; j++) Assert.Equal(rest.Fixed[j].Estimate, left.FixedEffects[j], 1e-5);
            var shift = all - Vector<double>.Build.DenseOfEnumerable(rest.Fixed.Select(f => f.Estimate));
            Assert.Equal(shift * covariance.Solve(shift) / all.Count, left.CooksDistance, 1e-4);
        }
    }

    /// <summary>R's lme4 1.1-31 (Debian): cooks.distance(influence(model, "Subject")), first and largest. Its distances carry a factor (n - p) / n, n the 18 subjects and p the two effects, that Cook's own do not.</summary>
    [Fact]
    public void SleepStudy_HasTheDistancesOfLme4()
    {
        var influence = Influence.Of(MixedModel.Fit(SleepStudy.Data()));
        Assert.Equal(0.08214841 * 18 / 16, influence[0].CooksDistance, 2e-5);
        Assert.Equal(0.13202080 * 18 / 16, influence[1].CooksDistance, 2e-5);
        Assert.Equal("309", influence.MaxBy(i => i.CooksDistance)!.Level);
    }

    /// <summary>Variances held: the generalised least squares of the other rows, at the covariance of all, written out.</summary>
    [Fact]
    public void HeldVariances_AreGeneralisedLeastSquaresOfTheOtherRows()
    {
        var data = MadeRows.Of(8);
        var fit = MixedModel.Fit(data);
        foreach (var left in Influence.Of(fit, term: 0, freeVariances: false))
        {
            var level = data.Random[0].Groups.Levels.ToList().IndexOf(left.Level);
            var rest = new DenseLikelihood(data.Where(i => data.Random[0].Groups.LevelOf[i] != level));
            var (_, effects, _) = rest.At(MixedCriterion.Reml, [.. fit.Random.Select(r => r.Covariance)], fit.ResidualSd * fit.ResidualSd);
            for (var j = 0; j < effects.Count; j++) Assert.Equal(effects[j], left.FixedEffects[j], 1e-8);
        }
    }

    [Fact]
    public void WildRider_StandsOut()
    {
        var data = MadeRows.Of(8);
        var wild = data with { Outcome = [.. data.Outcome.Select((y, i) => data.Random[0].Groups.LevelOf[i] == 3 ? y + 40 * data.Fixed[1].Values[i] : y)] };
        var influence = Influence.Of(MixedModel.Fit(wild));
        Assert.Equal(data.Random[0].Groups.Levels[3], influence.MaxBy(i => i.CooksDistance)!.Level);
        Assert.Equal(data.Rows, influence.Sum(i => i.Rows));
    }
}
