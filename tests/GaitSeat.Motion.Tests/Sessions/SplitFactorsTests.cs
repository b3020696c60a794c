using GaitSeat.Motion.Sessions;

namespace GaitSeat.Motion.Tests.Sessions;

/// <summary>The running sums against the whole matrix: variance of a difference of weighted means is a' K a.</summary>
public sealed class SplitFactorsTests
{
    [Fact]
    public void Factors_AreThoseOfTheWholeMatrix()
    {
        var settings = new SessionSettings();
        var strides = new MadeSession(11, settings).Clip().Ride(3).Pause(4).Ride(2).Clip().Ride(1).Clip().Ride(4).Strides;
        var line = new StrideLine(strides, 0.8);
        var factors = SplitFactors.Of(line, settings.SlowSeconds);
        for (var k = 1; k < line.Count; k++)
        {
            var a = Contrast(line.Weight, k);
            Assert.Equal(Form(a, (i, j) => i == j ? 1 : 0), factors.Scatter[k], 1e-12);
            Assert.Equal(Form(a, (i, j) => line.Clip[i] == line.Clip[j] ? 1 : 0), factors.ClipSteady[k], 1e-12);
            Assert.Equal(Form(a, (i, j) => line.Clip[i] == line.Clip[j] ? Math.Exp(-Math.Abs(line.Start[i] - line.Start[j]) / settings.SlowSeconds) : 0), factors.Slow[k], 1e-12);
        }
    }

    private static double[] Contrast(double[] weight, int k)
    {
        double before = weight[..k].Sum(), after = weight[k..].Sum();
        return [.. weight.Select((w, i) => i < k ? -w / before : w / after)];
    }

    private static double Form(double[] a, Func<int, int, double> kernel) =>
        Enumerable.Range(0, a.Length).Sum(i => Enumerable.Range(0, a.Length).Sum(j => a[i] * a[j] * kernel(i, j)));
}
