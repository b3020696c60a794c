using CsCheck;
using GaitSeat.Study.Multiplicity;

namespace GaitSeat.Study.Tests.Multiplicity;

public sealed class BenjaminiHochbergTests
{
    private static readonly double[] Published = [.0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528, .7590, 1.000];

    /// <summary>The 15 comparisons of Benjamini Y, Hochberg Y (1995) J R Stat Soc B 57:289-300, section 3.2.</summary>
    [Fact]
    public void PublishedExample_CallsFour()
    {
        var adjusted = BenjaminiHochberg.Adjust(Published);
        double[] expected = [.0015, .003, .0095, .035625, .0603, .063857, .063857, .0645, .0765, .486, .581182, .714875, .753231, .813214, 1];
        Assert.All(expected, (e, i) => Assert.Equal(e, adjusted[i], 5e-7));
        Assert.Equal(4, adjusted.Count(p => p <= 0.05));
    }

    [Fact]
    public void OrderOfQuestions_DoesNotMatter() => Gen.Shuffle(Published).Sample(
        shuffled => Assert.Equal(BenjaminiHochberg.Adjust(Published).Order(), BenjaminiHochberg.Adjust(shuffled).Order()), seed: "0N0XIzNsQ0O2", iter: 50, threads: 1);

    [Fact]
    public void OneQuestion_IsNotAdjusted() => Assert.Equal([0.03], BenjaminiHochberg.Adjust([0.03]));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    public void ValueThatIsNoProbability_IsRefused(double p) => Assert.Throws<ArgumentOutOfRangeException>(() => BenjaminiHochberg.Adjust([0.5, p]));
}
