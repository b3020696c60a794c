using GaitSeat.Motion.Gaits;

namespace GaitSeat.Motion.Tests;

public sealed class SeatStyleTests
{
    [Theory]
    [InlineData(0.0, 0.2, 0.0, 0.05)]
    [InlineData(0.4, 0.2, 0.0, 0.1)]
    [InlineData(2.2, 0.2, 0.99, 1.0)]
    [InlineData(8.0, 0.5, 0.99, 1.0)]
    public void WellSeen_IsClear(double risePct, double se, double least, double most) =>
        Assert.InRange(SeatStyle.ChanceOfRising(risePct, se, 1), least, most);

    /// <summary>Noise of 1 % of leg length shows an amplitude of 1.3 % as a rule (mean of a Rayleigh distribution, sqrt(pi/2)) where there is none.</summary>
    [Fact]
    public void WhatNoiseAloneShows_IsNoRise() => Assert.InRange(SeatStyle.ChanceOfRising(Math.Sqrt(Math.PI / 2), 1, 1), 0.05, 0.4);

    [Fact]
    public void Chance_IsTheShareThatRises()
    {
        var random = new Random(3);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var said = new List<(double Chance, bool Rises)>();
        for (var i = 0; i < 6000; i++)
        {
            var rises = i % 2 == 0;
            var truth = rises ? Math.Pow(10.6, random.NextDouble()) : Math.Abs(0.4 * Normal());
            var se = 0.2 + 1.5 * random.NextDouble();
            var seen = Math.Sqrt(Math.Pow(truth + se * Normal(), 2) + Math.Pow(se * Normal(), 2));
            said.Add((SeatStyle.ChanceOfRising(seen, se, 1), rises));
        }

        foreach (var bin in said.GroupBy(s => Math.Min(4, (int)(5 * s.Chance))))
            Assert.Equal(bin.Average(b => b.Chance), bin.Average(b => b.Rises ? 1.0 : 0), 4 * 0.5 / Math.Sqrt(bin.Count()));
    }
}
