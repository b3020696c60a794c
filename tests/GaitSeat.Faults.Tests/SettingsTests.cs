using System.ComponentModel.DataAnnotations;
using System.Reflection;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests;

public sealed class SettingsTests
{
    [Theory]
    [InlineData(44, true)]
    [InlineData(47, false)]
    public void ShortLimit_IsTheSettings(double limit, bool found)
    {
        var settings = new RuleSettings { StirrupShort = new() { ShortDeg = limit } };
        Assert.Equal(found, Rides.Find(Rides.Strides(8), settings).Any(f => f.Fault == Fault.StirrupShort));
    }

    [Fact]
    public void ClearlyShort_NamesTheStrongerLimit()
    {
        Assert.Equal(55, Assert.Single(Rides.Find(Rides.Strides(8, Plants.Of(Fault.StirrupShort)))).Threshold);
        Assert.Equal(50, Assert.Single(Rides.Find(Rides.Strides(8, (m, _) => m[StrideMeasure.ThighAngleSit] = new(53, 1)))).Threshold);
    }

    [Fact]
    public void MinimumStrides_IsTheSettings() =>
        Assert.Single(Rides.Find(Rides.Strides(1, Plants.Of(Fault.StirrupShort)), new RuleSettings { MinimumStrides = 1 }));

    [Fact]
    public void MinimumProbability_IsTheSettings()
    {
        // One standard error past the limit: 0.84.
        var strides = Rides.Strides(8, (m, _) => m[StrideMeasure.ThighAngleSit] = new(51, 1));
        Assert.Single(Rides.Find(strides, new RuleSettings { MinimumProbability = 0.83 }));
        Assert.Empty(Rides.Find(strides, new RuleSettings { MinimumProbability = 0.85 }));
    }

    [Fact]
    public void Source_IsCarriedByFindingAndLine()
    {
        var settings = new RuleSettings { StirrupShort = new() { Source = "our own yard's rule" } };
        var finding = Assert.Single(Rides.Find(Rides.Strides(8, Plants.Of(Fault.StirrupShort)), settings));
        Assert.Equal("our own yard's rule", finding.Source);
        Assert.Contains("our own yard's rule", finding.Summary, StringComparison.Ordinal);
    }

    [Fact]
    public void FewStridesInCentimetres_PercentOfLegIsUsed()
    {
        var plant = Plants.Of(Fault.SmallRise);
        var strides = Rides.Strides(8, (m, i) =>
        {
            plant(m, i);
            if (i >= 2) Rides.Unscale(m);
        });
        var finding = Assert.Single(Rides.Find(strides));
        Assert.Equal("rise_height_pct_leg", finding.Measure);
        Assert.Equal(6.25, finding.Threshold);
        Assert.Equal(8, finding.StrideNumbers.Count);
    }

    /// <summary>The two limits of a length mean the same at the leg length the settings state, 80 cm.</summary>
    [Fact]
    public void EveryPercentLimit_MatchesItsCentimetreLimitAtALegOf80()
    {
        var pairs = 0;
        foreach (var rule in Rules())
        {
            foreach (var cm in rule.GetType().GetProperties().Where(p => p.Name.EndsWith("Cm", StringComparison.Ordinal)))
            {
                var pct = rule.GetType().GetProperty(cm.Name[..^2] + "PctLeg");
                Assert.NotNull(pct);
                Assert.Equal((double)cm.GetValue(rule)! / 0.8, (double)pct.GetValue(rule)!, 9);
                pairs++;
            }
        }

        Assert.Equal(10, pairs);
    }

    [Fact]
    public void EveryDefault_IsWithinItsRangeAndHasOne()
    {
        foreach (var rule in Rules().Prepend(new RuleSettings()))
        {
            Assert.All(rule.GetType().GetProperties().Where(p => p.PropertyType == typeof(double) || p.PropertyType == typeof(int)),
                p => Assert.True(p.GetCustomAttribute<RangeAttribute>()?.IsValid(p.GetValue(rule)) ?? false, $"{rule.GetType().Name}.{p.Name}"));
        }
    }

    [Fact]
    public void EveryFault_HasARuleWithASource()
    {
        var names = typeof(RuleSettings).GetProperties().Select(p => p.Name).ToHashSet();
        Assert.All(Enum.GetNames<Fault>(), name => Assert.Contains(name, names));
        Assert.All(Rules(), rule => Assert.NotEmpty((string)rule.GetType().GetProperty("Source")!.GetValue(rule)!));
    }

    [Fact]
    public void Null_Refused()
    {
        Assert.Throws<ArgumentNullException>(() => RuleFindings.Find(null!, [], new()));
        Assert.Throws<ArgumentNullException>(() => RuleFindings.Find([], null!, new()));
        Assert.Throws<ArgumentNullException>(() => RuleFindings.Find([], [], null!));
    }

    [Theory]
    [InlineData("halt")]
    [InlineData("helmet")]
    [InlineData("pain")]
    [InlineData("instructor")]
    [InlineData("not a verdict")]
    public void Cautions_SayWhatTheyMust(string word) => Assert.Contains(word, Cautions.Text, StringComparison.Ordinal);

    private static IEnumerable<object> Rules()
    {
        var settings = new RuleSettings();
        return typeof(RuleSettings).GetProperties().Where(p => p.PropertyType.Name.EndsWith("Rule", StringComparison.Ordinal)).Select(p => p.GetValue(settings)!);
    }
}
