using GaitSeat.Study.Mixed;
using GaitSeat.Study.Tests.References;
using MathNet.Numerics.LinearAlgebra;

namespace GaitSeat.Study.Tests.Mixed;

/// <summary>Random effects, their errors and predictions against Henderson's mixed-model equations written out (Robinson 1991, doi:10.1214/ss/1177011926).</summary>
public sealed class EffectsTests
{
    [Theory]
    [InlineData(false, false)]
    [InlineData(true, true)]
    public void EffectsAndPredictions_SolveTheMixedModelEquations(bool nested, bool weights) => AssertEffects(MadeRows.Of(8, nested, weights));

    [Fact]
    public void EffectsOfThreeFactors_SolveTheMixedModelEquations() => AssertEffects(MadeRows.WithSessions(8));

    private static void AssertEffects(MixedData data)
    {
        var fit = MixedModel.Fit(data);
        var (solution, inverse, columnOf) = Henderson(data, fit);
        for (var t = 0; t < data.Random.Count; t++)
        {
            for (var l = 0; l < data.Random[t].Groups.Levels.Count; l++)
            {
                var width = data.Random[t].Columns.Count;
                for (var c = 0; c < width; c++) Assert.Equal(solution[columnOf(t, l, c)], fit.Random[t].Effects[l][c], 1e-8);
                double[] row = width == 2 ? [1, 2.5] : [1];
                var target = Vector<double>.Build.Dense(solution.Count);
                (target[0], target[1]) = (1, 2.5);
                for (var c = 0; c < width; c++) target[columnOf(t, l, c)] = row[c];
                var predicted = Prediction.Level(fit, [1, 2.5], t, l, row);
                Assert.Equal(target * solution, predicted.Value, 1e-8);
                Assert.Equal(Math.Sqrt(target * (inverse * target)), predicted.StandardError, 1e-8);
            }
        }
    }

    /// <summary>Effects and conditional standard error of lme4 1.1-31 (Debian), subjects 308 and 309; its search ends four digits from the optimum.</summary>
    [Fact]
    public void SleepStudy_HasTheEffectsOfLme4()
    {
        var subject = MixedModel.Fit(SleepStudy.Data()).Random[0];
        Assert.Equal(2.25855, subject.Effects[0][0], 1e-3);
        Assert.Equal(9.198976, subject.Effects[0][1], 1e-4);
        Assert.Equal(-40.39874, subject.Effects[1][0], 1e-3);
        Assert.Equal(-8.619681, subject.Effects[1][1], 1e-4);
        Assert.Equal(12.070857, subject.ConditionalSe[0][0], 1e-3);
    }

    [Fact]
    public void Fitted_AndResiduals_AddUpToTheOutcome()
    {
        var data = MadeRows.Of(8);
        var rows = RowFit.Of(MixedModel.Fit(data));
        Assert.All(data.Outcome, (y, i) => Assert.Equal(y, rows.Fitted[i] + rows.Residuals[i], 1e-10));
        Assert.Equal(0, rows.Residuals.Sum(), 1e-8);
    }

    private static (Vector<double> Solution, Matrix<double> Inverse, Func<int, int, int, int> ColumnOf) Henderson(MixedData data, MixedFit fit)
    {
        var starts = new List<int>();
        var columns = data.Fixed.Count;
        foreach (var term in data.Random)
        {
            starts.Add(columns);
            columns += term.Groups.Levels.Count * term.Columns.Count;
        }

        int ColumnOf(int t, int l, int c) => starts[t] + l * data.Random[t].Columns.Count + c;
        var w = Matrix<double>.Build.Dense(data.Rows, columns);
        var y = Vector<double>.Build.Dense(data.Rows);
        for (var i = 0; i < data.Rows; i++)
        {
            var root = Math.Sqrt(data.Weights?[i] ?? 1) / fit.ResidualSd;
            for (var j = 0; j < data.Fixed.Count; j++) w[i, j] = root * data.Fixed[j].Values[i];
            for (var t = 0; t < data.Random.Count; t++)
                for (var c = 0; c < data.Random[t].Columns.Count; c++) w[i, ColumnOf(t, data.Random[t].Groups.LevelOf[i], c)] = root * data.Random[t].Columns[c].Values[i];
            y[i] = root * data.Outcome[i];
        }

        var left = w.TransposeThisAndMultiply(w);
        for (var t = 0; t < data.Random.Count; t++)
        {
            var precision = Matrix<double>.Build.DenseOfArray(fit.Random[t].Covariance).Inverse();
            for (var l = 0; l < data.Random[t].Groups.Levels.Count; l++)
                for (var a = 0; a < precision.RowCount; a++)
                    for (var b = 0; b < precision.RowCount; b++) left[ColumnOf(t, l, a), ColumnOf(t, l, b)] += precision[a, b];
        }

        return (left.Solve(w.TransposeThisAndMultiply(y)), left.Inverse(), ColumnOf);
    }
}
