using GaitSeat.Faults.Features;
using GaitSeat.Faults.Training;
using GaitSeat.Faults.Verdicts;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests.Season;

/// <summary>
/// A made season: riders with a build and a habit of their own, spells with strides that scatter as measured ones do, and a chair seat
/// planted in some, by as much as a coach would see against the rider's usual. No number is from a person.
/// </summary>
internal sealed class PlantedSeason
{
    internal const string Pipeline = "pipe";
    internal const string Model = "model";
    internal const double Planted = 0.25;
    private const int Strides = 8;
    private const double LegCm = 80;

    private PlantedSeason(IReadOnlyList<RiddenSpell> spells, IReadOnlySet<SpellKey> there)
    {
        (Spells, There) = (spells, there);
        Table = FeatureTable.Of(spells, new());
    }

    internal IReadOnlyList<RiddenSpell> Spells { get; }

    internal IReadOnlySet<SpellKey> There { get; }

    internal FeatureTable Table { get; }

    internal static PlantedSeason Make(int riders, int clips, int seed = 1)
    {
        var random = new Random(seed);
        var (spells, there) = (new List<RiddenSpell>(), new HashSet<SpellKey>());
        for (var r = 0; r < riders; r++)
        {
            // Where the foot usually lies, between riders: wide enough that a fixed limit cannot tell habit from build.
            var (foot, heel, lean) = (14 + 4 * Normal(random), -2 + 3 * Normal(random), 5 + 3 * Normal(random));
            for (var c = 0; c < clips; c++)
            {
                var planted = random.NextDouble() < Planted;
                var by = planted ? 5 + 4 * random.NextDouble() : 0;
                var spell = Spell(random, r, c, foot + by + 1.5 * Normal(random), heel + by + 1.5 * Normal(random), lean + 1.5 * Normal(random));
                spells.Add(spell);
                if (planted) there.Add(spell.Key);
            }
        }

        return new(spells, there);
    }

    /// <summary>Labels with a share turned over, as a hasty coach would.</summary>
    internal TrainingSet Judged(double noise, int seed = 2, Func<SpellKey, bool>? truth = null)
    {
        var random = new Random(seed);
        var labels = Table.Rows.ToDictionary(r => r.Key, r => (truth ?? There.Contains)(r.Key) != random.NextDouble() < noise);
        return TrainingSet.Of(Table, new LabelSet(Fault.ChairSeat, labels, 0, 0, 0, 0), new RuleSettings());
    }

    internal static TrainingSettings Quick { get; } = new() { OuterFolds = 4, InnerFolds = 2, BootstrapRounds = 300, Trees = 40 };

    private static RiddenSpell Spell(Random random, int rider, int clip, double foot, double heel, double lean)
    {
        var strides = Rides.Strides(Strides, (m, _) =>
        {
            Rides.Length(m, StrideMeasure.StirrupDriftOffsetCm, StrideMeasure.StirrupDriftOffsetPctLeg, foot + Normal(random), 1);
            Rides.Length(m, StrideMeasure.HeelOffsetCm, StrideMeasure.HeelOffsetPctLeg, heel + Normal(random), 1);
            m[StrideMeasure.TrunkLeanSit] = new(lean + Normal(random), 1);
            m[StrideMeasure.ThighAngleSit] = new(45 + 2 * Normal(random), 1);
            m[StrideMeasure.RiseHeightPctLeg] = new(100 * (10 + Normal(random)) / LegCm, 0.6);
            m[StrideMeasure.RiderHeight] = new(rider % 2 == 0 ? 200 : 400, 2);
            if (clip % 5 == 0) Rides.Unscale(m);
        });
        var key = Convert.ToHexStringLower(BitConverter.GetBytes(rider * 1000L + clip)).PadRight(64, '0');
        var provenance = new Provenance(key, $"r{rider}-c{clip}.mp4", Pipeline, Model, "test", Provenance.CurrentSchemaVersion);
        return new(provenance, $"R{rider:00}", $"H{rider / 2:00}", new DateOnly(2026, 4, 1).AddDays(clip), clip % 2 == 0 ? "left" : "right",
            Rides.Spell(strides: Strides), strides, new Dictionary<string, string> { ["horse_colour"] = rider % 3 == 0 ? "grey" : "bay" });
    }

    /// <summary>Box and Muller.</summary>
    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
