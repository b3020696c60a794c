using GaitSeat.Faults.Tests.Season;
using GaitSeat.Faults.Training;
using GaitSeat.Faults.Verdicts;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests.Training;

/// <summary>Too little to learn from: said, with what would be needed, and nothing is trained.</summary>
public sealed class RefusalTests
{
    private static readonly PlantedSeason Season = PlantedSeason.Make(riders: 10, clips: 6);

    [Fact]
    public void NobodyJudged_KeepsToTheRules() => Refused([], "Nobody has judged");

    [Fact]
    public void OneAnswerOnly_KeepsToTheRules() => Refused(Season.Table.Rows.Select(r => (r.Key, true)), "All 60 verdicts say the same");

    [Fact]
    public void FewPositives_KeepToTheRules() => Refused(Season.Table.Rows.Select((r, i) => (r.Key, i % 6 == 0)), "10 spells with the fault and 50 without");

    [Fact]
    public void FaultOfFewRiders_KeepsToTheRules() => Refused(Season.Table.Rows.Select(r => (r.Key, r.Spell.Rider is "R00" or "R01" or "R02" or "R03")), "come from 4 riders");

    [Fact]
    public void SpellsWithoutRider_AreLeftOutAndCounted()
    {
        var table = Features.FeatureRows.WithoutRider(Season.Table);
        var data = TrainingSet.Of(table, Labels(table.Rows.Select(r => (r.Key, true))), new RuleSettings());
        Assert.Empty(data.Spells);
        Assert.Equal(60, data.WithoutRider);
    }

    private static void Refused(IEnumerable<(SpellKey, bool)> judged, string why)
    {
        var outcome = new FaultTrainer(new(), new(), "test").Train(TrainingSet.Of(Season.Table, Labels(judged), new RuleSettings()), null, CancellationToken.None);
        Assert.Equal(TrainingEnd.TooFew, outcome.End);
        Assert.Null(outcome.Model);
        Assert.Contains(why, outcome.Reason, StringComparison.Ordinal);
        Assert.EndsWith("The rules stay in force.", outcome.Reason, StringComparison.Ordinal);
    }

    private static LabelSet Labels(IEnumerable<(SpellKey Key, bool There)> judged) => new(Fault.ChairSeat, judged.ToDictionary(j => j.Key, j => j.There), 0, 0, 0, 0);
}
