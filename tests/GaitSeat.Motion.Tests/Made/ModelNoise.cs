using GaitSeat.Model;

namespace GaitSeat.Motion.Tests.Made;

/// <summary>Spoils exact sightings the way body-point models and optical flow do. Seeded.</summary>
internal sealed record ModelNoise
{
    public int Seed { get; init; } = 1;

    /// <summary>Standard deviation of each point and axis, share of rider height (160 cm in the made rider).</summary>
    public double PointShare { get; init; } = 0.015;

    public double FramesTogether { get; init; } = 3;

    public double OutlierShare { get; init; } = 0.01;

    public double DropoutsPerSecond { get; init; } = 0.1;

    public double TrunkStepSdPx { get; init; } = 0.3;

    /// <summary>Steady offset of hip and knee, one axis, cm.</summary>
    public double BiasCm { get; init; }

    public Sightings On(Sightings exact, double pxPerCm)
    {
        var random = new Random(Seed);
        var n = exact.Count;
        var frame = n < 2 ? 0.04 : exact.TimeSeconds[1] - exact.TimeSeconds[0];
        var sd = PointShare * 160 * pxPerCm;
        var points = exact.Points.Select((p, k) =>
        {
            double[] x = [.. p.XPx], y = [.. p.YPx], spread = [.. p.SpreadPx];
            var biased = (BodyPoint)k is BodyPoint.Hip or BodyPoint.Knee ? BiasCm * pxPerCm : 0;
            double bx = Normal(random) * biased, by = Normal(random) * biased;
            double[] nx = Together(n, sd, random), ny = Together(n, sd, random);
            for (var i = 0; i < n; i++)
            {
                x[i] += nx[i] + bx;
                y[i] += ny[i] + by;
                // Two models whose mean errs by sd differ by 2 sd on each axis.
                spread[i] = 2 * sd * Math.Sqrt(Math.Pow(Normal(random), 2) + Math.Pow(Normal(random), 2));
                if (random.NextDouble() < OutlierShare) (x[i], y[i]) = (x[i] + 8 * sd * Normal(random), y[i] + 8 * sd * Normal(random));
                if (random.NextDouble() >= DropoutsPerSecond * frame) continue;
                var gap = (int)((0.1 + 0.2 * random.NextDouble()) / frame);
                for (var g = i; g < Math.Min(n, i + gap); g++) x[g] = y[g] = double.NaN;
                i += gap;
            }

            return new PointTrack(x, y, p.Confidence, spread);
        }).ToArray();
        return exact with
        {
            Points = points,
            Trunk = exact.Trunk with { XPx = Jittered(exact.Trunk.XPx, random), YPx = Jittered(exact.Trunk.YPx, random) },
        };
    }

    private double[] Jittered(double[] steps, Random random) => [.. steps.Select((s, i) => i == 0 ? 0 : s + TrunkStepSdPx * Normal(random))];

    /// <summary>First-order autoregressive noise that falls to 1/e within the given frames.</summary>
    private double[] Together(int n, double sd, Random random)
    {
        var keep = Math.Exp(-1 / Math.Max(1e-9, FramesTogether));
        var noise = new double[n];
        var value = Normal(random);
        for (var i = 0; i < n; i++)
        {
            noise[i] = sd * value;
            value = keep * value + Math.Sqrt(1 - keep * keep) * Normal(random);
        }

        return noise;
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
