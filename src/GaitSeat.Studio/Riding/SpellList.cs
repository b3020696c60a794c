using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>The spells of a plan: strides of one gait running, without the changes between them.</summary>
internal static class SpellList
{
    public static IReadOnlyList<TruthSpell> Of(StrideClock clock, Gait gait, double durationSeconds)
    {
        if (!clock.HasStrides) return [new(0, durationSeconds, GaitWords.Of(gait))];
        var spells = new List<TruthSpell>();
        for (var first = 0; first + 1 < clock.Instants.Count;)
        {
            var next = first + 1;
            while (next + 1 < clock.Instants.Count && clock.Strides[next].Gait == clock.Strides[first].Gait) next++;
            var (start, end) = (Math.Max(0, StartOf(clock, first)), Math.Min(durationSeconds, EndOf(clock, next)));
            if (start < end) spells.Add(new(start, end, GaitWords.Of(clock.Strides[first].Gait)));
            first = next;
        }

        return spells;
    }

    /// <summary>Rising where there is any, else the longest.</summary>
    public static string ChiefGait(IReadOnlyList<TruthSpell> spells) =>
        (spells.FirstOrDefault(s => s.GaitTerm == Gait.RisingTrot) ?? spells.MaxBy(s => s.EndS - s.StartS)!).Gait;

    // A change lies in the stride after it, or, into rising trot, in the stride before.
    private static double StartOf(StrideClock clock, int stride)
    {
        var start = clock.Instants[stride];
        return stride == 0 || clock.Strides[stride].Gait == Gait.RisingTrot ? start : start + GaitMix.ChangeShare * (clock.Instants[stride + 1] - start);
    }

    private static double EndOf(StrideClock clock, int next)
    {
        var end = clock.Instants[next];
        return clock.Strides[next].Gait == Gait.RisingTrot && clock.Strides[next - 1].Gait != Gait.RisingTrot ? end - GaitMix.ChangeShare * (end - clock.Instants[next - 1]) : end;
    }
}
