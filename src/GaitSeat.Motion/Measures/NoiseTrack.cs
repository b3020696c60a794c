using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Measures;

/// <summary>Draws smooth noise: independent normal values at knots, joined by cubics.</summary>
internal static class NoiseTrack
{
    /// <summary>Mean power of the four-point cubic through independent knots of power 1 (integral of its squared weights): 0.829.</summary>
    private const double CubicPower = 0.829;

    public static void AddTo(Span<double> values, double sd, double samplesTogether, Random random)
    {
        if (!(sd > 0)) return;
        var spacing = Math.Max(1, samplesTogether);
        var knots = new double[(int)(values.Length / spacing) + 4];
        for (var k = 0; k < knots.Length; k++) knots[k] = Normal(random) * sd / Math.Sqrt(CubicPower);

        // Starting between two knots keeps the knots of different channels and draws from falling on the same samples.
        var start = 1 + random.NextDouble();
        for (var i = 0; i < values.Length; i++) values[i] += Sample.At(knots, start + i / spacing);
    }

    /// <summary>Standard normal by Box and Muller.</summary>
    public static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
