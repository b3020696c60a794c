using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>How far the rider is turned out of the picture plane, from how far near and far shoulder and hip stand apart.</summary>
public static class ViewYaw
{
    // Breadth over trunk length (hip joint to shoulder joint). Shoulders: joint centres about 0.36 m apart on a trunk of 0.50 m (segment fractions of
    // Drillis and Contini, from memory). Hips: the models put them at the outside of the thighs on the saddle; read from 31 stills of riders,
    // where 0.36 (joint centres) made the hips say twice what the shoulders say, 0.55 the same.
    // How good: on stills the answer fits what a person sees to about 10 deg; on four rendered clips the models show only 0.4 to 0.7 of the
    // true turn (0.2 where the rider is 145 px tall), leaning 5 deg to the minus side.
    private const double ShoulderBreadthPerTrunk = 0.72;
    private const double HipBreadthPerTrunk = 0.55;

    /// <summary>
    /// Signed turn of every frame, deg, + with the near shoulder and hip ahead of the far ones; NaN where they were not seen within the window.
    /// </summary>
    public static double[] Turn(double[] timeSeconds, PointTrack[] points, Facing[] facing, bool[] cutBefore, BodyPointSettings settings)
    {
        ArgumentNullException.ThrowIfNull(timeSeconds);
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(facing);
        ArgumentNullException.ThrowIfNull(settings);
        var turn = new double[timeSeconds.Length];
        Array.Fill(turn, double.NaN);
        var sine = timeSeconds.Select((_, i) => SineOf(points, i) * (facing[i] == Facing.Left ? -1 : 1)).ToArray();
        foreach (var range in Stretches.Of(Array.ConvertAll(sine, s => !double.IsNaN(s)), cutBefore))
        {
            var median = Stretches.RollingMedian(timeSeconds.AsSpan(range), sine.AsSpan(range), settings.VoteWindowSeconds);
            for (var i = 0; i < median.Length; i++) turn[range.Start.Value + i] = Math.Asin(Math.Clamp(median[i], -1, 1)) * 180 / Math.PI;
        }

        return turn;
    }

    /// <summary>Sine of the turn in one frame, + with the near side to the right: separation across over breadth, shoulders and hips weighed by their breadth.</summary>
    public static double SineOf(PointTrack[] points, int frame)
    {
        ArgumentNullException.ThrowIfNull(points);
        PointPx shoulder = points[(int)BodyPoint.Shoulder][frame], farShoulder = points[(int)BodyPoint.FarShoulder][frame];
        PointPx hip = points[(int)BodyPoint.Hip][frame], farHip = points[(int)BodyPoint.FarHip][frame];
        if (shoulder.IsMissing || farShoulder.IsMissing || hip.IsMissing || farHip.IsMissing) return double.NaN;
        var trunk = shoulder.DistanceTo(hip);
        return trunk < 1 ? double.NaN
            : (shoulder.X - farShoulder.X + hip.X - farHip.X) / ((ShoulderBreadthPerTrunk + HipBreadthPerTrunk) * trunk);
    }
}
