using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>How far the rider is turned out of the picture plane, from how far near and far shoulder and hip stand apart.</summary>
public static class ViewYaw
{
    // Joint breadth over trunk length (hip joint to shoulder joint) of an adult: shoulders 0.259 x stature less the deltoids, trunk 0.288 x stature
    // (Drillis and Contini's segment fractions, from memory). Rule of thumb, good to 15 %.
    private const double ShoulderBreadthPerTrunk = 0.72;
    private const double HipBreadthPerTrunk = 0.36;

    /// <summary>Unsigned yaw of every frame, deg; NaN where shoulders and hips were not seen within the window.</summary>
    public static double[] Estimate(double[] timeSeconds, PointTrack[] points, bool[] cutBefore, BodyPointSettings settings)
    {
        ArgumentNullException.ThrowIfNull(timeSeconds);
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(cutBefore);
        ArgumentNullException.ThrowIfNull(settings);
        var raw = new double[timeSeconds.Length];
        for (var i = 0; i < raw.Length; i++) raw[i] = SineOf(points, i);
        var yaw = new double[raw.Length];
        var window = new List<double>();
        for (var i = 0; i < raw.Length; i++)
        {
            window.Clear();
            Gather(i, -1);
            Gather(i, +1);
            window.Sort();
            yaw[i] = window.Count == 0 ? double.NaN : Math.Asin(Math.Clamp(Math.Abs(window[window.Count / 2]), 0, 1)) * 180 / Math.PI;
        }

        return yaw;

        void Gather(int centre, int step)
        {
            for (var k = step < 0 ? centre : centre + 1; k >= 0 && k < raw.Length; k += step)
            {
                if (Math.Abs(timeSeconds[k] - timeSeconds[centre]) > settings.VoteWindowSeconds / 2) return;
                if (step > 0 && cutBefore[k]) return;
                if (!double.IsNaN(raw[k])) window.Add(raw[k]);
                if (step < 0 && cutBefore[k]) return;
            }
        }
    }

    /// <summary>Signed sine of the yaw in one frame: separation across over breadth, shoulders and hips weighed by their breadth.</summary>
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
