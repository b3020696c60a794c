using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Tracks;

/// <summary>How the camera rolls: about a mean that is given, as the turning of the standing surroundings shows; their slow trend is taken for their flow's own drift.</summary>
internal static class CameraRoll
{
    /// <summary>Roll below this is left alone, rad (1 deg): it is mostly the flow's own noise. Common practice, no source.</summary>
    private const double LeastRad = Math.PI / 180;

    /// <returns>Roll of the picture per frame of the segment, rad, clockwise on screen.</returns>
    public static double[] Of(ReadOnlySpan<double> secondsOfSegment, ReadOnlySpan<double> turnRad, double meanRad)
    {
        var swing = Swing(secondsOfSegment, turnRad);
        return Array.ConvertAll(swing, r => r + meanRad);
    }

    private static double[] Swing(ReadOnlySpan<double> secondsOfSegment, ReadOnlySpan<double> turnRad)
    {
        var roll = new double[turnRad.Length];
        for (var i = 1; i < roll.Length; i++) roll[i] = roll[i - 1] + (double.IsFinite(turnRad[i]) ? turnRad[i] : 0);
        var squares = new LeastSquares(2);
        for (var i = 0; i < roll.Length; i++) squares.Add([1, secondsOfSegment[i] - secondsOfSegment[0]], roll[i]);
        if (squares.Solve() is not { } line) return new double[roll.Length];
        double most = 0;
        for (var i = 0; i < roll.Length; i++)
        {
            roll[i] -= line.Solution[0] + line.Solution[1] * (secondsOfSegment[i] - secondsOfSegment[0]);
            most = Math.Max(most, Math.Abs(roll[i]));
        }

        return most < LeastRad ? new double[roll.Length] : roll;
    }
}
