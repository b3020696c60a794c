using GaitSeat.Study.Linear;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// Draws new outcomes from a fitted model as cross products: given the columns of a cell, its sums with the outcome are normal and what is left of the sum of squares is χ²,
/// so that the draw is exact and costs by the cell, not by the row. Random effects are drawn anew.
/// </summary>
internal sealed class Redraw
{
    private readonly Solution _solution;
    private readonly double[] _fixed;
    private readonly double _sd;
    private readonly List<(Cell Cell, SemiCholesky Root)> _cells;

    public Redraw(Solution solution)
    {
        _solution = solution;
        _fixed = FixedPart.Effects(solution.Factored);
        _sd = Math.Sqrt(solution.ResidualVariance);
        var cells = solution.Factored.Blocks.Cells;
        _cells = [.. cells.List.Select(c => (c, SemiCholesky.Of(c.Gram, cells.Width, cells.Width - 1)))];
    }

    public Cells Next(Random random)
    {
        var effects = _solution.Data.Random.Select((t, i) => t.Groups.Levels.Select(_ => Effect(i, random)).ToArray()).ToArray();
        var width = _solution.Factored.Blocks.Cells.Width;
        return new([.. _cells.Select(c => Draw(c.Cell, c.Root, [.. c.Cell.Levels.SelectMany((l, t) => effects[t][l]), .. _fixed], width, random))], width);
    }

    private double[] Effect(int term, Random random)
    {
        var width = _solution.Scaling.Slopes[term].Width;
        var lambda = _solution.Factored.Lambdas[term];
        var z = Normals(width, random);
        return [.. Enumerable.Range(0, width).Select(i => _sd * Enumerable.Range(0, i + 1).Sum(j => lambda[i * width + j] * z[j]))];
    }

    private Cell Draw(Cell cell, SemiCholesky root, double[] coefficients, int width, Random random)
    {
        var gram = (double[])cell.Gram.Clone();
        var last = width - 1;
        var z = Normals(root.Rank, random);
        var noise = root.Times(z);
        double mean = 0, cross = 0;
        for (var a = 0; a < last; a++)
        {
            double product = 0;
            for (var b = 0; b < last; b++) product += (a >= b ? gram[a * width + b] : gram[b * width + a]) * coefficients[b];
            gram[last * width + a] = product + _sd * noise[a];
            mean += product * coefficients[a];
            cross += 2 * _sd * noise[a] * coefficients[a];
        }

        var free = cell.Rows - root.Rank;
        gram[last * width + last] = mean + cross + _sd * _sd * (Dense.Dot(z, z) + (free > 0 ? ChiSquared.Sample(random, free) : 0));
        return new(cell.Levels, gram) { Rows = cell.Rows, SumLogWeight = cell.SumLogWeight };
    }

    private static double[] Normals(int count, Random random)
    {
        var z = new double[count];
        Normal.Samples(random, z, 0, 1);
        return z;
    }
}
