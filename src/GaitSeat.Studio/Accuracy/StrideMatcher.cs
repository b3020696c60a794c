using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>A measured stride and the true one it stands for.</summary>
public readonly record struct StridePair(StrideTruth Truth, Stride Measured);

/// <summary>Which measured strides are which true ones.</summary>
/// <param name="Pairs">Matched one to one.</param>
/// <param name="Missed">True strides of rising trot in the picture that have no measured one.</param>
/// <param name="Invented">Measured strides that stand for no true one.</param>
public sealed record StrideMatch(IReadOnlyList<StridePair> Pairs, IReadOnlyList<StrideTruth> Missed, IReadOnlyList<Stride> Invented);

/// <summary>
/// Matches strides by time: both ends must lie within a share of the stride's duration of the true ones. Only strides inside a true spell of rising trot count.
/// True strides with a fault (see <see cref="StrideTruth.Fault"/>) may be cut in more ways than one: they, and what is measured in their time, are passed over.
/// </summary>
public static class StrideMatcher
{
    /// <summary>A sit found further than this from the true one is another event. A quarter stride; no source.</summary>
    public const double ToleranceShareOfStride = 0.25;

    public static StrideMatch Match(ClipTruth truth, IReadOnlyList<Stride> measured)
    {
        ArgumentNullException.ThrowIfNull(truth);
        ArgumentNullException.ThrowIfNull(measured);
        var rising = truth.Spells.Where(s => s.GaitTerm == Gait.RisingTrot).ToArray();
        var inTrot = truth.Strides.Where(t => Array.Exists(rising, s => Holds(s, t))).ToArray();
        var pool = inTrot.Where(t => t.Fault is null).ToList();
        var odd = inTrot.Where(t => t.Fault is not null).ToArray();
        var inPicture = truth.StridesInFrame.ToHashSet();
        var pairs = new List<StridePair>();
        var invented = new List<Stride>();
        foreach (var stride in measured)
        {
            if (pool.Where(t => Fits(t, stride)).MinBy(t => Math.Abs(t.SitS - stride.StartSeconds)) is { } best)
            {
                pool.Remove(best);
                pairs.Add(new(best, stride));
            }
            else if (SharedSeconds(odd, stride) < (stride.EndSeconds - stride.StartSeconds) / 2)
            {
                invented.Add(stride);
            }
        }

        return new(pairs, [.. pool.Where(inPicture.Contains)], invented);
    }

    /// <summary>Ends of spells are rounded in the file: the tolerance is more than that and less than a stride.</summary>
    private static bool Holds(TruthSpell spell, StrideTruth stride)
    {
        var tolerance = ToleranceShareOfStride * stride.DurationS;
        return stride.SitS >= spell.StartS - tolerance && stride.NextSitS <= spell.EndS + tolerance;
    }

    private static bool Fits(StrideTruth truth, Stride stride)
    {
        var tolerance = ToleranceShareOfStride * truth.DurationS;
        return Math.Abs(truth.SitS - stride.StartSeconds) <= tolerance && Math.Abs(truth.NextSitS - stride.EndSeconds) <= tolerance;
    }

    private static double SharedSeconds(StrideTruth[] odd, Stride stride) =>
        odd.Sum(t => Math.Max(0, Math.Min(t.NextSitS, stride.EndSeconds) - Math.Max(t.SitS, stride.StartSeconds)));
}
