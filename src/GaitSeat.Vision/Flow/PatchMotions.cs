using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>Turns the steps of a clip into the arrays that <see cref="Sightings"/> carries.</summary>
public static class PatchMotions
{
    /// <summary>One entry a step, in order. <c>Cuts[i]</c> is true where the picture jumps between frame i - 1 and frame i.</summary>
    public static (PatchMotion Trunk, PatchMotion Surroundings, bool[] Cuts) Collect(IReadOnlyList<FlowStep> steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        return (Columns(steps, s => s.Trunk), Columns(steps, s => s.Surroundings), [.. steps.Select(s => s.Cut)]);
    }

    private static PatchMotion Columns(IReadOnlyList<FlowStep> steps, Func<FlowStep, MotionStep> patch)
    {
        var rows = steps.Select(patch).ToArray();
        return new(
            [.. rows.Select(r => r.XPx)],
            [.. rows.Select(r => r.YPx)],
            [.. rows.Select(r => r.RotationRad)],
            [.. rows.Select(r => r.Zoom)],
            [.. rows.Select(r => r.Points)],
            [.. rows.Select(r => r.ResidualPx)]);
    }
}
