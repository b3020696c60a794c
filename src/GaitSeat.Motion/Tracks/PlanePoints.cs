using GaitSeat.Model;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Tracks;

/// <summary>The body points of one segment at its frames, in the rider plane (x forward, y up, px), wild values taken out.</summary>
internal sealed class PlanePoints
{
    private PlanePoints(double[][] forward, double[][] up) => (ForwardPx, UpPx) = (forward, up);

    /// <summary>By <see cref="BodyPoint"/>, then by frame of the segment; NaN where missing.</summary>
    public double[][] ForwardPx { get; }

    public double[][] UpPx { get; }

    /// <param name="followed">Whether a frame of the clip counts; points of others are holes.</param>
    /// <param name="roll">Camera roll per frame of the segment, rad.</param>
    public static PlanePoints Of(Sightings sightings, Segment segment, Predicate<int> followed, double[] roll)
    {
        var count = sightings.Points.Length;
        var forward = new double[count][];
        var up = new double[count][];
        double cx = sightings.WidthPx / 2.0, cy = sightings.HeightPx / 2.0;
        for (var p = 0; p < count; p++)
        {
            forward[p] = new double[segment.Count];
            up[p] = new double[segment.Count];
            var track = sightings.Points[p];
            for (var i = 0; i < segment.Count; i++)
            {
                var at = track[segment.First + i];
                var (s, c) = Math.SinCos(-roll[i]);
                var seen = followed(segment.First + i) && !at.IsMissing;
                forward[p][i] = seen ? segment.Sign * (c * (at.X - cx) - s * (at.Y - cy)) : double.NaN;
                up[p][i] = seen ? -(s * (at.X - cx) + c * (at.Y - cy)) : double.NaN;
            }
        }

        return new(forward, up);
    }

    /// <summary>Takes out what the Hampel test calls wild in either coordinate. Returns how many point positions that were.</summary>
    public int DropOutliers(double frameSeconds, SmoothingSettings settings)
    {
        var leg = Robust.Median(Distance(BodyPoint.Hip, BodyPoint.Knee)) + Robust.Median(Distance(BodyPoint.Knee, BodyPoint.Ankle));
        var floor = double.IsNaN(leg) ? 0 : leg * settings.HampelFloorPctLeg / 100;
        var half = Math.Max(3, (int)Math.Round(settings.HampelHalfWindowSeconds / frameSeconds));
        var dropped = 0;
        for (var p = 0; p < ForwardPx.Length; p++)
        {
            var wild = new bool[ForwardPx[p].Length];
            Hampel.Mark(ForwardPx[p], half, settings.HampelSigmas, floor, wild);
            Hampel.Mark(UpPx[p], half, settings.HampelSigmas, floor, wild);
            for (var i = 0; i < wild.Length; i++)
            {
                if (!wild[i]) continue;
                ForwardPx[p][i] = UpPx[p][i] = double.NaN;
                dropped++;
            }
        }

        return dropped;
    }

    public double[] Distance(BodyPoint a, BodyPoint b)
    {
        var distance = new double[ForwardPx[0].Length];
        for (var i = 0; i < distance.Length; i++)
        {
            var dx = ForwardPx[(int)a][i] - ForwardPx[(int)b][i];
            var dy = UpPx[(int)a][i] - UpPx[(int)b][i];
            distance[i] = Math.Sqrt(dx * dx + dy * dy);
        }

        return distance;
    }

    /// <summary>The tread's position: so far from heel (0) to toe (1).</summary>
    public (double[] Forward, double[] Up) Tread(double onFoot) =>
        (Between(ForwardPx, onFoot), Between(UpPx, onFoot));

    private static double[] Between(double[][] coordinate, double share)
    {
        var heel = coordinate[(int)BodyPoint.Heel];
        var toe = coordinate[(int)BodyPoint.Toe];
        var between = new double[heel.Length];
        for (var i = 0; i < between.Length; i++) between[i] = heel[i] + share * (toe[i] - heel[i]);
        return between;
    }
}
