using System.Globalization;
using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>The errors of many clips in one page of Markdown. Everything in it is counted from the clips given; nothing is left out.</summary>
public sealed class AccuracyReport(IReadOnlyList<ClipErrors> clips)
{
    public double Recall => Ratio(Matched, Matched + clips.Sum(c => c.Match.Missed.Count));

    public double Precision => Ratio(Matched, Matched + clips.Sum(c => c.Match.Invented.Count));

    private int Matched => clips.Sum(c => c.Match.Pairs.Count);

    /// <summary>Errors of one measure over all clips.</summary>
    public IReadOnlyList<MeasureError> Of(StrideMeasure measure) => [.. clips.SelectMany(c => c.Errors).Where(e => e.Measure == measure)];

    public string ToMarkdown()
    {
        var text = new StringBuilder();
        Line(text, $"{clips.Count} clips, {Matched} strides matched; precision {Precision:0.000}, recall {Recall:0.000}.");
        Line(text, $"");
        WriteMeasures(text);
        Line(text, $"");
        WriteClips(text);
        return text.ToString();
    }

    private void WriteMeasures(StringBuilder text)
    {
        Line(text, $"| measure | unit | n | bias | MAE | 95th pct | MAE, % of truth | 95 % interval holds |");
        Line(text, $"|---|---|---|---|---|---|---|---|");
        foreach (var measure in TrueMeasures.Known)
        {
            var errors = Of(measure);
            if (errors.Count == 0) continue;
            var unit = MeasureCatalogue.Get(measure).Unit;
            var sizes = errors.Select(e => Math.Abs(e.Error)).Order().ToArray();
            var share = 100 * sizes.Average() / errors.Average(e => Math.Abs(e.Truth));
            Line(text, $"| {MeasureCatalogue.Get(measure).Column} | {unit} | {errors.Count} | {errors.Average(e => e.Error):+0.000;-0.000;0.000} | {sizes.Average():0.000} | {sizes[(int)Math.Ceiling(0.95 * sizes.Length) - 1]:0.000} | {share:0.0} | {100.0 * errors.Count(e => e.HeldByInterval) / errors.Count:0} % |");
        }
    }

    private void WriteClips(StringBuilder text)
    {
        Line(text, $"| clip | truth | called | fps | camera | rider px | yaw deg | strides found / missed / invented | rise: truth, bias cm | thigh: truth, bias deg | swing: truth, bias cm |");
        Line(text, $"|---|---|---|---|---|---|---|---|---|---|---|");
        foreach (var c in clips)
        {
            var t = c.Truth;
            Line(text, $"| {t.Clip} | {t.GaitTerm.ToTerm()} | {c.GaitsCalled} | {t.Fps:0.##} | {t.Camera} | {t.RiderPxHeightMean:0} | {t.YawNominalDeg:0} | {c.Match.Pairs.Count} / {c.Match.Missed.Count} / {c.Match.Invented.Count} | {Bias(c, StrideMeasure.RiseHeightCm)} | {Bias(c, StrideMeasure.ThighAngleSit)} | {Bias(c, StrideMeasure.StirrupDriftSwingCm)} |");
        }
    }

    private static string Bias(ClipErrors clip, StrideMeasure measure)
    {
        var errors = clip.Errors.Where(e => e.Measure == measure).ToArray();
        return errors.Length == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{errors.Average(e => e.Truth):0.0}, {errors.Average(e => e.Error):+0.00;-0.00}");
    }

    private static double Ratio(int part, int whole) => whole == 0 ? double.NaN : part / (double)whole;

    private static void Line(StringBuilder text, FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
