using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed;

/// <summary>Random effects of one grouping factor: one coefficient per column and level, freely correlated within a level.</summary>
/// <param name="Groups">The factor.</param>
/// <param name="Columns">Columns with a coefficient of their own in each level; <see cref="DesignColumn.Intercept"/> first for a random intercept.</param>
public sealed record RandomTerm(Grouping Groups, IReadOnlyList<DesignColumn> Columns);

/// <summary>Rows for a linear mixed model y = X β + Z b + e.</summary>
public sealed record MixedData
{
    public required double[] Outcome { get; init; }

    /// <summary>Columns of X.</summary>
    public required IReadOnlyList<DesignColumn> Fixed { get; init; }

    /// <summary>One or more grouping factors, nested or crossed as their levels say.</summary>
    public required IReadOnlyList<RandomTerm> Random { get; init; }

    /// <summary>Var(e) = σ² / weight, as in lme4. Not together with <see cref="MeasurementVariance"/>.</summary>
    public double[]? Weights { get; init; }

    /// <summary>Known variance s² with which each outcome was measured: Var(e) = σ² + s², in the outcome's unit squared.</summary>
    public double[]? MeasurementVariance { get; init; }

    public int Rows => Outcome.Length;

    /// <summary>The same model on the rows for which <paramref name="keep"/> holds; levels keep their numbers.</summary>
    public MixedData Where(Func<int, bool> keep)
    {
        var rows = Enumerable.Range(0, Rows).Where(keep).ToArray();
        return this with
        {
            Outcome = Take(Outcome, rows), Fixed = Take(Fixed, rows), Weights = Weights is null ? null : Take(Weights, rows),
            MeasurementVariance = MeasurementVariance is null ? null : Take(MeasurementVariance, rows),
            Random = [.. Random.Select(t => new RandomTerm(t.Groups with { LevelOf = [.. rows.Select(r => t.Groups.LevelOf[r])] }, Take(t.Columns, rows)))],
        };
    }

    private static double[] Take(double[] values, int[] rows) => [.. rows.Select(r => values[r])];

    private static DesignColumn[] Take(IReadOnlyList<DesignColumn> columns, int[] rows) => [.. columns.Select(c => c with { Values = Take(c.Values, rows) })];
}
