using GaitSeat.Faults.Features;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests.Features;

public sealed class FeatureTests
{
    [Fact]
    public void Strides_GiveMeanSpreadAndTrend()
    {
        double[] thigh = [44, 46, 51];
        var row = Row([Spell("a", Rides.Strides(3, (m, i) => m[StrideMeasure.ThighAngleSit] = new(thigh[i], 1)))]);
        Assert.Equal(47, row.Value("thigh_angle_sit_deg_mean"), 12);
        Assert.Equal(Math.Sqrt((9 + 1 + 16) / 2.0), row.Value("thigh_angle_sit_deg_sd"), 12);
        Assert.Equal(3.5, row.Value("thigh_angle_sit_deg_trend"), 12);
    }

    [Fact]
    public void DroppedStride_KeepsItsPlaceInTheTrend()
    {
        Stride[] strides = [.. Rides.Strides(4, (m, i) => m[StrideMeasure.ThighAngleSit] = new(40 + 2 * i, 1)).Where(s => s.Number != 2)];
        Assert.Equal(2, Row([Spell("a", strides)]).Value("thigh_angle_sit_deg_trend"), 12);
    }

    [Fact]
    public void UntrustedStride_IsLeftOutAndCounted()
    {
        var strides = Rides.Strides(4, (m, i) => m[StrideMeasure.ThighAngleSit] = new(i == 3 ? 90 : 45, 1));
        strides[3] = strides[3] with { Quality = Stride.UntrustedPrefix + "yaw" };
        var row = Row([Spell("a", strides)]);
        Assert.Equal(45, row.Value("thigh_angle_sit_deg_mean"), 12);
        Assert.Equal([3, 25], [row.Value("trusted_strides"), row.Value("left_out_pct")]);
    }

    [Fact]
    public void OtherRein_IsTakenOff()
    {
        RiddenSpell[] spells = [Thigh("a", 50, "left"), Thigh("b", 44, "right"), Thigh("c", 46, "right")];
        Assert.Equal(5, Row(spells).Value("thigh_angle_sit_deg_rein_diff"), 12);
        Assert.True(double.IsNaN(Row([Thigh("a", 50, null), .. spells[1..]]).Value("thigh_angle_sit_deg_rein_diff")));
        Assert.True(double.IsNaN(Row([spells[0]]).Value("thigh_angle_sit_deg_rein_diff")));
    }

    [Fact]
    public void Usual_IsTheMedianOfTheRidersOtherClips()
    {
        RiddenSpell[] others = [Thigh("b", 44), Thigh("c", 46), Thigh("d", 80), Thigh("e", 47)];
        Assert.Equal(56 - 46.5, Row([Thigh("a", 56), .. others]).Value("thigh_angle_sit_deg_from_usual"), 12);
        Assert.Equal(56 - 46, Row([Thigh("a", 56), .. others[..3]]).Value("thigh_angle_sit_deg_from_usual"), 12);
        Assert.True(double.IsNaN(Row([Thigh("a", 56), .. others[..2]]).Value("thigh_angle_sit_deg_from_usual")));
    }

    [Fact]
    public void AnotherRidersSpells_ChangeNothing()
    {
        RiddenSpell[] own = [Thigh("a", 56), Thigh("b", 44), Thigh("c", 46), Thigh("d", 47)];
        RiddenSpell[] other = [.. own.Select((s, i) => Thigh("z" + i, 70 + i, "right", "R2"))];
        Assert.Equal(Row(own).Values, Row([.. own, .. other]).Values);
    }

    [Fact]
    public void NothingMeasured_IsMissingAndNeverZero()
    {
        var row = Row([Spell("a", Rides.Strides(3, (m, _) => Rides.Unscale(m)))]);
        Assert.True(double.IsNaN(row.Value("sit_impact_cm_s_mean")));
        Assert.True(double.IsNaN(row.Value("knee_angle_top_deg_mean")));
        Assert.Equal(45, row.Value("thigh_angle_sit_deg_mean"), 12);
    }

    [Fact]
    public void SpellsOfOtherGaitsOrTooShort_AreCounted()
    {
        var walk = Spell("w", Rides.Strides(4)) with { Spell = Rides.Spell(Gait.Walk) };
        var table = FeatureTable.Of([walk, Spell("s", Rides.Strides(2)), Spell("a", Rides.Strides(3))], new());
        Assert.Equal((1, 1, 1), (table.Rows.Count, table.OtherGaits, table.TooFewStrides));
    }

    [Fact]
    public void Page_IsTheOneTheCodeMakes()
    {
        var path = Path.Combine(Repository.Root, "docs", "features.md");
        if (Environment.GetEnvironmentVariable("GAITSEAT_UPDATE") == "1") File.WriteAllText(path, FeatureDictionary.ToMarkdown());
        Assert.True(File.Exists(path), $"{path} is missing; run the tests once with GAITSEAT_UPDATE=1.");
        Assert.Equal(FeatureDictionary.ToMarkdown(), File.ReadAllText(path).ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Names_AreThereOnce() => Assert.Equal(FeatureCatalogue.All.Count, FeatureCatalogue.All.Select(f => f.Name).Distinct().Count());

    private static FeatureRow Row(RiddenSpell[] spells) => FeatureTable.Of(spells, new()).Rows.Single(r => r.Spell.Provenance.ClipFile == "a");

    private static RiddenSpell Thigh(string clip, double deg, string? rein = "left", string rider = "R1") =>
        Spell(clip, Rides.Strides(3, (m, _) => m[StrideMeasure.ThighAngleSit] = new(deg, 1)), rein, rider);

    private static RiddenSpell Spell(string clip, Stride[] strides, string? rein = "left", string rider = "R1") =>
        new(new(clip, clip, "p", "m", "v", 1), rider, null, null, rein, Rides.Spell(strides: strides.Length), strides, new Dictionary<string, string>());
}
