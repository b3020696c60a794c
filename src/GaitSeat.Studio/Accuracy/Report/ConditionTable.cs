using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>The same figures group by group: yaw, size of the rider, camera, light and so on, each stride in the groups it was filmed in.</summary>
public sealed class ConditionTable(IReadOnlyList<ClipErrors> clips)
{
    private readonly (string Kind, string[] Groups)[] _kinds = Kinds(clips);

    /// <summary>Strides found and the goal measures, all kinds in one table.</summary>
    public string Overview()
    {
        var table = new MarkdownTable(["kind", "group", "found / missed / set aside / invented", .. GoalTable.Measures.Select(m => Name(m) + ": MAE (bias) holds")]);
        foreach (var (kind, group, selection) in Selections())
        {
            table.Row([
                kind,
                group,
                $"{selection.Found} / {selection.MissedSilently} / {selection.SetAside} / {selection.Invented}",
                .. GoalTable.Measures.Select(m => Cell(selection, m)),
            ]);
        }

        return table.ToString();
    }

    /// <summary>Every measure with every figure: a page of its own.</summary>
    public string EveryMeasure()
    {
        var text = new StringBuilder("# Errors by condition\n\nEach stride stands in every group it was filmed in. Columns as in `accuracy.md`.\n");
        foreach (var measure in TrueMeasures.Known)
        {
            var table = MeasureTable.New("kind: group");
            foreach (var (kind, group, selection) in Selections()) MeasureTable.Row(table, $"{kind}: {group}", selection, measure);
            text.Append('\n').Append("## ").Append(Name(measure)).Append("\n\n").Append(table);
        }

        return text.ToString();
    }

    /// <summary>Share of strides whose interval holds the truth, percent, by group; groups without a stride are not there.</summary>
    public IEnumerable<(string Group, int Count, int Clips, double HeldPct)> Held(StrideMeasure measure) =>
        from s in Selections()
        let sum = ErrorSummary.Of(s.Selection.Errors(measure))
        where sum.Count > 0
        select ($"{s.Kind}: {s.Group}", sum.Count, sum.Clips, sum.HeldPct);

    private IEnumerable<(string Kind, string Group, Selection Selection)> Selections() =>
        from kind in _kinds
        from @group in kind.Groups
        select (kind.Kind, @group, new Selection(clips, c => c.Groups.GetValueOrDefault(kind.Kind) == @group, _ => true));

    private static string Cell(Selection selection, StrideMeasure measure)
    {
        var sum = ErrorSummary.Of(selection.Errors(measure));
        var digits = MeasureTable.Digits(measure);
        return sum.Count == 0 ? "–" : $"{MarkdownTable.Number(sum.Mae, digits)} ({MarkdownTable.Signed(sum.Bias, digits)}) {MarkdownTable.Number(sum.HeldPct, "0")} %";
    }

    private static string Name(StrideMeasure measure) => $"{MeasureCatalogue.Get(measure).Column}";

    private static (string Kind, string[] Groups)[] Kinds(IReadOnlyList<ClipErrors> clips) =>
    [
        .. clips.SelectMany(c => c.Found.Select(f => f.Circumstances).Concat(c.Missed.Select(m => m.Circumstances)))
            .SelectMany(c => c.Groups)
            .GroupBy(g => g.Key)
            .Select(g => (g.Key, g.Select(v => v.Value).Distinct().OrderBy(v => double.TryParse(v.Split('-', ' ')[0], out var number) ? number : double.MaxValue).ThenBy(v => v, StringComparer.Ordinal).ToArray())),
    ];
}
