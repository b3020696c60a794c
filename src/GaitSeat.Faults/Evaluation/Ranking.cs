namespace GaitSeat.Faults.Evaluation;

/// <summary>A point of a curve over falling thresholds.</summary>
/// <param name="Threshold">Spells of this probability and above are flagged.</param>
public readonly record struct CurvePoint(double Threshold, double Precision, double Recall, double FalsePositiveRate);

/// <summary>
/// Spells by falling probability; those of equal probability are one step. Weights say how often a spell counts, so that a bootstrap sorts once.
/// </summary>
public sealed class Ranking
{
    private readonly int[] _order;
    private readonly double[] _scores;
    private readonly bool[] _isThere;

    public Ranking(IReadOnlyList<double> scores, IReadOnlyList<bool> isThere)
    {
        ArgumentNullException.ThrowIfNull(scores);
        ArgumentNullException.ThrowIfNull(isThere);
        ArgumentOutOfRangeException.ThrowIfNotEqual(isThere.Count, scores.Count);
        if (scores.Any(double.IsNaN)) throw new ArgumentException("A score is not a number.", nameof(scores));
        (_scores, _isThere) = ([.. scores], [.. isThere]);
        _order = [.. Enumerable.Range(0, scores.Count).OrderByDescending(i => scores[i]).ThenBy(i => i)];
    }

    /// <summary>Sum over the steps of precision times the gain in recall, without interpolation; NaN where no spell has the fault.</summary>
    public double AveragePrecision(ReadOnlySpan<int> weights = default)
    {
        double average = 0, before = 0, there = 0, all = 0;
        for (var i = 0; i < _order.Length; i++)
        {
            var weight = WeightOf(weights, _order[i]);
            all += weight;
            if (_isThere[_order[i]]) there += weight;
            if (!EndsStep(i) || there == before) continue;
            average += (there - before) * there / all;
            before = there;
        }

        return there > 0 ? average / there : double.NaN;
    }

    /// <summary>Area under the receiver operating characteristic, ties counted half; NaN where one answer is absent.</summary>
    public double RocArea(ReadOnlySpan<int> weights = default)
    {
        double area = 0, there = 0, not = 0, thereBefore = 0, notBefore = 0;
        for (var i = 0; i < _order.Length; i++)
        {
            var weight = WeightOf(weights, _order[i]);
            if (_isThere[_order[i]]) there += weight;
            else not += weight;
            if (!EndsStep(i)) continue;
            area += (not - notBefore) * (there + thereBefore) / 2;
            (thereBefore, notBefore) = (there, not);
        }

        return there > 0 && not > 0 ? area / (there * not) : double.NaN;
    }

    /// <summary>Share with the fault among the first; a step that only partly fits counts in proportion. NaN where nothing is asked for or there.</summary>
    public double PrecisionAt(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        double taken = 0, there = 0;
        for (var i = 0; i < _order.Length && taken < count;)
        {
            var end = i;
            while (!EndsStep(end)) end++;
            var size = end - i + 1;
            var share = Math.Min(1, (count - taken) / size);
            there += share * _order[i..(end + 1)].Count(k => _isThere[k]);
            taken += share * size;
            i = end + 1;
        }

        return taken > 0 ? there / taken : double.NaN;
    }

    /// <summary>One point a step.</summary>
    public IReadOnlyList<CurvePoint> Curve()
    {
        var points = new List<CurvePoint>();
        double allThere = _isThere.Count(t => t), allNot = _isThere.Length - allThere, there = 0;
        for (var i = 0; i < _order.Length; i++)
        {
            if (_isThere[_order[i]]) there++;
            if (EndsStep(i)) points.Add(new(_scores[_order[i]], there / (i + 1), there / allThere, (i + 1 - there) / allNot));
        }

        return points;
    }

    private bool EndsStep(int i) => i == _order.Length - 1 || _scores[_order[i]] != _scores[_order[i + 1]];

    private static int WeightOf(ReadOnlySpan<int> weights, int i) => weights.IsEmpty ? 1 : weights[i];
}
