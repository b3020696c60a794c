using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Mean and spread of one measure over the strides of a spell.</summary>
/// <param name="Mean">Mean of the strides that have a value; NaN where none has.</param>
/// <param name="Sd">Sample standard deviation (n - 1); NaN below two values.</param>
/// <param name="CvPct">Standard deviation over the size of the mean, percent; NaN where the mean is 0 or there is no deviation.</param>
public readonly record struct Spread(double Mean, double Sd, double CvPct);

/// <summary>The per-spell figures of the stride measures.</summary>
public sealed class SpellSummary
{
    private const double Percent = 100;
    private readonly Spread[] _spreads;

    private SpellSummary(Spread[] spreads) => _spreads = spreads;

    public Spread this[StrideMeasure measure] => _spreads[(int)measure];

    /// <summary>Summarises the strides of one spell; missing values are passed over, each measure by itself.</summary>
    public static SpellSummary Of(IReadOnlyList<Stride> strides)
    {
        ArgumentNullException.ThrowIfNull(strides);
        return new([.. MeasureCatalogue.All.Select(m =>
            SpreadOf([.. strides.Select(s => s.Measures[m.Measure].Value).Where(double.IsFinite)]))]);
    }

    /// <summary>Mean, sample standard deviation and coefficient of variation of finite values, in two passes for exactness.</summary>
    public static Spread SpreadOf(ReadOnlySpan<double> values)
    {
        if (values.IsEmpty) return new(double.NaN, double.NaN, double.NaN);
        double sum = 0;
        foreach (var v in values) sum += v;
        var mean = sum / values.Length;
        if (values.Length < 2) return new(mean, double.NaN, double.NaN);
        double squares = 0;
        foreach (var v in values) squares += (v - mean) * (v - mean);
        var sd = Math.Sqrt(squares / (values.Length - 1));
        return new(mean, sd, mean == 0 ? double.NaN : Percent * sd / Math.Abs(mean));
    }
}
