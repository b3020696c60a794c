using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>From which sit to which a stride of the truth runs.</summary>
internal readonly record struct StrideSpan(double SitS, double NextSitS, string? Fault);

/// <summary>Cuts the plan into the strides of the truth: a stride followed by a second sit runs to that second sit.</summary>
internal static class StrideSpans
{
    private const string DoubleBounce = "double-bounce";

    public static IEnumerable<StrideSpan> Of(StrideClock clock, bool onlyRising)
    {
        for (var i = 0; i + 1 < clock.Instants.Count; i++)
        {
            if (IsSecondSit(clock, i) || (onlyRising && clock.Strides[i].Gait != Gait.RisingTrot)) continue;
            var extended = IsSecondSit(clock, i + 1) && i + 2 < clock.Instants.Count;
            var after = i > 0 && IsSecondSit(clock, i - 1);
            yield return new(clock.Instants[i], clock.Instants[i + (extended ? 2 : 1)], extended || after ? DoubleBounce : null);
        }
    }

    private static bool IsSecondSit(StrideClock clock, int stride) => clock.Strides[stride].HorseStrides < 1;
}
