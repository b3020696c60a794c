using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>What each gait was called, and the strides found where there was no rising trot.</summary>
public static class GaitTable
{
    /// <summary>Columns of the confusion table: the gaits, unknown among them, and the frames left out.</summary>
    public static IReadOnlyList<Gait?> Called { get; } = [Gait.Halt, Gait.Walk, Gait.RisingTrot, Gait.SittingTrot, Gait.Canter, Gait.Unknown, null];

    public static IReadOnlyList<Gait> True { get; } = [Gait.Halt, Gait.Walk, Gait.RisingTrot, Gait.SittingTrot, Gait.Canter];

    public static string NameOf(Gait? called) => called?.ToTerm() ?? "left out";

    /// <summary>Seconds by true gait (rows) and what it was called (columns).</summary>
    public static double[][] Seconds(IReadOnlyList<ClipErrors> clips) =>
        [.. True.Select(t => Called.Select(c => clips.SelectMany(e => e.Gaits).Where(g => g.True == t && g.Called == c).Sum(g => g.Seconds)).ToArray())];

    internal static string Markdown(IReadOnlyList<ClipErrors> clips)
    {
        var table = new MarkdownTable(["true gait, s", .. Called.Select(NameOf), "false strides", "a minute"]);
        var seconds = Seconds(clips);
        for (var i = 0; i < True.Count; i++)
        {
            var gait = True[i];
            var strides = clips.Sum(c => c.Invented.Count(v => v.TrueGait == gait));
            table.Row([
                gait.ToTerm(),
                .. seconds[i].Select(s => MarkdownTable.Number(s, "0.0")),
                MarkdownTable.Count(strides),
                seconds[i].Sum() > 0 ? MarkdownTable.Number(strides / (seconds[i].Sum() / 60), "0.00") : "–",
            ]);
        }

        return table.ToString();
    }
}
