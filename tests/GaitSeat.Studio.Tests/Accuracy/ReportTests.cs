using GaitSeat.Model;
using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Studio.Tests.Accuracy;

public sealed class ReportTests
{
    /// <summary>Ten true strides of 8 cm; nine measured, 0.5 cm too high, one of them not to be trusted and 6 cm off; one invented in the walk.</summary>
    private static ClipErrors Clip(double yawDeg = 0)
    {
        var truth = Made.Truth(14, Enumerable.Range(0, 10).Select(i => Made.TrueStride(i)), [new(0, 10, "rising"), new(10, 14, "walk")], yawDeg);
        Stride[] strides =
        [
            .. Enumerable.Range(0, 8).Select(i => Made.Stride(i, rise: 8.5)),
            Made.Stride(8, rise: 14, quality: "untrusted_yaw"),
            Made.Stride(12),
        ];
        return ClipErrors.Compare(truth, Made.Result(truth, strides, [Made.Spell(Gait.RisingTrot, 0, 9), Made.Spell(Gait.Canter, 9, 10), Made.Spell(Gait.Walk, 10, 14)]));
    }

    [Fact]
    public void Selection_CountsStridesAndKeepsTheUntrustedApart()
    {
        var all = Selection.All([Clip()]);

        Assert.Equal((9, 1, 0, 1), (all.Found, all.MissedSilently, all.SetAside, all.Invented));
        Assert.Equal(0.9, all.Precision, 12);
        Assert.Equal(0.9, all.Recall, 12);
        Assert.Equal(0.5, ErrorSummary.Of(all.Errors(StrideMeasure.RiseHeightCm)).Mae, 9);
        Assert.Equal(6, Assert.Single(all.Untrusted(StrideMeasure.RiseHeightCm)).Error, 9);
        Assert.Equal(13.0 / 14, all.GaitRight, 2);
        Assert.Equal(1, all.FalseTrotStrides);
        Assert.Equal(15, all.FalseTrotStridesPerMinute, 0.3);
    }

    [Fact]
    public void Recall_LeavesOutWhatWasSetAsideUnderAReason()
    {
        var truth = Made.Truth(4, [Made.TrueStride(0), Made.TrueStride(1), Made.TrueStride(2)]);
        var clip = ClipErrors.Compare(truth, Made.Result(truth, [Made.Stride(0)], leftOut: [new(LeftOutScope.Stride, "cut_by_gap", 1, "", 1)]));

        var all = Selection.All([clip]);

        Assert.Equal(0.5, all.Recall, 12);
        Assert.Equal(1.0 / 3, all.RecallOfAll, 12);
    }

    [Theory]
    [InlineData("stride precision", "0.900", "**no**", "0.900", "**no**")]
    [InlineData("rise height, MAE, cm", "0.50", "yes", "0.50", "yes")]
    [InlineData("drift swing, MAE, cm", "–", "no data", "–", "no data")]
    [InlineData("gait of spells, share right", "0.929", "**no**", "0.929", "yes")]
    [InlineData("false trot strides a minute", "15.00", "**no**", "15.00", "**no**")]
    public void Goal_IsMetOrNot(string goal, string sideOn, string sideOnMet, string all, string allMet)
    {
        var cells = Row(GoalTable.Markdown([Clip()]), goal);

        Assert.Equal((sideOn, sideOnMet, all, allMet), (cells[2], cells[3], cells[5], cells[6]));
    }

    [Fact]
    public void TurnedStrides_CountInTheWiderColumnOnly()
    {
        var cells = Row(GoalTable.Markdown([Clip(yawDeg: 20)]), "rise height, MAE");

        Assert.Equal(("no data", "0.50"), (cells[3], cells[5]));
    }

    [Fact]
    public void Page_HasEachPartWithItsFigures()
    {
        var page = new AccuracyReport([Clip()]).ToMarkdown();

        Assert.Contains("9 strides matched, 1 missed without a word, 0 set aside under a reason, 1 invented", page, StringComparison.Ordinal);
        Assert.Equal(["measured", "8", "80.0 %"], Row(page, "measured"));
        Assert.Equal(["measured, said not to be trusted", "1", "10.0 %"], Row(page, "measured, said"));
        var rise = Row(page, "rise_height_cm, cm");
        Assert.Equal(("8", "+0.50", "0.50", "100.0 %", "1", "6.00"), (rise[1], rise[3], rise[4], rise[8], rise[11], rise[12]));
        Assert.StartsWith("0.50 (+0.50) 100 %", Row(page, "yaw | 0-15")[4], StringComparison.Ordinal);
    }

    /// <summary>Eight strides of which six hold: P(X ≤ 6) of a binomial of 8 at 0.9 is 1 - 0.9^8 - 8 · 0.9^7 · 0.1 = 0.187.</summary>
    [Fact]
    public void GroupsWhoseIntervalsHoldTooSeldom_AreToldWithTheirChance()
    {
        var truth = Made.Truth(8, Enumerable.Range(0, 8).Select(i => Made.TrueStride(i)), [new(0, 8, "rising")], 0);
        Stride[] strides = [.. Enumerable.Range(0, 8).Select(i => Made.Stride(i, rise: i < 2 ? 30 : 8))];

        var page = new AccuracyReport([ClipErrors.Compare(truth, Made.Result(truth, strides, [Made.Spell(Gait.RisingTrot, 0, 8)]))]).ToMarkdown();

        var part = page[page.IndexOf("## Intervals by condition", StringComparison.Ordinal)..page.IndexOf("## Gaits", StringComparison.Ordinal)];
        Assert.Equal(["rise_height_cm", "yaw: 0-15", "8", "1", "6 (75.0 %)", "0.19"], Row(part, "rise_height_cm | yaw"));
        Assert.DoesNotContain("stride_duration_s", part, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryMeasurePage_HasARowForEachGroup()
    {
        var page = new ConditionTable([Clip(), Clip(yawDeg: 30)]).EveryMeasure();

        Assert.Equal("8", Row(page[page.IndexOf("## rise_height_cm", StringComparison.Ordinal)..], "yaw: 25-40")[1]);
    }

    private static string[] Row(string page, string begin) =>
        [.. page.Split('\n').First(l => l.StartsWith($"| {begin}", StringComparison.Ordinal)).Trim('|', ' ').Split(" | ").Select(c => c.Trim())];
}
