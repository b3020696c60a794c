using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>A measured stride and the true one it stands for.</summary>
public readonly record struct StridePair(StrideTruth Truth, Stride Measured);

/// <summary>Which measured strides are which true ones.</summary>
/// <param name="Pairs">Matched one to one.</param>
/// <param name="Missed">True strides in the picture that have no measured one.</param>
/// <param name="Invented">Measured strides that stand for no true one.</param>
public sealed record StrideMatch(IReadOnlyList<StridePair> Pairs, IReadOnlyList<StrideTruth> Missed, IReadOnlyList<Stride> Invented);

/// <summary>Matches strides by time: both ends must lie within a share of the stride's duration of the true ones.</summary>
public static class StrideMatcher
{
    /// <summary>A sit found further than this from the true one is another event. A quarter stride; no source.</summary>
    public const double ToleranceShareOfStride = 0.25;

    public static StrideMatch Match(ClipTruth truth, IReadOnlyList<Stride> measured)
    {
        var rising = truth.GaitTerm == Gait.RisingTrot;
        var pool = rising ? truth.Strides.ToList() : [];
        var expected = rising ? truth.StridesInFrame.ToHashSet() : [];
        var pairs = new List<StridePair>();
        var invented = new List<Stride>();
        foreach (var stride in measured)
        {
            if (pool.Where(t => Fits(t, stride)).MinBy(t => Math.Abs(t.SitS - stride.StartSeconds)) is { } best)
            {
                pool.Remove(best);
                pairs.Add(new(best, stride));
            }
            else
            {
                invented.Add(stride);
            }
        }

        return new(pairs, [.. pool.Where(expected.Contains)], invented);
    }

    private static bool Fits(StrideTruth truth, Stride stride)
    {
        var tolerance = ToleranceShareOfStride * truth.DurationS;
        return Math.Abs(truth.SitS - stride.StartSeconds) <= tolerance && Math.Abs(truth.NextSitS - stride.EndSeconds) <= tolerance;
    }
}
