using GaitSeat.Model;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace GaitSeat.Faults.Rules;

/// <summary>
/// Irregular rise: the coefficient of variation (CV) of stride duration or of rise height over a spell.
/// Measuring noise alone makes strides look uneven, so the mean squared standard error is taken off the variance first: errors that all
/// strides share are taken off too, which errs towards silence.
/// </summary>
internal static class Irregularity
{
    /// <summary>Below three strides a spread says nothing.</summary>
    private const int LeastStrides = 3;

    public static Finding? Check(SpellStrides spell, RuleSettings settings)
    {
        var rule = settings.IrregularRise;
        return new[]
            {
                Of(spell, StrideMeasure.StrideDuration, rule.DurationCvPct, "Stride duration", settings),
                Of(spell, StrideMeasure.RiseHeightPctLeg, rule.RiseCvPct, "Rise height", settings),
            }
            .OfType<Finding>().MaxBy(f => f.ProbabilityPastThreshold);
    }

    /// <summary>CV in percent, noise taken off, with its large-sample error <c>CV sqrt((1 + 2 CV²) / 2(n - 1))</c> of the raw CV.</summary>
    public static Measured CvPct(IReadOnlyList<Measured> strides)
    {
        var values = strides.Select(s => s.Value).ToArray();
        var mean = Math.Abs(values.Mean());
        var noise = strides.Average(s => s.StandardError * s.StandardError);
        var raw = values.StandardDeviation() / mean;
        var own = Math.Sqrt(Math.Max(0, values.Variance() - noise)) / mean;
        return new(100 * own, 100 * raw * Math.Sqrt((1 + 2 * raw * raw) / (2.0 * (values.Length - 1))));
    }

    private static Finding? Of(SpellStrides spell, StrideMeasure measure, double limitPct, string name, RuleSettings settings)
    {
        var strides = spell.Strides.Where(s => SpellStrides.Has(s, measure)).ToArray();
        if (strides.Length < Math.Max(LeastStrides, settings.MinimumStrides)) return null;
        var cv = CvPct([.. strides.Select(s => s.Measures[measure])]);
        if (double.IsNaN(cv.Value) || double.IsNaN(cv.StandardError)) return null;
        var probability = cv.StandardError > 0 ? Normal.CDF(0, 1, (cv.Value - limitPct) / cv.StandardError) : cv.Value > limitPct ? 1 : 0;
        var usual = strides.Select(s => s.Measures[measure].Value).Median();
        var showing = strides.Where(s => Math.Abs(s.Measures[measure].Value - usual) > Math.Abs(usual) * limitPct / 100).ToArray();
        if (probability < settings.MinimumProbability || showing.Length == 0) return null;
        var source = settings.IrregularRise.Source;
        var summary = Words.Line($"{name} varies by {Words.WithInterval(cv)} % (CV), off the median by more than the limit", showing.Length, strides.Length,
            Words.Text($"an even rise stays below {limitPct:0.##} %"), source);
        return new(spell.Spell.Number, Fault.IrregularRise, MeasureCatalogue.Get(measure).Column, cv, limitPct, "% (CV)", probability, source,
            showing[0].StartSeconds, showing[^1].EndSeconds, [.. showing.Select(s => s.Number)], summary);
    }
}
