using MathNet.Numerics.Statistics;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>
/// A mean offset meant to hold beyond the pictures at hand: each rider counts once, with the mean of that rider's pictures, since frames of one clip
/// are not independent of each other.
/// </summary>
/// <param name="Riders">How many riders.</param>
/// <param name="Mean">Mean over riders; NaN for none.</param>
/// <param name="Sd">Spread between riders; NaN for fewer than two.</param>
public readonly record struct Systematic(int Riders, double Mean, double Sd)
{
    /// <summary>Standard error of the mean.</summary>
    public double StandardError => Sd / Math.Sqrt(Riders);

    /// <param name="values">A rider's name and a value, one entry a picture.</param>
    public static Systematic Of(IEnumerable<(string Rider, double Value)> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var each = values.GroupBy(v => v.Rider, v => v.Value).Select(g => g.Average()).ToArray();
        return new(each.Length, each.Mean(), each.StandardDeviation());
    }
}
