using MathNet.Numerics.Distributions;

namespace GaitSeat.Studio.Accuracy;

/// <summary>The groups in which the 95 % intervals of a goal measure hold less often than asked, and whether that may be chance.</summary>
internal static class IntervalTable
{
    /// <summary>Share of intervals that are to hold in each group.</summary>
    private const double Asked = 0.9;

    public const string Words =
        "Groups in which the intervals of a goal measure hold in less than 90 of a hundred strides. Chance: how often as few or fewer would hold if each held with a chance of 0.9 by itself (binomial); " +
        "strides of one clip hang together, so that chance is greater than that.";

    public static string Markdown(IReadOnlyList<ClipErrors> clips)
    {
        var conditions = new ConditionTable(clips);
        var table = new MarkdownTable("measure", "group", "strides", "clips", "intervals that hold", "chance");
        var few = from measure in GoalTable.Measures
                  from g in conditions.Held(measure)
                  where g.HeldPct < 100 * Asked
                  let held = (int)Math.Round(g.HeldPct / 100 * g.Count)
                  select (Measure: measure, Of: g, Held: held, Chance: Binomial.CDF(Asked, g.Count, held));
        foreach (var row in few.OrderBy(r => r.Chance))
        {
            table.Row(
                Model.MeasureCatalogue.Get(row.Measure).Column,
                row.Of.Group,
                MarkdownTable.Count(row.Of.Count),
                MarkdownTable.Count(row.Of.Clips),
                $"{MarkdownTable.Count(row.Held)} ({MarkdownTable.Share(row.Held, row.Of.Count)})",
                MarkdownTable.Number(row.Chance, "0.00"));
        }

        return table.ToString();
    }
}
