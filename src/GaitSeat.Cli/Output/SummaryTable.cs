using System.Globalization;
using GaitSeat.Faults;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Season;
using Spectre.Console;

namespace GaitSeat.Cli.Output;

/// <summary>What a run did, for people: one row a clip that was not done before, then what to look at, then what was left out.</summary>
internal static class SummaryTable
{
    public static void Write(IAnsiConsole console, SeasonSummary summary)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumns("clip", "gaits", "strides", "rise", "thigh at sit", "drift swing", "findings");
        foreach (var column in table.Columns.Skip(2).Take(4)) column.RightAligned();
        foreach (var clip in summary.Clips.Where(c => c.End != ClipEnd.AlreadyDone)) table.AddRow([.. Cells(clip).Select(c => (Spectre.Console.Rendering.IRenderable)new Text(c))]);
        if (table.Rows.Count > 0) console.Write(table);
        WriteFlagged(console, summary);
        WriteLeftOut(console, summary);
        console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{summary.Count(ClipEnd.Measured)} measured, {summary.Count(ClipEnd.AlreadyDone)} already done, {summary.Count(ClipEnd.SetAside)} set aside, {summary.Count(ClipEnd.PutOff)} put off, {summary.Count(ClipEnd.NoConsent)} without consent; {summary.Strides} strides from {summary.Frames} frames in {summary.Elapsed.TotalSeconds:0.0} s ({summary.FramesPerSecond:0.0} frames/s)"));
        console.WriteLine($"dataset: {summary.DatasetFolder}");
    }

    private static string[] Cells(ClipOutcome clip) => clip.End switch
    {
        ClipEnd.Measured =>
        [
            clip.ClipFile,
            string.Join(", ", clip.Spells.Select(s => Plain(s.Gait.ToTerm())).Distinct()),
            clip.Strides.Count.ToString(CultureInfo.InvariantCulture),
            Length(clip, StrideMeasure.RiseHeightCm, StrideMeasure.RiseHeightPctLeg),
            Mean(clip, StrideMeasure.ThighAngleSit, "deg"),
            Length(clip, StrideMeasure.StirrupDriftSwingCm, StrideMeasure.StirrupDriftSwingPctLeg),
            string.Join(", ", clip.Findings.Select(f => Plain(f.Fault.ToTerm())).Distinct()),
        ],
        ClipEnd.PutOff => [clip.ClipFile, "put off", "", "", "", "", ""],
        ClipEnd.NoConsent => [clip.ClipFile, "no consent", "", "", "", "", ""],
        _ => [clip.ClipFile, $"set aside: {clip.Reason}", "", "", "", "", ""],
    };

    private static string Length(ClipOutcome clip, StrideMeasure cm, StrideMeasure pctLeg)
    {
        var text = Mean(clip, cm, "cm");
        return text.Length > 0 ? text : Mean(clip, pctLeg, "% leg");
    }

    private static string Mean(ClipOutcome clip, StrideMeasure measure, string unit)
    {
        var known = clip.Strides.Select(s => s.Measures[measure]).Where(m => !m.IsMissing).ToArray();
        return known.Length == 0
            ? ""
            : string.Create(CultureInfo.InvariantCulture, $"{known.Average(m => m.Value):0.0} ± {known.Average(m => m.HalfWidth95):0.0} {unit}");
    }

    private static void WriteFlagged(IAnsiConsole console, SeasonSummary summary)
    {
        var flagged = summary.Flagged.ToArray();
        if (flagged.Length == 0) return;
        console.WriteLine("To look at (prompts for the coach's eye, not verdicts):");
        foreach (var clip in flagged)
        {
            foreach (var finding in clip.Findings.OrderByDescending(f => f.ProbabilityPastThreshold))
                console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {clip.ClipFile} {finding.StartSeconds:0.0}-{finding.EndSeconds:0.0} s: {Plain(finding.Fault.ToTerm())} (p {finding.ProbabilityPastThreshold:0.00}): {finding.Summary}"));
        }

        console.WriteLine(Cautions.Text);
        console.WriteLine();
    }

    private static void WriteLeftOut(IAnsiConsole console, SeasonSummary summary)
    {
        foreach (var clip in summary.Clips.Where(c => c.End == ClipEnd.SetAside)) console.WriteLine($"set aside: {clip.Detail}");
        foreach (var clip in summary.Clips.Where(c => c.End == ClipEnd.PutOff)) console.WriteLine($"put off, to be tried by the next run: {clip.Detail}");
        if (summary.LeftOutByReason.Count > 0)
            console.WriteLine("left out: " + string.Join("; ", summary.LeftOutByReason.Select(r => $"{r.Key} {r.Value}")));
    }

    private static string Plain(string term) => term.Replace('_', ' ');
}
