using GaitSeat.Faults.Drift;
using GaitSeat.Faults.Features;
using GaitSeat.Faults.Tests.Season;
using GaitSeat.Faults.Training;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests.Drift;

public sealed class DriftTests
{
    /// <summary>By hand, with half a spell in each bin: (8.5, 2.5)/11 then, (2.5, 8.5)/11 now.</summary>
    [Fact]
    public void Index_IsTheOneByHand() =>
        Assert.Equal(2 * (6 / 11.0) * Math.Log(8.5 / 2.5), DriftWatch.Index([8, 2], [2, 8]), 12);

    [Fact]
    public void SameSpells_HaveNotMoved() => Assert.Equal(0, DriftWatch.Index([8, 2, 5], [8, 2, 5]), 12);

    /// <summary>Bins hold what lies up to and with their upper edge; the last counts what is missing.</summary>
    [Fact]
    public void Bins_HoldEveryValueAndCountTheMissing()
    {
        Assert.Equal([2, 1, 1, 1], FeatureReference.CountIn([1, 2], [0.5, 1, 1.5, 9, double.NaN]));
        Assert.Equal([10, 10], [.. FeatureReference.Of("f", [.. Enumerable.Range(0, 100).Select(i => (double)i)]).Counts[..2]]);
    }

    [Fact]
    public void TrainingSpellsThemselves_GiveNoWarning() => Assert.DoesNotContain(Watch(Trained.Season.Table), d => d.HasMoved);

    [Fact]
    public void SteeperThighs_GiveAWarningForThemAlone()
    {
        var moved = Trained.Season.Spells.Select(s => s with { Strides = [.. s.Strides.Select(Steeper)] });
        Assert.Equal(["thigh_angle_sit_deg_mean"], Watch(FeatureTable.Of(moved, new())).Where(d => d.HasMoved).Select(d => d.Feature).Distinct());
    }

    [Fact]
    public void MonthWithFewSpells_IsNotJudged() =>
        Assert.Empty(DriftWatch.Of(Trained.Outcome.Model!.Info, Trained.Season.Table, new() { MinimumSpells = 100000 }));

    [Fact]
    public void Agreement_CountsFlaggedAnswersByMonth()
    {
        Verdict Said(int month, VerdictAnswer answer, bool? told) => new("k", "k", 1, Fault.ChairSeat, answer, "J", new(2026, month, 3, 0, 0, 0, TimeSpan.Zero), null, Drawn.Ranked, told, null, "p", "m", null);
        var months = DriftWatch.Agreement([Said(5, VerdictAnswer.Agrees, true), Said(5, VerdictAnswer.DoesNot, true), Said(5, VerdictAnswer.CannotTell, true), Said(5, VerdictAnswer.Agrees, false), Said(6, VerdictAnswer.Agrees, true)], 0.95);
        Assert.Equal([("2026-05", 2, 0.5), ("2026-06", 1, 1.0)], months.Select(m => (m.Month, m.Judged, m.Agreed.Value)));
    }

    private static IReadOnlyList<FeatureDrift> Watch(FeatureTable table) => DriftWatch.Of(Trained.Outcome.Model!.Info, table, new());

    private static Stride Steeper(Stride stride)
    {
        var measures = new MeasureSet();
        foreach (var m in MeasureCatalogue.All) measures[m.Measure] = stride.Measures[m.Measure];
        measures[StrideMeasure.ThighAngleSit] = new(stride.Measures[StrideMeasure.ThighAngleSit].Value - 6, 1);
        return stride with { Measures = measures };
    }
}
