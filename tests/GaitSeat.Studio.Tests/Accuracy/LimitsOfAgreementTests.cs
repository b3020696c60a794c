using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Studio.Tests.Accuracy;

/// <summary>Worked on paper after Bland and Altman 2007 (J Biopharm Stat 17:571): one-way analysis of variance of the differences by clip.</summary>
public sealed class LimitsOfAgreementTests
{
    [Fact]
    public void EqualClips_SplitTheVarianceWithinAndBetween()
    {
        // Means 2 and 6 about 4. Within: (1+1+1+1) / (4 - 2) = 2. Between: 2 (4 + 4) / 1 = 16; (16 - 2) / 2 strides a clip = 7. Total 9.
        var limits = LimitsOfAgreement.Of([[1.0, 3], [5.0, 7]]);

        Assert.Equal(4, limits.Bias, 12);
        Assert.Equal(Math.Sqrt(2), limits.WithinSd, 12);
        Assert.Equal(Math.Sqrt(7), limits.BetweenSd, 12);
        Assert.Equal(4 - 1.96 * 3, limits.Lower, 3);
        Assert.Equal(4 + 1.96 * 3, limits.Upper, 3);
    }

    [Fact]
    public void UnequalClips_UseTheirMeanSize()
    {
        // Bias 2. Within: 2 / (3 - 2) = 2. Between: 1 x 4 + 2 x 1 = 6. Size: (9 - 5) / (1 x 3) = 4/3; (6 - 2) / (4/3) = 3. Total 5.
        var limits = LimitsOfAgreement.Of([[0.0], [2.0, 4]]);

        Assert.Equal(2, limits.Bias, 12);
        Assert.Equal(Math.Sqrt(5), limits.TotalSd, 12);
    }

    /// <summary>1, 3, 5, 7 about 4: (9 + 1 + 1 + 9) / 3.</summary>
    [Fact]
    public void OneStrideAClip_IsThePlainStandardDeviation() =>
        Assert.Equal(Math.Sqrt(20.0 / 3), LimitsOfAgreement.Of([[1.0], [3.0], [], [5.0], [7.0]]).TotalSd, 12);

    [Fact]
    public void ClipsThatDifferLessThanTheirStrides_HaveNothingBetween()
    {
        var limits = LimitsOfAgreement.Of([[-1.0, 1], [-1.0, 1]]);

        Assert.Equal(0, limits.BetweenSd);
        Assert.Equal(Math.Sqrt(2), limits.TotalSd, 12);
    }

    [Fact]
    public void OneClip_SaysNothingOfClips()
    {
        var limits = LimitsOfAgreement.Of([[1.0, 2]]);

        Assert.Equal(1.5, limits.Bias, 12);
        Assert.True(double.IsNaN(limits.Upper));
    }

    [Fact]
    public void Nothing_IsNotKnown() => Assert.True(double.IsNaN(LimitsOfAgreement.Of([]).Bias));
}
