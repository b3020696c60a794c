using GaitSeat.Model;

namespace GaitSeat.Motion.Sessions;

/// <summary>What the measures did at a change whose place is known.</summary>
internal static class ChangeEffects
{
    private static readonly StrideMeasure[] Told =
        [StrideMeasure.ThighAngleSit, StrideMeasure.StirrupLengthIndex, StrideMeasure.RiseHeightCm, StrideMeasure.RiseHeightPctLeg];

    /// <param name="strides">Strides up to the change before and the change after.</param>
    /// <param name="at">The first stride after the change.</param>
    public static IReadOnlyList<ChangeEffect> Of(SessionStride[] strides, int at, SessionSettings settings) =>
        Of(strides, at, Wander(strides, at, settings), settings);

    private static ChangeEffect[] Of(SessionStride[] strides, int at, double wander, SessionSettings settings) =>
        [.. Told.Select(m => One(m, strides, at, wander, settings)).OfType<ChangeEffect>()];

    public static StrideLine LineOf(SessionStride[] strides, SessionSettings s)
    {
        var common = s.ThighSlowDeg * s.ThighSlowDeg + s.ThighClipDeg * s.ThighClipDeg;
        return new(strides, common / (common + s.ThighScatterDeg * s.ThighScatterDeg));
    }

    public static double[] Values(SessionStride[] strides, StrideMeasure measure) => [.. strides.Select(s => s.Stride.Measures[measure].Value)];

    private static double Wander(SessionStride[] strides, int at, SessionSettings settings) =>
        new SplitScan(LineOf(strides, settings), settings).WanderAt(at, Values(strides, StrideMeasure.ThighAngleSit), Values(strides, StrideMeasure.StirrupLengthIndex));

    /// <summary>Null where too few strides on a side have a value, or none has an error to judge it by.</summary>
    private static ChangeEffect? One(StrideMeasure measure, SessionStride[] all, int at, double wander, SessionSettings settings)
    {
        var before = all[..at].Where(s => !s.Stride.Measures[measure].IsMissing).ToArray();
        var after = all[at..].Where(s => !s.Stride.Measures[measure].IsMissing).ToArray();
        if (before.Length < settings.LeastStrides || after.Length < settings.LeastStrides) return null;
        SessionStride[] kept = [.. before, .. after];
        var k = before.Length;
        var line = LineOf(kept, settings);
        var values = Values(kept, measure);
        var sizes = ErrorSizes.Of(measure, ClipGroup.Rms(kept, measure), settings);
        if (sizes.Scatter <= 0) return null;
        var factors = SplitFactors.Of(line, settings.SlowSeconds);
        var scatter = Scatter(line, values, k, sizes.Scatter * sizes.Scatter, settings.PriorWeight);
        var variance = factors.Scatter[k] * scatter + wander * (factors.Slow[k] * sizes.Slow * sizes.Slow + factors.ClipSteady[k] * sizes.Clip * sizes.Clip);
        // The steady part of a stride's error does not average out: the error of a mean is taken as that of one stride.
        double first = Mean(line, values, 0, k), second = Mean(line, values, k, values.Length);
        return new(measure, new(first, ClipGroup.Rms(before, measure)), new(second, ClipGroup.Rms(after, measure)), new(second - first, Math.Sqrt(variance)));
    }

    /// <summary>As for the search: from neighbours that do not straddle the change, together with what the settings say.</summary>
    private static double Scatter(StrideLine line, double[] values, int at, double prior, double weight)
    {
        var (sum, count) = (weight * prior, weight);
        for (var i = 1; i < values.Length; i++)
        {
            if (i == at || !line.Touches(i)) continue;
            sum += (values[i] - values[i - 1]) * (values[i] - values[i - 1]) / 2;
            count++;
        }

        return sum / count;
    }

    private static double Mean(StrideLine line, double[] values, int first, int endExcl)
    {
        double sum = 0, weight = 0;
        for (var i = first; i < endExcl; i++)
        {
            sum += line.Weight[i] * values[i];
            weight += line.Weight[i];
        }

        return sum / weight;
    }
}
