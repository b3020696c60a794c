using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;

namespace GaitSeat.Study.DoseResponse;

/// <summary>From a question's rows to the columns of a mixed model, and back from an exposure to a row of them.</summary>
public sealed class DoseDesign
{
    private readonly NaturalSpline? _spline;
    private readonly DoseSettings _settings;
    private readonly int _fixedCount;

    private DoseDesign(DoseData data, DoseSettings settings)
    {
        _settings = settings;
        Check(data, settings);
        var riders = Grouping.Of("rider", data.Riders);
        RiderMeans = Means(data.Exposure.Values, riders);
        Center = Moments.Of(data.Exposure.Values).Mean;
        var within = settings.Comparison == DoseComparison.WithinRider;
        var moved = data.Exposure.Values.Select((x, i) => x - (within ? RiderMeans[riders.LevelOf[i]] : Center)).ToArray();
        if (moved.All(m => Math.Abs(m) <= 1e-9 * Math.Max(1, Math.Abs(Center))))
            throw new StudyException(StudyProblem.Collinear, $"exposure '{data.Exposure.Name}' does not change{(within ? " within any rider; a comparison within riders needs riders seen at two lengths or more" : "")}");
        if (settings.Shape == DoseShape.Spline) _spline = NaturalSpline.AtQuantiles(moved, settings.Knots);
        Mixed = Build(data, riders, moved, within);
        _fixedCount = Mixed.Fixed.Count;
    }

    public MixedData Mixed { get; }

    /// <summary>Mean of the exposure over all rows.</summary>
    public double Center { get; }

    /// <summary>Mean of the exposure of each rider, in the order of the rider levels.</summary>
    public double[] RiderMeans { get; }

    public static DoseDesign Of(DoseData data, DoseSettings settings) => new(data, settings);

    /// <summary>The effect of going from one exposure to another; within riders, of a rider whose mean is that of all.</summary>
    public Contrast Effect(string name, double from, double to)
    {
        var (a, b) = (FixedRow(from), FixedRow(to));
        return new(name, [.. b.Select((v, j) => v - a[j])]);
    }

    /// <summary>A row of the fixed columns at an exposure, all that is adjusted for at its mean.</summary>
    public double[] FixedRow(double exposure) => FixedRow(exposure - Center, 0);

    /// <summary>The mean against the exposure.</summary>
    public IReadOnlyList<Predicted> Curve(MixedFit fit, IReadOnlyList<double> exposures) => [.. exposures.Select(x => Prediction.Population(fit, FixedRow(x)))];

    /// <summary>One rider's own mean against the exposure, drawn toward that of all by as much as the rider's rows tell little.</summary>
    /// <param name="rider">Index among the levels of the first grouping factor.</param>
    public IReadOnlyList<Predicted> RiderCurve(MixedFit fit, int rider, IReadOnlyList<double> exposures)
    {
        var within = _settings.Comparison == DoseComparison.WithinRider;
        return [.. exposures.Select(x =>
        {
            var moved = x - (within ? RiderMeans[rider] : Center);
            return Prediction.Level(fit, FixedRow(moved, within ? RiderMeans[rider] - Center : 0), 0, rider, _settings.RandomSlope ? [1, moved] : [1]);
        })];
    }

    /// <summary>The effect in one rider of a step from the rider's mean (within riders) or from the mean of all.</summary>
    /// <param name="rider">Index among the levels of the first grouping factor.</param>
    public Predicted RiderEffect(MixedFit fit, int rider, double step)
    {
        var (from, to) = (FixedRow(0, 0), FixedRow(step, 0));
        return Prediction.Level(fit, [.. to.Select((v, j) => v - from[j])], 0, rider, _settings.RandomSlope ? [0, step] : [0]);
    }

    private double[] FixedRow(double moved, double riderMean)
    {
        var row = new double[_fixedCount];
        row[0] = 1;
        var basis = Basis(moved);
        basis.CopyTo(row, 1);
        if (_settings.Comparison == DoseComparison.WithinRider && Mixed.Fixed.Count > basis.Length + 1) row[basis.Length + 1] = riderMean;
        return row;
    }

    private double[] Basis(double moved) => _settings.Shape switch
    {
        DoseShape.Linear => [moved],
        DoseShape.Quadratic => [moved, moved * moved],
        _ => _spline!.Row(moved),
    };

    private MixedData Build(DoseData data, Grouping riders, double[] moved, bool within)
    {
        var intercept = DesignColumn.Intercept(moved.Length);
        var slope = new DesignColumn(data.Exposure.Name, moved);
        var rows = Array.ConvertAll(moved, Basis);
        List<DesignColumn> columns = [intercept, slope];
        for (var k = 1; k < rows[0].Length; k++) columns.Add(new($"{data.Exposure.Name} ({_settings.Shape.ToString().ToLowerInvariant()} {k + 1})", [.. rows.Select(r => r[k])]));
        if (within) columns.Add(new($"{data.Exposure.Name}, mean of the rider", [.. riders.LevelOf.Select(l => RiderMeans[l] - Center)]));
        foreach (var column in data.Adjustment) columns.Add(column with { Values = Centred(column.Values) });
        List<RandomTerm> random = [new(riders, _settings.RandomSlope ? [intercept, slope] : [intercept])];
        if (_settings.Horse != HorseRole.None)
        {
            var horses = Grouping.Of("horse", data.Horses!);
            random.Add(new(_settings.Horse == HorseRole.Nested ? horses.Within(riders) : horses, [intercept]));
        }

        if (_settings.Session && data.Sessions is not null) random.Add(new(Grouping.Of("session", data.Sessions).Within(riders), [intercept]));
        return new() { Outcome = data.Outcome, Fixed = columns, Random = random, MeasurementVariance = data.MeasurementVariance, Weights = data.Weights };
    }

    private static double[] Centred(double[] values)
    {
        var mean = Moments.Of(values).Mean;
        return Array.ConvertAll(values, v => v - mean);
    }

    private static double[] Means(double[] values, Grouping groups)
    {
        var sums = new double[groups.Levels.Count];
        var counts = new int[groups.Levels.Count];
        for (var i = 0; i < values.Length; i++)
        {
            sums[groups.LevelOf[i]] += values[i];
            counts[groups.LevelOf[i]]++;
        }

        return [.. sums.Select((s, l) => s / counts[l])];
    }

    private static void Check(DoseData data, DoseSettings settings)
    {
        if (data.Outcome.Length == 0) throw new StudyException(StudyProblem.TooFewRows, "no rows are left; loosen the filters");
        DataCheck.SameLength(data.Outcome.Length, [data.Exposure, .. data.Adjustment]);
        DataCheck.SameLength(data.Outcome.Length, "rider", data.Riders.Length);
        if (data.Sessions is not null) DataCheck.SameLength(data.Outcome.Length, "session", data.Sessions.Length);
        if (settings.Horse == HorseRole.None) return;
        if (data.Horses is null) throw new StudyException(StudyProblem.BadData, "the model has horses, and no horse is given; give the horse of each row, or set horse to none");
        DataCheck.SameLength(data.Outcome.Length, "horse", data.Horses.Length);
    }
}
