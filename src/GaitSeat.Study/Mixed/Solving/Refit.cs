namespace GaitSeat.Study.Mixed.Solving;

/// <summary>The same model on changed cells, from the θ of the first fit.</summary>
/// <param name="FixedEffects">Of the columns of X.</param>
/// <param name="ScaledEffects">Of the orthonormal columns.</param>
internal sealed record Refit(double[] FixedEffects, double[] ScaledEffects, double[] Theta, double ResidualSd, bool IsSingular)
{
    /// <summary>Nothing where the fit does not converge.</summary>
    public static Refit? Of(Solution solution, Cells cells) => Of(solution, Solver.BlocksOf(solution.Data, solution.Settings, solution.Scaling, cells));

    /// <summary>Nothing where the fit does not converge.</summary>
    public static Refit? Of(Solution solution, Blocks blocks)
    {
        var objective = new Objective(new(blocks), solution.Settings.Criterion);
        var minimum = Newton.Minimise(objective.At, Start(solution), solution.Settings.MaxIterations);
        return minimum.Converged ? At(solution, objective, minimum.X) : null;
    }

    /// <summary>The same θ on changed cells; nothing where the cells do not fix the fixed effects.</summary>
    public static Refit? Held(Solution solution, Blocks blocks) => At(solution, new(new(blocks), solution.Settings.Criterion), solution.Theta);

    private static Refit? At(Solution solution, Objective objective, double[] theta)
    {
        if (!double.IsFinite(objective.At(theta))) return null;
        var factored = objective.Factored;
        var singular = factored.Lambdas.Select((l, t) => Singularity.Of(l, solution.Scaling.Slopes[t].Width, solution.Settings.SingularShare)).Any(s => s);
        var sd = solution.Scaling.OutcomeScale * Math.Sqrt(factored.PenalisedSumSquares / objective.DegreesOfFreedom);
        return new(solution.FixedEffects(factored), FixedPart.Effects(factored), theta, sd, singular);
    }

    /// <summary>Exactly zero variance is a stationary point whatever the data: start beside it.</summary>
    private static double[] Start(Solution solution)
    {
        var beside = RelativeFactor.Diagonal(solution.Scaling, [.. solution.Scaling.Slopes.Select(_ => 0.02)]);
        return [.. solution.Theta.Select((v, i) => beside[i] > 0 && Math.Abs(v) < beside[i] ? beside[i] : v)];
    }
}
