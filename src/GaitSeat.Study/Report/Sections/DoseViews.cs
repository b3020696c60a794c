using GaitSeat.Study.Answers;
using GaitSeat.Study.Definition;
using GaitSeat.Study.DoseResponse;
using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;
using GaitSeat.Study.Plots.Studies;

namespace GaitSeat.Study.Report.Sections;

/// <summary>What the pictures of a dose–response answer show. Within riders, each rider is moved to the mean of all, so that what is seen is what is asked.</summary>
internal sealed class DoseViews
{
    private const int CurvePoints = 61, MostStrides = 2000, MostMeans = 2000, MostRiders = 200, Stretches = 6, MostLengths = 12;
    private readonly DoseAnswer _answer;
    private readonly bool _within;
    private readonly Grouping _riders;
    private readonly double[] _outcomeMeans;
    private readonly double _atCenter;

    public DoseViews(DoseAnswer answer, StudySettings study)
    {
        (_answer, _within) = (answer, study.Dose.Comparison == DoseComparison.WithinRider);
        _riders = Grouping.Of("rider", answer.Data.Riders);
        _outcomeMeans = [.. ByRider().Select(r => r.Average(i => answer.Data.Outcome[i]))];
        _atCenter = answer.Design.Curve(answer.Fit, [answer.Design.Center])[0].Value;
    }

    /// <summary>The mean over the exposures within 2.5 % of either end.</summary>
    public Band Curve()
    {
        double[] moved = [.. Enumerable.Range(0, _answer.Data.Outcome.Length).Select(X).Order()];
        var (low, high) = (moved[(int)(0.025 * (moved.Length - 1))], moved[(int)Math.Ceiling(0.975 * (moved.Length - 1))]);
        var x = Grid(low, high, CurvePoints);
        var curve = _answer.Design.Curve(_answer.Fit, x);
        var spread = StudentQuantile.TwoSided(_answer.Wald.DegreesOfFreedom, 0.95);
        return new(x, [.. curve.Select(c => c.Value)], [.. curve.Select(c => c.Value - spread * c.StandardError)], [.. curve.Select(c => c.Value + spread * c.StandardError)]);
    }

    public IReadOnlyList<(double X, double Y)> Strides() => Thin([.. Enumerable.Range(0, _answer.Data.Outcome.Length).Select(i => (X(i), Y(i)))], MostStrides);

    /// <summary>Means moved like the strides.</summary>
    public IReadOnlyList<(double X, double Y)> Means() => Thin(MeansOf(X, Y), MostMeans);

    /// <summary>Means where they were measured.</summary>
    public IReadOnlyList<(double X, double Y)> MeansAsMeasured() => Thin(MeansOf(i => _answer.Data.Exposure.Values[i], i => _answer.Data.Outcome[i]), MostMeans);

    /// <summary>Each rider's own line over the rider's own lengths.</summary>
    public IReadOnlyList<(double[] X, double[] Y)> RiderLines() => Thin([.. ByRider().Select((rows, r) =>
    {
        var x = Grid(rows.Min(i => _answer.Data.Exposure.Values[i]), rows.Max(i => _answer.Data.Exposure.Values[i]), CurvePoints / 3);
        return (x, (double[])[.. _answer.Design.RiderCurve(_answer.Fit, r, x).Select(p => p.Value)]);
    })], MostRiders);

    /// <summary>The effect of the step in each rider, from least to most, and that of all.</summary>
    public IReadOnlyList<IntervalRow> RiderEffects(double step) =>
    [
        .. _riders.Levels.Select((name, r) => (name, Effect: _answer.Design.RiderEffect(_answer.Fit, r, step))).OrderBy(e => e.Effect.Value).ThenBy(e => e.name, StringComparer.Ordinal)
            .Select(e => new IntervalRow(e.name, e.Effect.Value, e.Effect.Value - 1.96 * e.Effect.StandardError, e.Effect.Value + 1.96 * e.Effect.StandardError)),
        new("all riders", _answer.Effect.Estimate, _answer.Effect.Low, _answer.Effect.High, Stands: true),
    ];

    private double X(int row) => _answer.Data.Exposure.Values[row] - (_within ? _answer.Design.RiderMeans[_riders.LevelOf[row]] - _answer.Design.Center : 0);

    private double Y(int row) => _answer.Data.Outcome[row] - (_within ? _outcomeMeans[_riders.LevelOf[row]] - _atCenter : 0);

    private int[][] ByRider()
    {
        var rows = _riders.Levels.Select(_ => new List<int>()).ToArray();
        for (var i = 0; i < _riders.LevelOf.Length; i++) rows[_riders.LevelOf[i]].Add(i);
        return [.. rows.Select(r => r.ToArray())];
    }

    private IReadOnlyList<(double X, double Y)> MeansOf(Func<int, double> x, Func<int, double> y) =>
        [.. ByRider().SelectMany(rows => Groups(rows)).Select(g => (g.Average(x), g.Average(y)))];

    /// <summary>By session where there are any, else by length, else by stretches of the rider's lengths.</summary>
    private IEnumerable<IReadOnlyList<int>> Groups(int[] rows)
    {
        if (_answer.Data.Sessions is { } sessions) return rows.GroupBy(i => sessions[i]).Select(g => g.ToArray());
        var exposure = _answer.Data.Exposure.Values;
        if (rows.Select(i => exposure[i]).Distinct().Count() <= MostLengths) return rows.GroupBy(i => exposure[i]).Select(g => g.ToArray());
        var (low, high) = (rows.Min(i => exposure[i]), rows.Max(i => exposure[i]));
        return rows.GroupBy(i => Math.Min(Stretches - 1, (int)(Stretches * (exposure[i] - low) / (high - low)))).Select(g => g.ToArray());
    }

    private static double[] Grid(double low, double high, int points) => [.. Enumerable.Range(0, points).Select(k => low + (high - low) * k / (points - 1))];

    /// <summary>Every so many, so that a picture of a large season can still be drawn.</summary>
    private static IReadOnlyList<T> Thin<T>(IReadOnlyList<T> items, int most) =>
        items.Count <= most ? items : [.. Enumerable.Range(0, most).Select(k => items[(int)((long)k * items.Count / most)])];
}
