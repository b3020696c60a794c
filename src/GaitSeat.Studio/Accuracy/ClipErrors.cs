using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>One measured value beside the true one.</summary>
public readonly record struct MeasureError(string Clip, StrideMeasure Measure, double Truth, Measured Measured)
{
    public double Error => Measured.Value - Truth;

    public bool HeldByInterval => Math.Abs(Error) <= Measured.HalfWidth95;
}

/// <summary>How one clip came out against its truth.</summary>
/// <param name="GaitShare">Share of the time called a gait that was called the right one; NaN when no gait was called.</param>
public sealed record ClipErrors(ClipTruth Truth, StrideMatch Match, IReadOnlyList<MeasureError> Errors, string GaitsCalled, double GaitShare)
{
    public static ClipErrors Compare(ClipTruth truth, ClipMotion motion, int analysisWidthPx)
    {
        var match = StrideMatcher.Match(truth, motion.Strides);
        var perPx = analysisWidthPx / (double)truth.Width;
        var errors =
            from pair in match.Pairs
            from measure in TrueMeasures.Known
            let value = pair.Measured.Measures[measure]
            let known = TrueMeasures.Of(truth, pair.Truth, measure, perPx)
            where known is not null && !value.IsMissing
            select new MeasureError(truth.Clip, measure, known.Value, value);
        var named = motion.Spells.Where(s => s.Gait != Gait.Unknown).ToArray();
        var seconds = named.Sum(s => s.EndSeconds - s.StartSeconds);
        var right = named.Where(s => s.Gait == truth.GaitTerm).Sum(s => s.EndSeconds - s.StartSeconds);
        var called = string.Join(", ", motion.Spells.Select(s => s.Gait.ToTerm()).Distinct());
        return new(truth, match, [.. errors], called, seconds > 0 ? right / seconds : double.NaN);
    }
}
