using System.Text;

namespace GaitSeat.Studio.Accuracy;

/// <summary>The errors of many clips in one page of Markdown. Everything in it is counted from the clips given; nothing is left out.</summary>
public sealed class AccuracyReport(IReadOnlyList<ClipErrors> clips)
{
    public string ToMarkdown()
    {
        var (all, sideOn) = (Selection.All(clips), Selection.SideOn(clips));
        var text = new StringBuilder("# Accuracy against known truth\n\n");
        text.Append(
            $"{clips.Count} clips ({clips.Count(c => c.Result.SetAside is not null)} set aside whole), {all.Found} strides matched, {all.MissedSilently} missed without a word, {all.SetAside} set aside under a reason, {all.Invented} invented: " +
            $"precision {MarkdownTable.Number(all.Precision, "0.000")}, recall {MarkdownTable.Number(all.Recall, "0.000")} of what was not set aside, {MarkdownTable.Number(all.RecallOfAll, "0.000")} of all.\n");
        Section(text, "Goals", "Errors are measured minus true, stride by stride. Rows that say they are not to be trusted are not in them.", GoalTable.Markdown(clips));
        Section(text, "Errors, everything not set aside", Columns, MeasureTable.AllMeasures(all));
        Section(text, "Errors, side-on within 15 deg and rider 200 px and more", "", MeasureTable.AllMeasures(sideOn));
        Section(text, "By condition", "Each stride stands in every group it was filmed in.", new ConditionTable(clips).Overview());
        Section(text, "Intervals by condition", IntervalTable.Words, IntervalTable.Markdown(clips));
        Section(text, "Gaits", "Seconds with the whole rider in the picture. False strides are those measured where the horse was not in rising trot, or that match no true one.", GaitTable.Markdown(clips));
        Section(text, "Left out", "", $"{LeftOutTable.Strides(clips)}\n{LeftOutTable.Frames(clips)}\n{LeftOutTable.Dropped(clips)}");
        Section(text, "Missed without a word", "", MissedTable.Markdown(clips));
        Section(text, "Clips", "", ClipTable.Markdown(clips));
        return text.ToString();
    }

    private const string Columns =
        "Limits of agreement: bias ± 1.96 standard deviations within and between clips (Bland and Altman 2007, J Biopharm Stat 17:571). " +
        "Width over need: median half width of the 95 % intervals over the 95th percentile of the error; 1 is as sharp as the errors allow.";

    private static void Section(StringBuilder text, string title, string words, string body)
    {
        text.Append("\n## ").Append(title).Append("\n\n");
        if (words.Length > 0) text.Append(words).Append("\n\n");
        text.Append(body);
    }
}
