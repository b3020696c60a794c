using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Linear;

/// <summary>One-way analysis of variance; group sizes may differ.</summary>
public sealed record OneWayAnova(double BetweenSumSquares, int BetweenDf, double WithinSumSquares, int WithinDf)
{
    public double BetweenMeanSquare => BetweenSumSquares / BetweenDf;

    public double WithinMeanSquare => WithinSumSquares / WithinDf;

    public double F => BetweenMeanSquare / WithinMeanSquare;

    public double PValue => 1 - FisherSnedecor.CDF(BetweenDf, WithinDf, F);

    public double RSquared => BetweenSumSquares / (BetweenSumSquares + WithinSumSquares);

    public double ResidualSd => Math.Sqrt(WithinMeanSquare);

    /// <exception cref="StudyException">Fewer than two groups, or no group with two values.</exception>
    public static OneWayAnova Of(IReadOnlyList<double[]> groups)
    {
        if (groups.Count < 2) throw new StudyException(StudyProblem.OneLevel, $"{groups.Count} group; two or more are needed");
        var all = Moments.Of(groups.SelectMany(g => g).ToArray());
        var moments = groups.Select(g => Moments.Of(g)).ToArray();
        if (moments.Any(m => m.Count == 0)) throw new StudyException(StudyProblem.TooFewRows, "a group without values; leave it out");
        if (all.Count <= groups.Count) throw new StudyException(StudyProblem.TooFewRows, "one value per group; some group needs two or more");
        return new(
            moments.Sum(m => m.Count * (m.Mean - all.Mean) * (m.Mean - all.Mean)), groups.Count - 1,
            moments.Sum(m => m.SumSquares), all.Count - groups.Count);
    }
}
