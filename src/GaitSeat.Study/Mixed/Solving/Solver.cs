using System.Globalization;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>From rows to a solution.</summary>
internal static class Solver
{
    /// <summary>Below this a standard deviation is tried at exactly zero.</summary>
    private const double NearZero = 1e-2;

    public static Solution Solve(MixedData data, MixedSettings settings)
    {
        MixedCheck.Of(data);
        var scaling = new Scaling(data);
        var rows = new PackedRows(scaling, CellIndex.Of(data.Random));
        return data.MeasurementVariance is { } variances
            ? new KnownErrorSolver(data, settings, scaling, rows, variances).Solve()
            : Solve(data, settings, scaling, rows.Sum(data.Weights));
    }

    public static Blocks BlocksOf(MixedData data, MixedSettings settings, Scaling scaling, Cells cells) =>
        new(scaling, cells, [.. data.Random.Select(t => t.Groups.Levels.Count)], settings.MaxCrossedEntries);

    /// <summary>An optimum from a given θ.</summary>
    /// <exception cref="StudyException">No optimum was reached.</exception>
    public static Minimum Minimise(Objective objective, double[] start, MixedSettings settings)
    {
        var minimum = Newton.Minimise(objective.At, start, settings.MaxIterations);
        if (!minimum.Converged) throw NotConverged(minimum);
        return Tidy(objective, minimum);
    }

    public static StudyException NotConverged(Minimum minimum) => new(
        StudyProblem.NoConvergence,
        string.Create(CultureInfo.InvariantCulture, $"the mixed model did not converge in {minimum.Iterations} steps (criterion {minimum.Value:G8}, still to fall by about {minimum.Decrement / 2:G3}); usual causes: no spread left within the levels, or more random effects than the rows can tell apart. Drop the random slope, or look at the data"));

    private static Solution Solve(MixedData data, MixedSettings settings, Scaling scaling, Cells cells)
    {
        var factored = new Factored(BlocksOf(data, settings, scaling, cells));
        var objective = new Objective(factored, settings.Criterion);
        var minimum = Minimise(objective, Start.Of(scaling, objective.At), settings);
        return new(data, settings, scaling, factored, minimum, factored.PenalisedSumSquares / objective.DegreesOfFreedom, ResidualAtBound: false);
    }

    /// <summary>Diagonals of Λ not negative; a size that is zero but for rounding is zero. Leaves the system factored at the result.</summary>
    public static Minimum Tidy(Objective objective, Minimum minimum)
    {
        var scaling = objective.Factored.Blocks.Scaling;
        var x = Signs.Turn(scaling, minimum.X);
        for (var i = 0; i < x.Length; i++)
        {
            if (Math.Abs(x[i]) > NearZero) continue;
            var zeroed = (double[])x.Clone();
            zeroed[i] = 0;
            if (objective.At(zeroed) <= minimum.Value + 1e-9) x = zeroed;
        }

        return minimum with { X = x, Value = objective.At(x) };
    }
}
