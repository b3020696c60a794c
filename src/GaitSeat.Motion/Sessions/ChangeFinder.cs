using GaitSeat.Model;

namespace GaitSeat.Motion.Sessions;

/// <summary>
/// Finds changes of stirrup length in the strides of a ride, without being told of any. Pure and seeded: the same strides give the same answer.
/// Only trusted strides seen from one side, on one rein, are compared with each other; the strongest split of each such line is held against drawn rides without a change,
/// and where it stands, both parts are searched again.
/// </summary>
public static class ChangeFinder
{
    /// <summary>Changes within one clip, in order of time.</summary>
    public static IReadOnlyList<StirrupShift> InClip(IReadOnlyList<Stride> strides, SessionSettings settings)
    {
        ArgumentNullException.ThrowIfNull(strides);
        return [.. InSession([.. strides.Select(s => new SessionStride(0, null, s))], settings).Select(s => s.Shift)];
    }

    /// <summary>Changes within a session, in order of clips and time; one that is seen from both sides, or on both reins, comes once for each.</summary>
    /// <param name="strides">The strides of one rider on one horse on one day.</param>
    public static IReadOnlyList<SessionShift> InSession(IReadOnlyList<SessionStride> strides, SessionSettings settings)
    {
        ArgumentNullException.ThrowIfNull(strides);
        ArgumentNullException.ThrowIfNull(settings);
        var lines = strides.Where(s => IsUsable(s.Stride))
            .GroupBy(s => (s.Rein, s.Stride.Facing))
            .Select(g => g.OrderBy(s => s.Clip).ThenBy(s => s.Stride.StartSeconds).ToArray())
            .Where(line => line.Length >= 2 * settings.LeastStrides)
            .ToArray();
        var found = lines.SelectMany(line => new LineSearch(line, settings, lines.Length).Run());
        return [.. found.OrderBy(s => s.ClipAfter).ThenBy(s => s.Shift.After.StartSeconds)];
    }

    private static bool IsUsable(Stride stride) =>
        stride.IsTrusted
        && stride.Facing != Facing.Unknown
        && !stride.Measures[StrideMeasure.ThighAngleSit].IsMissing
        && !stride.Measures[StrideMeasure.StirrupLengthIndex].IsMissing;
}
