using GaitSeat.Faults.Features;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Tests.Season;
using GaitSeat.Faults.Training;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests.Flags;

public sealed class FlaggerTests
{
    private static readonly IReadOnlyDictionary<Fault, FaultModel> NoModel = new Dictionary<Fault, FaultModel>();
    private static readonly IReadOnlyDictionary<Fault, FaultModel> ChairSeat = new Dictionary<Fault, FaultModel> { [Fault.ChairSeat] = Trained.Outcome.Model! };

    [Fact]
    public void WithoutModels_FlagsAreTheFindingsOfTheRules()
    {
        var flagger = new Flagger(NoModel, new(), new());
        var flags = flagger.Flag(flagger.Score(Trained.Season.Table));
        var findings = Trained.Season.Spells.SelectMany(s => RuleFindings.Find([s.Spell], s.Strides, new()).Select(f => (s.Key, f.Fault, f.Summary))).Order();
        Assert.Equal(findings, flags.Select(f => (f.Spell.Key, f.Score.Fault, f.Drivers.Single())).Order());
    }

    [Fact]
    public void ModelsFlag_SaysInPlainWordsWhatDroveIt()
    {
        var flags = Chair();
        Assert.NotEmpty(flags);
        var flag = flags.Where(f => f.Score.Rule is null).MaxBy(f => f.Score.Probability)!;
        Assert.Contains(flag.Drivers, d => d.StartsWith("foot ", StringComparison.Ordinal) || d.StartsWith("heel ", StringComparison.Ordinal));
        Assert.Contains(flag.Drivers, d => d.Contains("further forward than this rider's usual", StringComparison.Ordinal));
        Assert.EndsWith("(no rule agrees)", flag.Summary, StringComparison.Ordinal);
        Assert.Equal((flag.Spell.Spell.StartSeconds, flag.Spell.Spell.EndSeconds), (flag.StartSeconds, flag.EndSeconds));
    }

    [Fact]
    public void ClearBreachOfARule_IsFlaggedThoughTheModelIsCalm()
    {
        var rules = new RuleSettings { ChairSeat = new() { FootAheadCm = -40, HeelAheadCm = -40, FootAheadPctLeg = -50, HeelAheadPctLeg = -50 } };
        var scores = new Flagger(ChairSeat, rules, new()).Score(Trained.Season.Table).Where(s => s.Fault == Fault.ChairSeat).ToArray();
        Assert.Contains(scores, s => s.Probability < 0.2);
        Assert.All(scores, s => Assert.True(s.IsFlagged));
        var calm = new Flagger(ChairSeat, rules, new()).Flag(scores).First(f => f.Score.Probability < 0.2);
        Assert.Equal(calm.Score.Rule!.Summary, Assert.Single(calm.Drivers));
    }

    [Fact]
    public void FaultWithoutAModel_IsLeftToItsRule()
    {
        var scores = new Flagger(ChairSeat, new(), new()).Score(Trained.Season.Table);
        Assert.Equal(Trained.Season.Table.Rows.Count * Enum.GetValues<Fault>().Length, scores.Count);
        Assert.All(scores, s => Assert.Equal(s.Fault == Fault.ChairSeat, s.ClassifierHash is not null));
    }

    [Fact]
    public void Words_SayValueIntervalAndDistanceFromUsual()
    {
        double[] thigh = [54, 56, 58];
        RiddenSpell Spell(string clip, double deg) => new(new(clip, clip, "p", "m", "v", 1), "R1", null, null, null, Rides.Spell(), Rides.Strides(3, (m, i) => m[StrideMeasure.ThighAngleSit] = new(deg + thigh[i] - 56, 0.01)), new Dictionary<string, string>());
        var row = FeatureTable.Of([Spell("a", 56), Spell("b", 45), Spell("c", 45), Spell("d", 45)], new()).Rows[0];
        var features = Enumerable.Range(0, FeatureCatalogue.All.Count).Where(i => FeatureCatalogue.All[i].Family == "thigh_angle_sit_deg").ToArray();
        Assert.Equal("thigh 56 ± 2 deg at the sit, 11 above this rider's usual", DriverWords.Of(row, features, features[0]));
        Assert.Equal("thigh 56 ± 2 deg at the sit, 11 above this rider's usual, growing by 2 a stride", DriverWords.Of(row, features, features[2]));
    }

    [Fact]
    public void Words_SayBehindInsteadOfMinusAhead()
    {
        var spell = new RiddenSpell(new("a", "a", "p", "m", "v", 1), "R1", null, null, null, Rides.Spell(), Rides.Strides(3, (m, _) => m[StrideMeasure.HeelOffsetPctLeg] = new(-12, 1)), new Dictionary<string, string>());
        var features = Enumerable.Range(0, FeatureCatalogue.All.Count).Where(i => FeatureCatalogue.All[i].Family == "heel_offset_pct_leg").ToArray();
        Assert.Equal("heel 12 ± 2 % of leg behind the plumb line", DriverWords.Of(FeatureTable.Of([spell], new()).Rows[0], features, features[0]));
    }

    private static IReadOnlyList<Flag> Chair()
    {
        var flagger = new Flagger(ChairSeat, new(), new());
        return flagger.Flag([.. flagger.Score(Trained.Season.Table).Where(s => s.Fault == Fault.ChairSeat)]);
    }
}
