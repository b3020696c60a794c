using MathNet.Numerics.Statistics;

namespace GaitSeat.Study.Linear;

/// <summary>
/// Natural cubic spline as columns: linear beyond the outer knots (Hastie, Tibshirani and Friedman 2009, The Elements of Statistical Learning, equations 5.4 and 5.5),
/// each in units of the outer knots' distance.
/// </summary>
public sealed class NaturalSpline
{
    private readonly double[] _knots;

    /// <param name="knots">Three or more, rising.</param>
    public NaturalSpline(IReadOnlyList<double> knots)
    {
        if (knots.Count < 3) throw new ArgumentException($"{knots.Count} knots; three or more are needed");
        if (knots.Zip(knots.Skip(1)).Any(k => !(k.Second > k.First))) throw new ArgumentException($"knots {string.Join(", ", knots)} do not rise; the exposure has too few different values for this many");
        _knots = [.. knots];
    }

    public IReadOnlyList<double> Knots => _knots;

    /// <summary>Columns besides the intercept: the value itself, then one per inner knot.</summary>
    public int Count => _knots.Length - 1;

    /// <summary>Knots at evenly spaced quantiles (type 7) of the data, the outer ones at 5 and 95 % for stability (Harrell 2015, Regression Modeling Strategies, section 2.4.6).</summary>
    public static NaturalSpline AtQuantiles(double[] values, int knots)
    {
        if (knots < 3) throw new ArgumentException($"{knots} knots; three or more are needed");
        return new([.. Enumerable.Range(0, knots).Select(k => values.QuantileCustom(0.05 + 0.9 * k / (knots - 1), QuantileDefinition.R7))]);
    }

    public double[] Row(double x)
    {
        var row = new double[Count];
        row[0] = x;
        for (var k = 1; k < Count; k++) row[k] = Term(x, k - 1) - Term(x, _knots.Length - 2);
        return row;
    }

    private double Term(double x, int k)
    {
        var range = _knots[^1] - _knots[0];
        return (Cube((x - _knots[k]) / range) - Cube((x - _knots[^1]) / range)) * range / (_knots[^1] - _knots[k]);
    }

    private static double Cube(double x) => x > 0 ? x * x * x : 0;
}
