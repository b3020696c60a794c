namespace GaitSeat.Vision.Tests.Flow;

/// <summary>Against rendered clips with known truth, from a renderer that is not ours.</summary>
public sealed class RenderedRideTests
{
    [Fact]
    public async Task PannedTrot_TrunkPathFollowsTheSaddleWithinHalfACentimetre()
    {
        const int frames = 75;
        const int framesAStride = 23;
        var ride = new RenderedRide("c15_sitting_trot");

        var steps = await ride.FollowAsync(frames, TestContext.Current.CancellationToken);

        Assert.DoesNotContain(steps.Skip(1), s => s.Trunk.IsMissing || s.Cut);
        var path = new double[frames];
        for (var i = 1; i < frames; i++) path[i] = path[i - 1] + steps[i].Trunk.YPx;
        var truth = DriftRemoved(ride["saddle_y"][..frames], framesAStride);
        var followed = DriftRemoved(path, framesAStride);
        var errorCm = Math.Sqrt(followed.Zip(truth, (a, b) => (a - b) * (a - b)).Average()) / ride["px_per_m"][0] * 100;
        Assert.InRange(errorCm, 0, 0.5);
        Assert.InRange(Gain(followed, truth), 0.95, 1.05);
    }

    [Fact]
    public async Task CameraThatStands_DoesNotMoveByAFiftiethOfAPixelAFrame()
    {
        var ride = new RenderedRide("c11_static_s58_r10_60fps");

        var steps = await ride.FollowAsync(70, TestContext.Current.CancellationToken);

        Assert.InRange(steps.Max(s => Math.Abs(s.Surroundings.XPx)), 0, 0.05);
        Assert.InRange(Math.Sqrt(steps.Average(s => s.Surroundings.XPx * s.Surroundings.XPx)), 0, 0.02);
        Assert.InRange(Math.Sqrt(steps.Average(s => s.Surroundings.YPx * s.Surroundings.YPx)), 0, 0.02);
        Assert.DoesNotContain(steps, s => s.Cut || s.Surroundings.IsMissing);
    }

    /// <summary>Takes off the running mean over one stride, which holds pan and drift; the ends, where it is not whole, are left out.</summary>
    private static double[] DriftRemoved(double[] path, int window)
    {
        var half = window / 2;
        return [.. Enumerable.Range(half, path.Length - window + 1).Select(i => path[i] - path[(i - half)..(i + half + 1)].Average())];
    }

    private static double Gain(double[] followed, double[] truth) =>
        followed.Zip(truth, (a, b) => a * b).Sum() / truth.Sum(v => v * v);
}
