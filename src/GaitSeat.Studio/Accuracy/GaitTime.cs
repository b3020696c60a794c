using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>Time of one true gait that was called one thing.</summary>
/// <param name="Called">The gait it was called; null where the frames were left out.</param>
/// <param name="SideOn">Whether it belongs to the stricter column of the goals.</param>
public readonly record struct GaitTime(Gait True, Gait? Called, bool SideOn, double Seconds)
{
    /// <summary>Counts frame by frame: those with the whole rider in the picture, inside a true spell.</summary>
    public static IReadOnlyList<GaitTime> Of(ClipTruth truth, ClipMotion motion)
    {
        ArgumentNullException.ThrowIfNull(truth);
        ArgumentNullException.ThrowIfNull(motion);
        var frames =
            from row in truth.FrameRows
            where row.RiderFullInFrame
            let spell = truth.Spells.FirstOrDefault(s => row.TimeSeconds >= s.StartS && row.TimeSeconds < s.EndS)
            where spell is not null
            let called = motion.Spells.LastOrDefault(s => row.TimeSeconds >= s.StartSeconds && row.TimeSeconds <= s.EndSeconds)
            group 1 by (True: spell.GaitTerm, Called: called?.Gait, SideOn: Circumstances.IsSideOnAt(row.YawDeg, row.RiderPxHeight));
        return [.. frames.Select(g => new GaitTime(g.Key.True, g.Key.Called, g.Key.SideOn, g.Count() / truth.Fps))];
    }
}
