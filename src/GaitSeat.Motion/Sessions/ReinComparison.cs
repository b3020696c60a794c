using GaitSeat.Model;

namespace GaitSeat.Motion.Sessions;

/// <summary>What is held against each other.</summary>
public enum LeftRightBasis
{
    /// <summary>Left rein against right rein, as the sheet says.</summary>
    Rein,

    /// <summary>The rider's left side as the camera saw it against the right side: no sheet needed, but another leg.</summary>
    Side,
}

/// <summary>Right less left of one measure, in the unit of its column.</summary>
/// <param name="Difference">Right less left. Its standard error is from the scatter between clips and strides; what the models' own habit makes is not in it.</param>
/// <param name="SideBiasStandardError">How large a difference the models' own habit on the two sides of a rider makes, one standard deviation; 0 where both groups were seen alike.</param>
public sealed record LeftRightDifference(
    LeftRightBasis Basis,
    StrideMeasure Measure,
    Measured Left,
    Measured Right,
    Measured Difference,
    double SideBiasStandardError,
    int ClipsLeft,
    int ClipsRight,
    int StridesLeft,
    int StridesRight)
{
    /// <summary>The difference with both errors together: its 95 % interval is the one to look at.</summary>
    public Measured WithBias => new(Difference.Value, Math.Sqrt(Difference.StandardError * Difference.StandardError + SideBiasStandardError * SideBiasStandardError));
}

/// <summary>
/// Left against right within a session, clips as clusters: a hundred strides of one clip share its errors and tell little more than ten. Where rein and side go together
/// (the camera in the middle of the school) no comparison of reins can tell the rider from the models' habit; the interval allows for it.
/// </summary>
public static class ReinComparison
{
    private static readonly StrideMeasure[] Compared =
        [.. Enum.GetValues<StrideMeasure>().Except([StrideMeasure.Scale, StrideMeasure.ViewYaw, StrideMeasure.RiderHeight])];

    /// <summary>Every measure that has trusted strides on both sides; by rein where the sheet tells it, and by side.</summary>
    public static IReadOnlyList<LeftRightDifference> Of(IReadOnlyList<SessionStride> strides, SessionSettings settings)
    {
        ArgumentNullException.ThrowIfNull(strides);
        ArgumentNullException.ThrowIfNull(settings);
        var trusted = strides.Where(s => s.Stride.IsTrusted).ToArray();
        return [.. Enum.GetValues<LeftRightBasis>().SelectMany(basis => Compared.Select(m => One(basis, m, trusted, settings))).OfType<LeftRightDifference>()];
    }

    /// <summary>Null where too few strides of a side have a value, or none has an error to judge it by.</summary>
    private static LeftRightDifference? One(LeftRightBasis basis, StrideMeasure measure, SessionStride[] strides, SessionSettings settings)
    {
        var seen = strides.Where(s => !s.Stride.Measures[measure].IsMissing && SideOf(s, basis) is not null).ToArray();
        var left = ClipGroup.Of(seen.Where(s => SideOf(s, basis) == Facing.Left), measure);
        var right = ClipGroup.Of(seen.Where(s => SideOf(s, basis) == Facing.Right), measure);
        if (left.Strides < settings.LeastStrides || right.Strides < settings.LeastStrides) return null;
        var strideSe = ClipGroup.Rms(seen, measure);
        var sizes = ErrorSizes.Of(measure, strideSe, settings);
        if (sizes.Scatter <= 0) return null;
        var scatter = ClipGroup.Scatter([left, right], sizes.Scatter * sizes.Scatter, settings.PriorWeight);
        var steady = sizes.Clip * sizes.Clip + sizes.Slow * sizes.Slow;
        var wander = ClipGroup.Wander([left, right], scatter, steady, settings.PriorWeight);
        var (l, r) = (left.Mean(scatter, wander * steady), right.Mean(scatter, wander * steady));
        var difference = new Measured(r.Value - l.Value, Math.Sqrt(l.StandardError * l.StandardError + r.StandardError * r.StandardError));
        var bias = settings.SideShare * strideSe * Math.Abs(right.SeenFromRight - left.SeenFromRight);
        return new(basis, measure, l, r, difference, bias, left.Clips, right.Clips, left.Strides, right.Strides);
    }

    private static Facing? SideOf(SessionStride stride, LeftRightBasis basis) => basis switch
    {
        LeftRightBasis.Side => stride.Stride.Facing is Facing.Unknown ? null : stride.Stride.Facing,
        _ => stride.Rein switch { "left" => Facing.Left, "right" => Facing.Right, _ => null },
    };
}
