using CsCheck;
using GaitSeat.Vision.Flow;

namespace GaitSeat.Vision.Tests.Flow;

public sealed class RobustFitTests
{
    private static readonly MotionField Around = new(200, 100, 100, default);
    private static readonly FitSettings Believed = new(50, 50, 0, 0.6, 0.1);
    private static readonly Tensor Sharp = new(100, 0, 100);

    [Fact]
    public void FourOfTenWindowsAgreeOnAnotherMotion_TheRestDecide() =>
        Gen.Select(Gen.Double[-15, 15], Gen.Double[-15, 15], Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Int[0, 9999]).Sample(
            (shiftX, shiftY, growth, turn, seed) =>
            {
                var truth = Around with { P = new(shiftX, shiftY, growth, turn) };
                var other = Around with { P = new(-shiftX + 6, shiftY - 9) };
                var points = Spread(seed, 50, i => i % 5 < 3 ? truth : other);

                var fit = Fit(points, seed);

                return Math.Abs(fit.Field.P.ShiftX - shiftX) < 0.02 && Math.Abs(fit.Field.P.ShiftY - shiftY) < 0.02
                    && Math.Abs(fit.Field.P.Growth - growth) < 0.05 && Math.Abs(fit.Field.P.Turn - turn) < 0.05 && fit.Points >= 30;
            },
            seed: "0N0XIzNsQ0O2",
            iter: 300,
            threads: 1);

    [Fact]
    public void WindowsOnEdgesOnly_EachSpeaksAcrossItsEdge()
    {
        // Horizontal edges know y alone, upright ones x alone; along the edge they say anything.
        var random = new Random(3);
        var points = Spread(3, 24, _ => Around with { P = new(4, -2) })
            .Select((p, i) => i % 2 == 0
                ? p with { Dx = p.Dx + (random.NextDouble() * 8) - 4, Information = new(0.01, 0, 100) }
                : p with { Dy = p.Dy + (random.NextDouble() * 8) - 4, Information = new(100, 0, 0.01) })
            .ToList();

        var fit = Fit(points, 3);

        Assert.Equal(4, fit.Field.P.ShiftX, 0.02);
        Assert.Equal(-2, fit.Field.P.ShiftY, 0.02);
    }

    [Fact]
    public void WindowsOnHorizontalEdgesOnly_SidewaysErrorIsTold()
    {
        var points = Spread(4, 24, _ => Around with { P = new(4, -2) }).Select(p => p with { Information = new(0.01, 0, 100) }).ToList();

        // 24 windows of 10 px each: 10 / sqrt(24) = 2 px at the best.
        Assert.InRange(Fit(points, 4).ErrorPx, 2, 4);
    }

    [Fact]
    public void FieldSeenFromAnotherPlace_IsTheSameMotion() =>
        Gen.Double[-20, 20].Array[6].Sample(
            v =>
            {
                var field = Around with { P = new(v[0], v[1], v[2], v[3]) };
                var moved = field.AsSeenFrom(v[4] * 10, v[5] * 10);
                var (a, b) = (field.At(v[5], v[4]), moved.At(v[5], v[4]));
                return Math.Abs(a.X - b.X) < 1e-9 && Math.Abs(a.Y - b.Y) < 1e-9;
            },
            seed: "0N0XIzNsQ0O2",
            iter: 200,
            threads: 1);

    private static List<FlowPoint> Spread(int seed, int count, Func<int, MotionField> motion)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(i =>
        {
            var (x, y) = (random.NextDouble() * 400, random.NextDouble() * 200);
            var (dx, dy) = motion(i).At(x, y);
            return new FlowPoint(x, y, dx, dy, Sharp, 1);
        })];
    }

    private static FitResult Fit(List<FlowPoint> points, int seed)
    {
        var trials = new List<MotionField>();
        RobustFit.AddShifts(points, Around, trials);
        RobustFit.AddPairs(points, Around, 60, new Random(seed), trials);
        return new RobustFit().Fit(points, trials, Believed)!.Value;
    }
}
