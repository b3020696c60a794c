using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>How well the marker repeats: pictures marked twice, some time apart.</summary>
public sealed class MarkerRepeat
{
    private readonly List<(MarkedPicture First, MarkedPicture Second)> _pairs;

    /// <param name="pictures">All marked pictures, both passes.</param>
    public MarkerRepeat(IEnumerable<MarkedPicture> pictures)
    {
        ArgumentNullException.ThrowIfNull(pictures);
        var all = pictures.ToList();
        _pairs = [.. all.Where(p => p.Pass == 1).Join(all.Where(p => p.Pass == 2), p => p.Key, p => p.Key, (a, b) => (a, b))];
    }

    public int Pictures => _pairs.Count;

    /// <summary>From the first mark of a point to the second, for each picture that has both.</summary>
    public IReadOnlyList<Offset> Of(BodyPoint point) =>
        [.. _pairs.Where(p => p.First.RiderSpanPx is not null).Select(p => (p.First, From: p.First.Marks[point].Px, To: p.Second.Marks[point].Px)).Where(p => !p.From.IsMissing && !p.To.IsMissing).Select(p => p.First.Offset(p.From, p.To))];

    /// <summary>Second less first angle, deg.</summary>
    public IReadOnlyList<double> Of(LimbAngle angle)
    {
        ArgumentNullException.ThrowIfNull(angle);
        return [.. _pairs.Select(p => angle.Marked(p.Second) - angle.Marked(p.First)).OfType<double>().Select(d => Math.IEEERemainder(d, 360))];
    }

    /// <summary>Standard error of a single marking from differences of two: the root of half their mean square (Dahlberg's formula). NaN for none.</summary>
    public static double Sem(IReadOnlyCollection<double> differences)
    {
        ArgumentNullException.ThrowIfNull(differences);
        return differences.Count == 0 ? double.NaN : Math.Sqrt(differences.Average(d => d * d) / 2);
    }
}
