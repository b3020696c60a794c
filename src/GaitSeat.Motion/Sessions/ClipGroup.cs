using GaitSeat.Model;

namespace GaitSeat.Motion.Sessions;

/// <summary>The strides of one side of a comparison, clip by clip.</summary>
internal sealed class ClipGroup
{
    private readonly (double Mean, int Count, double SquaresWithin)[] _clips;

    private ClipGroup(SessionStride[] strides, StrideMeasure measure)
    {
        Strides = strides.Length;
        SeenFromRight = strides.Length == 0 ? 0 : strides.Count(s => s.Stride.Facing == Facing.Right) / (double)strides.Length;
        _clips = [.. strides.GroupBy(s => s.Clip).OrderBy(g => g.Key).Select(g => Figures([.. g.Select(s => s.Stride.Measures[measure].Value)]))];
    }

    public int Strides { get; }

    public int Clips => _clips.Length;

    /// <summary>Share of the strides that show the rider's right side.</summary>
    public double SeenFromRight { get; }

    public static ClipGroup Of(IEnumerable<SessionStride> strides, StrideMeasure measure) => new([.. strides], measure);

    public static double Rms(SessionStride[] strides, StrideMeasure measure)
    {
        var squares = strides.Select(s => s.Stride.Measures[measure].StandardError).Where(double.IsFinite).Select(se => se * se).ToArray();
        return squares.Length == 0 ? 0 : Math.Sqrt(squares.Average());
    }

    /// <summary>Variance from stride to stride within a clip, together with what is expected of it.</summary>
    public static double Scatter(IReadOnlyList<ClipGroup> groups, double prior, double weight)
    {
        double squares = weight * prior, free = weight;
        foreach (var (_, count, within) in groups.SelectMany(g => g._clips))
        {
            squares += within;
            free += count - 1;
        }

        return squares / free;
    }

    /// <summary>How much farther clips of one side lie apart than expected, as variance; 1 or more.</summary>
    public static double Wander(IReadOnlyList<ClipGroup> groups, double scatter, double steady, double weight)
    {
        double sum = weight, free = weight;
        foreach (var group in groups)
        {
            var mean = group.Mean(scatter, steady).Value;
            sum += group._clips.Sum(c => (c.Mean - mean) * (c.Mean - mean) / (steady + scatter / c.Count));
            free += group.Clips - 1;
        }

        return Math.Max(1, sum / free);
    }

    /// <summary>Mean over clips, each by what it can tell.</summary>
    public Measured Mean(double scatter, double steady)
    {
        double sum = 0, weight = 0;
        foreach (var (mean, count, _) in _clips)
        {
            var w = 1 / (steady + scatter / count);
            sum += w * mean;
            weight += w;
        }

        return new(sum / weight, Math.Sqrt(1 / weight));
    }

    private static (double Mean, int Count, double SquaresWithin) Figures(double[] values)
    {
        var mean = values.Average();
        return (mean, values.Length, values.Sum(v => (v - mean) * (v - mean)));
    }
}
