using GaitSeat.Study.Mixed;

namespace GaitSeat.Study.Tests.Mixed;

public sealed class ResidualCheckTests
{
    private static readonly MixedData Data = MadeRows.Of(8, rows: 1200);

    [Fact]
    public void RowsOfTheModel_LookNormal()
    {
        var check = ResidualCheck.Of(MixedModel.Fit(Data));
        Assert.InRange(check.Skewness, -0.25, 0.25);
        Assert.InRange(check.ExcessKurtosis, -0.4, 0.4);
        Assert.InRange(check.SpreadTrend, -0.1, 0.1);
        Assert.All(check.Quantiles.Skip(10).SkipLast(10), q => Assert.Equal(q.Normal, q.Residual, 0.2));
    }

    [Fact]
    public void WildStrides_ShowInTheTails()
    {
        var check = ResidualCheck.Of(MixedModel.Fit(Data with { Outcome = [.. Data.Outcome.Select((y, i) => i % 50 == 0 ? y + 15 : y)] }));
        Assert.True(check.ExcessKurtosis > 5 && check.Skewness > 1, $"{check.ExcessKurtosis}, {check.Skewness}");
        Assert.InRange(check.BeyondThree, 0.015, 0.025);
    }

    /// <summary>Rows of one rider in a row, each with half of the residual of the one before.</summary>
    [Fact]
    public void StridesThatAreAlikeInARow_Show()
    {
        var order = Enumerable.Range(0, Data.Rows).OrderBy(i => Data.Random[0].Groups.LevelOf[i]).ToArray();
        var noise = new double[Data.Rows];
        var random = new Random(4);
        for (var i = 1; i < noise.Length; i++) noise[i] = 0.5 * noise[i - 1] + MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
        var riders = Data.Random[0].Groups with { LevelOf = [.. order.Select(i => Data.Random[0].Groups.LevelOf[i])] };
        var alike = new MixedData { Outcome = noise, Fixed = [Data.Fixed[0]], Random = [new(riders, [Data.Fixed[0]])] };
        Assert.InRange(ResidualCheck.Of(MixedModel.Fit(alike)).NeighbourCorrelation, 0.4, 0.6);
    }
}
