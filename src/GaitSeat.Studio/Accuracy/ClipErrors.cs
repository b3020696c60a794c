using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>A measured stride that stands for a true one.</summary>
public sealed record FoundStride(StridePair Pair, Circumstances Circumstances);

/// <summary>A measured stride that stands for no true one.</summary>
/// <param name="TrueGait">What the horse really did in its middle; null in a change of gait.</param>
public sealed record InventedStride(Stride Stride, Gait? TrueGait, Circumstances Circumstances);

/// <summary>How one clip came out against its truth.</summary>
public sealed record ClipErrors(
    ClipTruth Truth,
    ClipResult Result,
    IReadOnlyList<FoundStride> Found,
    IReadOnlyList<MissedStride> Missed,
    IReadOnlyList<InventedStride> Invented,
    IReadOnlyList<MeasureError> Errors,
    IReadOnlyList<GaitTime> Gaits)
{
    public static ClipErrors Compare(ClipTruth truth, ClipResult result)
    {
        ArgumentNullException.ThrowIfNull(truth);
        ArgumentNullException.ThrowIfNull(result);
        var match = StrideMatcher.Match(truth, result.Motion.Strides);
        FoundStride[] found = [.. match.Pairs.Select(p => new FoundStride(p, Circumstances.Of(truth, p.Truth.SitS, p.Truth.NextSitS)))];
        return new(
            truth,
            result,
            found,
            [.. match.Missed.Select(m => MissedStride.Of(truth, m, result))],
            [.. match.Invented.Select(s => Invent(truth, s))],
            [.. found.SelectMany(f => ErrorsOf(truth, f, result.AnalysisWidthPx / (double)truth.Width))],
            GaitTime.Of(truth, result.Motion));
    }

    private static InventedStride Invent(ClipTruth truth, Stride stride)
    {
        var middle = (stride.StartSeconds + stride.EndSeconds) / 2;
        var spell = truth.Spells.FirstOrDefault(s => middle >= s.StartS && middle <= s.EndS);
        return new(stride, spell?.GaitTerm, Circumstances.Of(truth, stride.StartSeconds, stride.EndSeconds));
    }

    private static IEnumerable<MeasureError> ErrorsOf(ClipTruth truth, FoundStride found, double perPx)
    {
        var (real, stride) = (found.Pair.Truth, found.Pair.Measured);
        return
            from measure in TrueMeasures.Known
            let value = stride.Measures[measure]
            let known = TrueMeasures.Of(truth, real, measure, perPx)
            where known is not null && !value.IsMissing
            select new MeasureError(truth.Clip, measure, known.Value, value, stride.StartSeconds, real.SitS, stride.Quality, stride.IsTrusted, found.Circumstances);
    }
}
