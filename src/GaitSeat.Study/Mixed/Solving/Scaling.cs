using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// The model in well-conditioned units: X orthonormalised, random slopes centred and scaled (which an unrestricted covariance within a level allows),
/// the outcome replaced by its least-squares residual with mean square one. Columns stand in the order random terms, fixed, outcome.
/// </summary>
internal sealed class Scaling
{
    public Scaling(MixedData data)
    {
        Basis = OrthonormalBasis.Of(data.Fixed);
        var residual = (double[])data.Outcome.Clone();
        var size = Math.Sqrt(Dense.Dot(residual, residual));
        LeastSquares = Basis.TakeOut(residual);
        OutcomeScale = Math.Sqrt(Dense.Dot(residual, residual) / residual.Length);
        // Rounding alone leaves about 1e-16 of the outcome; no spread is left to share out.
        if (!(OutcomeScale * Math.Sqrt(residual.Length) > 1e-12 * size))
            throw new StudyException(StudyProblem.BadData, "the outcome is an exact combination of the fixed effects; there is no spread to model");
        for (var i = 0; i < residual.Length; i++) residual[i] /= OutcomeScale;
        Slopes = [.. data.Random.Select(t => new SlopeScaling(t))];
        Columns = [.. Slopes.SelectMany(s => s.Columns), .. Basis.Q, residual];
        TermStarts = [.. Slopes.Select((_, t) => Slopes.Take(t).Sum(s => s.Width))];
    }

    public OrthonormalBasis Basis { get; }

    /// <summary>Coordinates of the least-squares fit in <see cref="Basis"/>.</summary>
    public double[] LeastSquares { get; }

    public double OutcomeScale { get; }

    public SlopeScaling[] Slopes { get; }

    public double[][] Columns { get; }

    public int[] TermStarts { get; }

    public int FixedStart => Columns.Length - 1 - Basis.Columns;

    public int FixedCount => Basis.Columns;
}
