using CsCheck;
using GaitSeat.Faults.Training;

namespace GaitSeat.Faults.Tests.Training;

public sealed class GroupFoldsTests
{
    private static readonly Gen<(string Rider, bool There)[]> Spells =
        Gen.Select(Gen.Int[0, 15], Gen.Bool, (r, t) => ($"R{r}", t)).Array[60, 120];

    [Fact]
    public void NoRider_StandsInTwoFolds() => Spells.Sample(
        spells =>
        {
            var riders = spells.Select(s => s.Rider).ToArray();
            if (riders.Distinct().Count() < 4) return true;
            var folds = GroupFolds.Cut(riders, [.. spells.Select(s => s.There)], 4, 7);
            return riders.Zip(folds).GroupBy(p => p.First).All(g => g.Select(p => p.Second).Distinct().Count() == 1) && folds.Distinct().Count() == 4;
        },
        iter: 200, seed: "0N0XIzNsQ0O2");

    [Fact]
    public void FaultySpells_AreSharedOut()
    {
        string[] riders = [.. Enumerable.Range(0, 40).SelectMany(r => Enumerable.Repeat($"R{r}", 5))];
        bool[] there = [.. Enumerable.Range(0, 200).Select(i => i % 5 == 0)];
        var folds = GroupFolds.Cut(riders, there, 4, 1);
        Assert.All(Enumerable.Range(0, 4), f => Assert.Equal(10, Enumerable.Range(0, 200).Count(i => there[i] && folds[i] == f)));
    }

    [Fact]
    public void OneSpellMovedToAnotherFold_IsCaught()
    {
        string[] riders = ["A", "A", "B", "B", "C"];
        GroupFolds.RequireNoLeak(riders, [0, 0, 1, 1, 0]);
        var caught = Assert.Throws<RiderLeakException>(() => GroupFolds.RequireNoLeak(riders, [0, 0, 1, 0, 0]));
        Assert.Contains("'B' stands in folds 1 and 0", caught.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FewerRidersThanFolds_IsRefused() =>
        Assert.Throws<ArgumentException>(() => GroupFolds.Cut(["A", "B"], [true, false], 3, 1));
}
