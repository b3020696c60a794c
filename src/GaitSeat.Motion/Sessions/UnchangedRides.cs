using MathNet.Numerics.Distributions;

namespace GaitSeat.Motion.Sessions;

/// <summary>
/// How often a ride without any change shows as much as the one seen: rides of the same strides are drawn with scatter, wandering and steady errors only, and searched
/// in the same way.
/// </summary>
internal sealed class UnchangedRides(StrideLine line, SplitScan scan, SessionSettings settings)
{
    /// <returns>(1 + rides that showed as much) / (1 + rides drawn), or, when drawing ended early, the share that did.</returns>
    public double Probability(Split seen, int seed)
    {
        var random = new Random(seed);
        var exceeding = 0;
        for (var draw = 1; draw <= settings.Draws; draw++)
        {
            var (thigh, index) = Draw(seen, random);
            if (scan.Strongest(thigh, index).Strength >= seen.Strength) exceeding++;
            if (exceeding >= settings.EnoughExceedances) return (double)exceeding / draw;
        }

        return (1.0 + exceeding) / (1 + settings.Draws);
    }

    private (double[] Thigh, double[] Index) Draw(Split seen, Random random)
    {
        double[] thigh = new double[line.Count], index = new double[line.Count];
        var scatter = seen.Scatter;
        var clip = (A: 0.0, B: 0.0);
        var slow = (A: 0.0, B: 0.0);
        var wander = Math.Sqrt(seen.Wander);
        for (var i = 0; i < line.Count; i++)
        {
            if (!line.SameClip(i)) clip = Shaped(scan.ClipSteady);
            var kept = line.Kept(i, settings.SlowSeconds);
            var (stepA, stepB) = Shaped(scan.Slow);
            var fresh = Math.Sqrt(1 - kept * kept);
            slow = (kept * slow.A + fresh * stepA, kept * slow.B + fresh * stepB);
            var (a, b) = Shaped(scatter);
            thigh[i] = a + wander * (slow.A + clip.A);
            index[i] = b + wander * (slow.B + clip.B);
        }

        return (thigh, index);

        (double A, double B) Shaped(Spread2 spread) => spread.Shape(Normal.Sample(random, 0, 1), Normal.Sample(random, 0, 1));
    }
}
