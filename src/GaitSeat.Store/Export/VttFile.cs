using System.Globalization;
using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>A finding as a cue.</summary>
internal sealed record VttFinding(double StartSeconds, double EndSeconds, string Fault, string Summary);

/// <summary>WebVTT (W3C): the strides and findings of a clip as cues, for a player to show beside it.</summary>
internal static class VttFile
{
    private const string Caution = "Findings are prompts for the coach's eye, not verdicts. Measured by GaitSeat; ± is the half width of the 95 % interval.";
    private const double HalfWidth95 = 1.959964;

    /// <returns>The file and how many cues are in it.</returns>
    internal static (string Text, int Cues) Make(IReadOnlyList<ExportSpell> spells, IReadOnlyList<VttFinding> findings)
    {
        var cues = spells.SelectMany(s => s.Strides.Select(t => (Start: t.StartSeconds, End: t.EndSeconds, Id: FormattableString.Invariant($"stride-{s.Number}-{t.Number}"), Text: StrideText(t))))
            .Concat(findings.Select((f, i) => (Start: f.StartSeconds, End: f.EndSeconds, Id: FormattableString.Invariant($"finding-{i + 1}"), Text: $"{f.Fault.Replace('_', ' ')}: {f.Summary}")))
            .Where(c => c.End > c.Start).OrderBy(c => c.Start).ThenBy(c => c.Id, StringComparer.Ordinal).ToList();
        var text = new StringBuilder("WEBVTT\n\nNOTE\n").Append(Caution).Append('\n');
        foreach (var cue in cues) text.Append(CultureInfo.InvariantCulture, $"\n{cue.Id}\n{Time(cue.Start)} --> {Time(cue.End)}\n{Escaped(cue.Text)}\n");
        return (text.ToString(), cues.Count);
    }

    private static string StrideText(ExportStride stride)
    {
        string?[] parts =
        [
            FormattableString.Invariant($"stride {stride.Number}"),
            Part("rise", StrideMeasure.RiseHeightCm, stride) ?? Part("rise", StrideMeasure.RiseHeightPctLeg, stride),
            Part("thigh at sit", StrideMeasure.ThighAngleSit, stride),
        ];
        return string.Join(", ", parts.OfType<string>());
    }

    private static string? Part(string name, StrideMeasure measure, ExportStride stride)
    {
        var m = MeasureCatalogue.Get(measure);
        if (stride.Row[m.Column] is not double value) return null;
        var interval = stride.Row[m.StandardErrorColumn] is double se ? FormattableString.Invariant($" ± {HalfWidth95 * se:0.0}") : "";
        return FormattableString.Invariant($"{name} {value:0.0}{interval} {m.Unit}");
    }

    private static string Time(double seconds) => TimeSpan.FromMilliseconds(Math.Round(seconds * 1000)).ToString(@"hh\:mm\:ss\.fff", CultureInfo.InvariantCulture);

    /// <summary>A cue's text may not hold these signs, nor an empty line.</summary>
    private static string Escaped(string text) =>
        text.ReplaceLineEndings(" ").Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace(">", "&gt;", StringComparison.Ordinal);
}
