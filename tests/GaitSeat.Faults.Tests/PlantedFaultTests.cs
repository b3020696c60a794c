using GaitSeat.Model;

namespace GaitSeat.Faults.Tests;

public sealed class PlantedFaultTests
{
    public static TheoryData<Fault> Every => [.. Enum.GetValues<Fault>()];

    /// <summary>Those that need centimetres: there is no percent-of-leg form of the landing speed.</summary>
    private static readonly Fault[] NeedScale = [Fault.HeavyLanding];

    [Fact]
    public void CleanRide_NoFinding() => Assert.Empty(Rides.Find(Rides.Strides(12)));

    [Theory, MemberData(nameof(Every))]
    public void Planted_FoundAndNothingElse(Fault fault)
    {
        var finding = Assert.Single(Rides.Find(Rides.Strides(8, Plants.Of(fault))));
        Assert.Equal(fault, finding.Fault);
        Assert.Equal(1, finding.SpellNumber);
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 8], finding.StrideNumbers);
        Assert.Equal(0, finding.StartSeconds);
        Assert.Equal(8 * Rides.StrideSeconds, finding.EndSeconds, 9);
        Assert.InRange(finding.ProbabilityPastThreshold, 0.8, 1);
        Assert.Contains(finding.Source, finding.Summary, StringComparison.Ordinal);
        Assert.Contains("8 of 8 strides", finding.Summary, StringComparison.Ordinal);
        Assert.DoesNotContain('{', finding.Summary);
        Assert.DoesNotContain('\n', finding.Summary);
    }

    [Theory, MemberData(nameof(Every))]
    public void PlantedWithoutScale_FoundInPercentOfLeg(Fault fault)
    {
        var plant = Plants.Of(fault);
        var found = Rides.Find(Rides.Strides(8, (m, i) =>
        {
            plant(m, i);
            Rides.Unscale(m);
        }));
        if (NeedScale.Contains(fault))
        {
            Assert.Empty(found);
            return;
        }

        var finding = Assert.Single(found);
        Assert.Equal(fault, finding.Fault);
        Assert.DoesNotContain("cm", finding.Unit, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Every))]
    public void PlantedButNothingMeasured_NothingClaimed(Fault fault)
    {
        var plant = Plants.Of(fault);
        var strides = Rides.Strides(8, (m, i) =>
        {
            plant(m, i);
            foreach (var definition in MeasureCatalogue.All) m[definition.Measure] = Measured.Missing;
        });
        Assert.Empty(Rides.Find(strides));
    }

    [Theory, MemberData(nameof(Every))]
    public void PlantedButVeryUncertain_NothingClaimed(Fault fault)
    {
        var plant = Plants.Of(fault);
        var strides = Rides.Strides(8, (m, i) =>
        {
            plant(m, i);
            foreach (var definition in MeasureCatalogue.All) m[definition.Measure] = m[definition.Measure] with { StandardError = 1000 };
        });
        Assert.Empty(Rides.Find(strides));
    }

    [Theory, MemberData(nameof(Every))]
    public void PlantedInTwoStrides_TooFewToCall(Fault fault) =>
        Assert.Empty(Rides.Find(Rides.Strides(2, Plants.Of(fault))));

    [Theory]
    [InlineData(Gait.SittingTrot)]
    [InlineData(Gait.Walk)]
    [InlineData(Gait.Canter)]
    [InlineData(Gait.Unknown)]
    public void OtherGait_NotJudged(Gait gait) =>
        Assert.Empty(RuleFindings.Find([Rides.Spell(gait)], Rides.Strides(8, Plants.Of(Fault.StirrupShort)), new()));

    [Fact]
    public void TwoSpells_EachByItsOwnStrides()
    {
        Stride[] strides = [.. Rides.Strides(6), .. Rides.Strides(6, Plants.Of(Fault.BusyHands), spell: 2)];
        var finding = Assert.Single(RuleFindings.Find([Rides.Spell(number: 2), Rides.Spell(number: 1)], strides, new()));
        Assert.Equal((2, Fault.BusyHands), (finding.SpellNumber, finding.Fault));
    }

    [Fact]
    public void SwingWithFootAhead_SaidOnceAsPressing()
    {
        var swing = Plants.Of(Fault.SwingingLowerLeg);
        var finding = Assert.Single(Rides.Find(Rides.Strides(8, (m, i) =>
        {
            swing(m, i);
            Rides.Length(m, StrideMeasure.StirrupDriftOffsetCm, StrideMeasure.StirrupDriftOffsetPctLeg, 21, 1);
        })));
        Assert.Equal(Fault.PressingTheStirrup, finding.Fault);
    }

    [Fact]
    public void SteepThighWithGoodRiseAndBentKnee_NotLong() =>
        Assert.DoesNotContain(Rides.Find(Rides.Strides(8, (m, _) => m[StrideMeasure.ThighAngleSit] = new(30, 1))), f => f.Fault == Fault.StirrupLong);

    [Fact]
    public void SteepThighWithStraightKnee_Long()
    {
        var found = Rides.Find(Rides.Strides(8, (m, _) =>
        {
            m[StrideMeasure.ThighAngleSit] = new(30, 1);
            m[StrideMeasure.KneeAngleSit] = new(150, 2);
        }));
        Assert.Equal(Fault.StirrupLong, Assert.Single(found).Fault);
        Assert.Contains("knee 150", found[0].Summary, StringComparison.Ordinal);
    }
}
