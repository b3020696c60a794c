using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;

namespace GaitSeat.Study.Tests.Mixed;

/// <summary>What cannot be answered is refused with what, where and what is allowed.</summary>
public sealed class RefusalTests
{
    private static readonly MixedData Good = MadeRows.Of(8);

    [Fact]
    public void OneRider_IsNamed() => AssertRefused(
        StudyProblem.OneLevel, "grouping 'rider' has one level ('anna')",
        Good with { Random = [new(Grouping.Of("rider", [.. Enumerable.Repeat("anna", Good.Rows)]), [DesignColumn.Intercept(Good.Rows)])] });

    [Fact]
    public void CollinearCovariate_IsNamed() => AssertRefused(
        StudyProblem.Collinear, "'inches' is a combination of others (0.3937 × 'length')",
        Good with { Fixed = [.. Good.Fixed, new("inches", [.. Good.Fixed[1].Values.Select(v => v / 2.54)])] });

    [Fact]
    public void CollinearRandomSlopes_AreNamed() => AssertRefused(
        StudyProblem.Collinear, "'twice'",
        Good with { Random = [new(Good.Random[0].Groups, [Good.Fixed[1], new("twice", [.. Good.Fixed[1].Values.Select(v => 2 * v)])])] });

    [Fact]
    public void SameGroupingTwice_IsNamed() => AssertRefused(
        StudyProblem.Collinear, "groupings 'rider' and 'pair' put the rows together the same way",
        Good with { Random = [Good.Random[0], new(Grouping.Of("pair", [.. Good.Random[0].Groups.LevelOf.Select(l => $"{l % 5} and {l}")]), [Good.Fixed[0]])] });

    [Fact]
    public void NoRows_AreRefused() => AssertRefused(StudyProblem.TooFewRows, "no rows are left", Good.Where(_ => false));

    [Fact]
    public void AsManyRandomEffectsAsRows_AreRefused() => AssertRefused(
        StudyProblem.TooFewRows, "180 levels with 1 random effects each, and there are 180 rows",
        Good with { Random = [new(Grouping.Of("stride", [.. Enumerable.Range(0, Good.Rows).Select(i => $"s{i}")]), [DesignColumn.Intercept(Good.Rows)])] });

    [Fact]
    public void MissingValue_IsLocated() => AssertRefused(
        StudyProblem.BadData, "column 'length', row 7: found NaN", Good with { Fixed = [Good.Fixed[0], new("length", [.. Good.Fixed[1].Values.Select((v, i) => i == 7 ? double.NaN : v)])] });

    [Fact]
    public void ColumnOfOtherLength_IsNamed() => AssertRefused(
        StudyProblem.BadData, "column 'age' has 3 values; the outcome has 180", Good with { Fixed = [.. Good.Fixed, new("age", [1, 2, 3])] });

    [Fact]
    public void WeightOfZero_IsLocated() => AssertRefused(
        StudyProblem.BadData, "column 'weights', row 4: found 0", Good with { Weights = [.. Good.Outcome.Select((_, i) => i == 4 ? 0.0 : 1)] });

    [Fact]
    public void OutcomeWithoutSpread_IsRefused() => AssertRefused(
        StudyProblem.BadData, "exact combination of the fixed effects", Good with { Outcome = [.. Good.Fixed[1].Values.Select(v => 3 + 2 * v)] });

    /// <summary>No spread within riders: the likelihood rises without end as the residual goes to zero.</summary>
    [Fact]
    public void OutcomeThatOnlyTellsTheRider_DoesNotConverge() => AssertRefused(
        StudyProblem.NoConvergence, "did not converge",
        Good with { Outcome = [.. Good.Random[0].Groups.LevelOf.Select(l => (double)(l * l % 7))], Random = [new(Good.Random[0].Groups, [Good.Fixed[0]])], Fixed = [Good.Fixed[0]] });

    [Fact]
    public void TooFewSteps_DoNotConverge()
    {
        var error = Assert.Throws<StudyException>(() => MixedModel.Fit(Good, new() { MaxIterations = 1 }));
        Assert.Equal(StudyProblem.NoConvergence, error.Problem);
        Assert.Contains("in 1 steps", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void CrossedFactorAboveTheLimit_IsRefused()
    {
        var error = Assert.Throws<StudyException>(() => MixedModel.Fit(Good, new() { MaxCrossedEntries = 9 }));
        Assert.Equal(StudyProblem.TooLarge, error.Problem);
        Assert.Contains("a matrix of 10 entries; up to 9 are allowed", error.Message, StringComparison.Ordinal);
    }

    private static void AssertRefused(StudyProblem problem, string message, MixedData data)
    {
        var error = Assert.Throws<StudyException>(() => MixedModel.Fit(data));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        Assert.Equal(problem, error.Problem);
    }
}
