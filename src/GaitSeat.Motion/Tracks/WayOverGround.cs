using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Tracks;

/// <summary>How the rider gets along against the standing surroundings.</summary>
/// <param name="Seconds">Frames of the segment.</param>
/// <param name="HipPx">Hip forward in the picture; NaN where missing.</param>
/// <param name="GroundStepsPx">Motion of the surroundings forward from frame to frame; NaN where they were not followed.</param>
internal sealed record WayOverGround(double[] Seconds, double[] HipPx, double[] GroundStepsPx)
{
    /// <summary>Mean speed of a part of the segment, px a second; NaN where the surroundings were not followed for half of it.</summary>
    public double PxPerSecond(double from, double to)
    {
        var squares = new LeastSquares(2);
        double ground = 0;
        int frames = 0, followed = 0;
        for (var i = Instants.NotBefore(Seconds, from); i < Seconds.Length && Seconds[i] <= to; i++)
        {
            frames++;
            if (double.IsFinite(GroundStepsPx[i])) (ground, followed) = (ground + GroundStepsPx[i], followed + 1);
            if (double.IsFinite(HipPx[i])) squares.Add([1, Seconds[i] - from], HipPx[i] - ground);
        }

        return followed * 2 >= frames && squares.Solve() is { } line ? line.Solution[1] : double.NaN;
    }
}
