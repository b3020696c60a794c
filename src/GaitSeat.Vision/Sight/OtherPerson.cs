using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>One person who is not the rider, for hiding their head: the boxes given are rather too large than too small.</summary>
/// <param name="TimeSeconds">Times at which the person was seen, s, increasing; at least one.</param>
/// <param name="Boxes">Where, one a time, px.</param>
/// <param name="Held">From when to when the person is taken to be there: one look further at either end.</param>
/// <param name="StepSeconds">Time between two looks, s: how far before and after a moment the place is looked up.</param>
public sealed record OtherPerson(double[] TimeSeconds, BoxPx[] Boxes, TimeSpanSeconds Held, double StepSeconds)
{
    // The detector's boxes tremble by a few percent and cut into a head now and then; a tenth on every side covers it (by eye).
    private const double Padding = 1.2;

    /// <summary>
    /// Where the person may be: the box a look before and a look after, each as wide as both, so that a person the camera pans across, or one
    /// on either side of a cut, is covered all the way. Empty when the person is not there.
    /// </summary>
    public IEnumerable<BoxPx> At(double timeSeconds)
    {
        if (!Held.Contains(timeSeconds)) yield break;
        var (early, late) = Ends(timeSeconds);
        double left = Math.Min(early.X, late.X), width = Math.Max(early.Right, late.Right) - left;
        yield return (early with { X = left, Width = width }).Scaled(Padding);
        if (early != late) yield return (late with { X = left, Width = width }).Scaled(Padding);
    }

    // Past the first or last sight: from where the person was seen to where the last movement leads.
    private (BoxPx Early, BoxPx Late) Ends(double time)
    {
        if (time <= TimeSeconds[0]) return (Place(0, time), Boxes[0]);
        if (time >= TimeSeconds[^1]) return (Boxes[^1], Place(Boxes.Length - 2, time));
        var next = Array.FindIndex(TimeSeconds, t => t > time);
        var (from, to) = (TimeSeconds[next - 1], TimeSeconds[next]);
        return (Place(next - 1, Math.Max(from, time - StepSeconds)), Place(next - 1, Math.Min(to, time + StepSeconds)));
    }

    /// <summary>On the straight line through a sight and the one after it; the only box of a person seen once.</summary>
    private BoxPx Place(int sight, double time)
    {
        if (Boxes.Length == 1) return Boxes[0];
        var (a, b) = (Boxes[sight], Boxes[sight + 1]);
        var share = (time - TimeSeconds[sight]) / (TimeSeconds[sight + 1] - TimeSeconds[sight]);
        double Mix(double from, double to) => from + share * (to - from);
        return new(Mix(a.X, b.X), Mix(a.Y, b.Y), Math.Max(1, Mix(a.Width, b.Width)), Math.Max(1, Mix(a.Height, b.Height)));
    }
}
