using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>
/// How far each gait has a say at an instant. A rising spell is pure from its first sit to its last: changes into and out of it lie in the neighbouring
/// stride, where the trot's share is ridden sitting (the seat keeps the depth of the sit).
/// </summary>
/// <param name="ShareB">0 all of the first, 1 all of the second.</param>
internal readonly record struct GaitMix(Gait A, Gait B, double ShareB)
{
    /// <summary>Share of a stride that a change takes.</summary>
    public const double ChangeShare = 0.6;

    public bool IsPure => ShareB == 0;

    public static GaitMix At(StrideClock clock, StrideMoment moment)
    {
        var gait = GaitOf(clock, moment.Stride);
        if (gait == Gait.RisingTrot) return new(gait, gait, 0);
        var (before, after) = (GaitOf(clock, Math.Max(0, moment.Stride - 1)), GaitOf(clock, Math.Min(clock.Strides.Count - 1, moment.Stride + 1)));
        if (before != gait && moment.Phase < ChangeShare) return new(gait, before, 1 - Smooth(moment.Phase / ChangeShare));
        if (after == Gait.RisingTrot && moment.Phase > 1 - ChangeShare) return new(gait, after, Smooth((moment.Phase - 1 + ChangeShare) / ChangeShare));
        return new(gait, gait, 0);
    }

    public double Of(Func<Gait, double> value) => IsPure ? value(A) : value(A) + ShareB * (value(B) - value(A));

    private static Gait GaitOf(StrideClock clock, int stride) => clock.Strides[stride].Gait;

    private static double Smooth(double x) => x * x * (3 - 2 * x);
}
