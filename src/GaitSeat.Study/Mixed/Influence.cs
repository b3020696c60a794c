using GaitSeat.Study.Mixed.Solving;
using GaitSeat.Study.Simulation;

namespace GaitSeat.Study.Mixed;

/// <summary>What leaving one level (a rider) out does.</summary>
/// <param name="CooksDistance">Squared shift of all fixed effects in units of their covariance, over their count; above about 1, or far above the rest, worth a look (Cook 1977, doi:10.1080/00401706.1977.10489493). NaN where the rest cannot be fitted.</param>
/// <param name="FixedEffects">Without this level.</param>
public sealed record LevelInfluence(string Level, int Rows, double CooksDistance, double[] FixedEffects);

/// <summary>Leave one level out, fit again, see what moves.</summary>
public static class Influence
{
    /// <param name="term">Index of the grouping factor.</param>
    /// <param name="freeVariances">The variances are fitted again too; held, they stay those of all rows, which is some fifty times faster and close where levels are many.</param>
    public static IReadOnlyList<LevelInfluence> Of(MixedFit fit, int term = 0, bool freeVariances = true)
    {
        var solution = fit.Solution;
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(term, solution.Data.Random.Count);
        var cells = solution.Factored.Blocks.Cells;
        var levels = solution.Data.Random[term].Groups.Levels;
        var rows = new int[levels.Count];
        foreach (var cell in cells.List) rows[cell.Levels[term]] += cell.Rows;
        int[] used = [.. Enumerable.Range(0, levels.Count).Where(l => rows[l] > 0)];
        return Replicates.Each(used, l => Without(solution, solution.Factored.Blocks.Without(term, l), levels[l], rows[l], freeVariances));
    }

    private static LevelInfluence Without(Solution solution, Blocks rest, string level, int rows, bool freeVariances)
    {
        var refit = rest.Cells.Rows > solution.Scaling.FixedCount ? freeVariances ? Refit.Of(solution, rest) : Refit.Held(solution, rest) : null;
        if (refit is null) return new(level, rows, double.NaN, [.. solution.Data.Fixed.Select(_ => double.NaN)]);
        var all = FixedPart.Effects(solution.Factored);
        var shift = all.Select((e, j) => e - refit.ScaledEffects[j]).ToArray();
        return new(level, rows, SquaredLength(solution.Factored, shift) / (all.Length * solution.ResidualVariance), refit.FixedEffects);
    }

    /// <summary>|R_X d|², R_X the transposed factor that stands in the border.</summary>
    private static double SquaredLength(Factored factored, double[] d)
    {
        var bordered = factored.Blocks.Bordered;
        double sum = 0;
        for (var i = 0; i < d.Length; i++)
        {
            double row = 0;
            for (var j = i; j < d.Length; j++) row += factored.Border[j * bordered + i] * d[j];
            sum += row * row;
        }

        return sum;
    }
}
