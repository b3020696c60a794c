using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Fills in the horse where the detector missed it under a rider it saw.</summary>
public static class HorsePlace
{
    /// <summary>
    /// The horse's box in units of the rider's (offset and size over rider height), median over the looks that have both, put under
    /// every rider without one.
    /// </summary>
    public static BoxPx?[] Fill(BoxPx?[] rider, BoxPx?[] horse)
    {
        ArgumentNullException.ThrowIfNull(rider);
        ArgumentNullException.ThrowIfNull(horse);
        var both = Enumerable.Range(0, rider.Length).Where(i => rider[i] is not null && horse[i] is not null).ToList();
        if (both.Count == 0) return horse;
        double x = Median(i => (horse[i]!.Value.Centre.X - rider[i]!.Value.Centre.X) / rider[i]!.Value.Height);
        double y = Median(i => (horse[i]!.Value.Y - rider[i]!.Value.Y) / rider[i]!.Value.Height);
        double w = Median(i => horse[i]!.Value.Width / rider[i]!.Value.Height);
        double h = Median(i => horse[i]!.Value.Height / rider[i]!.Value.Height);
        return [.. horse.Select((seen, i) => seen ?? Under(rider[i]))];

        BoxPx? Under(BoxPx? box) =>
            box is { } r ? new BoxPx(r.Centre.X + (x - w / 2) * r.Height, r.Y + y * r.Height, w * r.Height, h * r.Height) : null;

        double Median(Func<int, double> of)
        {
            var v = both.Select(of).Order().ToArray();
            return (v[(v.Length - 1) / 2] + v[v.Length / 2]) / 2;
        }
    }
}
