using GaitSeat.Study.Plots.Studies;

namespace GaitSeat.Study.Report.Sections;

/// <summary>From the clips to the strides that are analysed, and what was left out on the way.</summary>
internal static class DataSection
{
    public static void Write(ReportBuilder report, ReportInput input, DataOrigin data)
    {
        report.Add(new Heading(2, "The data: from clips to strides"));
        report.Add(new Paragraph(
            $"{Shown.Count(data.Clips, "clip")} in the dataset (clips without consent leave no trace in it and are not counted); {Shown.Count(data.Strides, "stride")} of rising trot kept"
            + (data is { FirstSession: { } first, LastSession: { } last } ? $", ridden from {first:yyyy-MM-dd} to {last:yyyy-MM-dd}." : ".")));
        report.Picture("flow", FlowCaption(data), (png, svg) => FlowDiagram.Save(Boxes(input, data), report.Note, png, svg));
        if (data.StridesLeftOut.Count == 0) report.Add(new Paragraph("No stride that was cut was left out."));
        else report.Picture("left-out", $"Strides that were cut and left out, by reason ({Shown.Count(data.StridesLeftOut.Sum(s => s.Count))} in all, beside {Shown.Count(data.Strides)} kept).",
            (png, svg) => CountsPlot.Save("strides left out", "strides", [.. data.StridesLeftOut.Select(s => (Plain(s.Reason), s.Count))], report.Note, png, svg));
        (string What, IReadOnlyList<(string Reason, long Count)> Counts)[] all = [("clip set aside", data.ClipsSetAside), ("stride left out", data.StridesLeftOut), ("frame left out", data.FramesLeftOut)];
        var rows = all.SelectMany(a => a.Counts.Select(c => (IReadOnlyList<string>)[$"{a.What}: {Plain(c.Reason)}", Shown.Count(c.Count)])).ToArray();
        if (rows.Length > 0) report.Add(new FigureTable(["left out before the study", "count"], rows));
        report.Add(new Paragraph("What is left out is not left out by chance: fast, far, turned-out or hidden rides are measured less often. Conclusions hold for the strides that could be measured."));
        foreach (var values in data.ValuesFiles.Where(v => v.Unmatched > 0))
            report.Add(new Warning($"{Shown.Count(values.Unmatched)} of {Shown.Count(values.Lines)} lines of {values.File} belong to no stride of the dataset."));
        report.Add(0, "", ("clips", data.Clips), ("clips without strides", data.ClipsWithoutStrides), ("strides", data.Strides));
        foreach (var (what, counts) in all)
            foreach (var (reason, count) in counts) report.Add(0, "", ($"{what}: {reason}", count));
    }

    private static string FlowCaption(DataOrigin data) => $"From {Shown.Count(data.Clips, "clip")} to {Shown.Count(data.Strides, "stride")} kept, and on to the rows of each question.";

    private static FlowBox[] Boxes(ReportInput input, DataOrigin data)
    {
        var setAside = data.ClipsSetAside.Sum(c => c.Count);
        var measured = data.Clips - setAside;
        var left = data.StridesLeftOut.Sum(s => s.Count);
        List<FlowBox> boxes =
        [
            new($"{Shown.Count(data.Clips, "clip")} in the dataset", []),
            new($"{Shown.Count(measured, "clip")} measured", Lines("clips set aside", data.ClipsSetAside)),
            new($"{Shown.Count(measured - data.ClipsWithoutStrides, "clip")} with strides: {Shown.Count(data.Strides + left, "stride")} cut", data.ClipsWithoutStrides > 0 ? [$"{Shown.Count(data.ClipsWithoutStrides, "clip")} without a stride kept"] : []),
            new($"{Shown.Count(data.Strides, "stride")} kept", Lines("strides", data.StridesLeftOut)),
        ];
        foreach (var (result, number) in input.Results.Select((r, i) => (r, i + 1)))
        {
            if (result.Answers.Count == 0) continue;
            var flow = result.Answers[0].Flow;
            boxes.Add(new($"{(input.Results.Count > 1 ? $"question {number}: " : "")}{Shown.Count(flow[^1].Left, "stride")} for {result.Answers[0].Outcome}", [.. flow.Skip(1).Where(f => f.LeftOut > 0).Select(f => $"{Shown.Count(f.LeftOut)} {f.Reason}")]));
            if (input.Results.Count > 1) break;
        }

        return [.. boxes];
    }

    private static string[] Lines(string what, IReadOnlyList<(string Reason, long Count)> counts) => [.. counts.Select(c => $"{Shown.Count(c.Count)} {what}: {Plain(c.Reason)}")];

    private static string Plain(string reason) => reason.Replace('_', ' ');
}
