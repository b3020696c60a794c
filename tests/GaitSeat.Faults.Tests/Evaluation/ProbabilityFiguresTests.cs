using GaitSeat.Faults.Evaluation;

namespace GaitSeat.Faults.Tests.Evaluation;

public sealed class ProbabilityFiguresTests
{
    private static readonly double[] Said = [0.1, 0.1, 0.9, 0.9];
    private static readonly bool[] Was = [false, true, true, true];

    /// <summary>By hand: (0.01 + 0.81 + 0.01 + 0.01) / 4.</summary>
    [Fact]
    public void Brier_IsTheOneByHand() => Assert.Equal(0.21, Calibration.Brier(Said, Was), 12);

    /// <summary>By hand: two bins of two: |0.1 - 0.5| and |0.9 - 1|, half each.</summary>
    [Fact]
    public void ExpectedError_IsTheOneByHand() => Assert.Equal(0.25, Calibration.ExpectedError(Said, Was), 12);

    [Fact]
    public void Bins_HoldEverySpellOnce()
    {
        var bins = Calibration.Bins([0, 0.05, 0.999, 1], [false, false, true, true]);
        Assert.Equal([2, 2], bins.Select(b => b.Count));
    }

    [Fact]
    public void NoProbability_IsRefused() => Assert.Throws<ArgumentException>(() => Calibration.Brier([1.2], [true]));

    /// <summary>Spells of one rider are the same: as many draws as riders, not as spells, carry the figure, so ten copies of each spell must not narrow it.</summary>
    [Fact]
    public void Bootstrap_DrawsRidersNotSpells()
    {
        double[] value = [.. Enumerable.Range(0, 20).Select(i => (double)i)];
        Interval Mean(int copies)
        {
            var riders = value.SelectMany((_, r) => Enumerable.Repeat($"R{r:00}", copies)).ToArray();
            var all = value.SelectMany(v => Enumerable.Repeat(v, copies)).ToArray();
            return new RiderBootstrap(riders, 3, 2000, 0.95).Of(w => w.Zip(all).Sum(p => p.First * p.Second) / w.Sum());
        }

        var (once, tenfold) = (Mean(1), Mean(10));
        Assert.Equal(once.Upper - once.Lower, tenfold.Upper - tenfold.Lower, 9);

        // Mean of 20 values of SD 5.766 (population): 2 x 1.96 x 5.766 / sqrt(20) = 5.05.
        Assert.Equal(5.05, once.Upper - once.Lower, 0.3);
    }
}
