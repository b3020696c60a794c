using GaitSeat.Motion.Measures;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Strides;

namespace GaitSeat.Motion.Tests;

public sealed class SignalTests
{
    [Fact]
    public void Hampel_FindsTheWildValueAndSparesThePeak()
    {
        double[] values = [.. Enumerable.Range(0, 60).Select(i => 10 * Math.Sin(2 * Math.PI * i / 12.0))];
        values[31] += 60;
        var outlier = new bool[values.Length];

        Hampel.Mark(values, 4, 3.5, 1, outlier);

        Assert.Equal([31], Enumerable.Range(0, outlier.Length).Where(i => outlier[i]));
    }

    [Fact]
    public void Smoother_KeepsAParabolaToItsEnds()
    {
        double[] curve = [.. Enumerable.Range(0, 200).Select(i => 3 + 0.5 * i - 0.01 * i * i)];

        Assert.All(JerkSmoother.Smooth(curve, 100, 6).Zip(curve), p => Assert.Equal(p.Second, p.First, 1e-6));
    }

    /// <summary>Rauch, Tung and Striebel: what comes after counts as much as what came before, so the mirrored run gives the mirrored answer; and it is the least of its sum.</summary>
    [Fact]
    public void Smoother_IsTheLeastOfItsSumAndBlindToTheDirection()
    {
        var random = new Random(5);
        double[] noisy = [.. Enumerable.Range(0, 60).Select(_ => NoiseTrack.Normal(random))];
        var weight = Math.Pow(2 * Math.Sin(Math.PI * 6 / 100), -6);
        double Sum(double[] x) => x.Zip(noisy, (a, b) => (a - b) * (a - b)).Sum()
            + weight * Enumerable.Range(0, x.Length - 3).Sum(i => Math.Pow(x[i + 3] - 3 * x[i + 2] + 3 * x[i + 1] - x[i], 2));

        var smooth = JerkSmoother.Smooth(noisy, 100, 6);
        var mirrored = JerkSmoother.Smooth([.. noisy.Reverse()], 100, 6);

        Assert.All(smooth.Zip(mirrored.Reverse()), p => Assert.Equal(p.First, p.Second, 1e-9));
        for (var i = 0; i < smooth.Length; i++)
        {
            foreach (var step in new[] { -0.01, 0.01 })
            {
                double[] other = [.. smooth];
                other[i] += step;
                Assert.True(Sum(other) > Sum(smooth));
            }
        }
    }

    [Fact]
    public void CutoffAboveTheRate_IsRefusedWithTheNumbers()
    {
        var error = Assert.Throws<ArgumentException>(() => JerkSmoother.Smooth(new double[50], 20, 11));

        Assert.Contains("11 Hz", error.Message);
        Assert.Contains("20.0 Hz", error.Message);
    }

    [Fact]
    public void ResidualAnalysis_ChoosesLowerWhereThereIsMoreNoise()
    {
        var random = new Random(3);
        double[] clean = [.. Enumerable.Range(0, 720).Select(i => Math.Sin(2 * Math.PI * 1.3 * i / 120) + 0.3 * Math.Sin(2 * Math.PI * 2.6 * i / 120))];
        double[] noisy = [.. clean.Select(v => v + 0.3 * NoiseTrack.Normal(random))];

        var cleanHz = ResidualAnalysis.Cutoff(clean, 120, 120, 6, 10);
        var noisyHz = ResidualAnalysis.Cutoff(noisy, 120, 120, 6, 10);

        Assert.Equal(10, cleanHz);
        Assert.True(noisyHz < cleanHz, $"{noisyHz} Hz");
    }

    [Fact]
    public void DrawnNoise_HasTheAskedStandardDeviation()
    {
        var random = new Random(11);
        double sum = 0;
        var count = 0;
        for (var draw = 0; draw < 300; draw++)
        {
            var values = new double[90];
            NoiseTrack.AddTo(values, 2, 15, random);
            foreach (var v in values) sum += v * v;
            count += values.Length;
        }

        Assert.Equal(2, Math.Sqrt(sum / count), 0.1);
    }

    [Fact]
    public void Rhythm_PullsABlurredSitAndLeavesASharpOne()
    {
        List<Sit> sits = [.. Enumerable.Range(0, 7).Select(k => new Sit(0.74 * k, 0.02))];
        sits[3] = new(sits[3].Seconds + 0.06, 0.04);
        Assert.InRange(Rhythm.Steady(sits, [.. sits.Select(_ => new Sit(double.NaN, double.NaN))], 0.74, 0.02)[3].Seconds - 0.74 * 3, 0, 0.03);

        sits[3] = new(0.74 * 3 + 0.06, 1e-4);
        Assert.Equal(0.06, Rhythm.Steady(sits, [.. sits.Select(_ => new Sit(double.NaN, double.NaN))], 0.74, 0.02)[3].Seconds - 0.74 * 3, 0.002);
    }

    [Fact]
    public void SampleBetweenSamples_FollowsTheCurve()
    {
        double[] wave = [.. Enumerable.Range(0, 101).Select(i => Math.Sin(2 * Math.PI * 5.6 * i / 100))];

        for (var p = 1.0; p < 98; p += 0.37) Assert.Equal(Math.Sin(2 * Math.PI * 5.6 * p / 100), Sample.At(wave, p), 6e-4);
    }
}
