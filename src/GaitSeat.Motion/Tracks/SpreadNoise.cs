using GaitSeat.Model;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Tracks;

/// <summary>
/// Noise of the points of a segment as the models' disagreement tells it, legs; 0 where only one model saw a point. A steady distance between two
/// models is bias and has its own setting: the noise shows in how the distance scatters.
/// </summary>
internal sealed class SpreadNoise(Sightings sightings, Segment segment, MotionSettings settings, double legPx)
{
    public double Of(BodyPoint point)
    {
        var apart = sightings[point].SpreadPx.AsSpan(segment.First, segment.Count);
        var spread = Robust.Sigma(apart, Robust.Median(apart));
        return double.IsNaN(spread) ? 0 : settings.Uncertainty.SpreadShare * spread / legPx;
    }

    /// <summary>Of the tread on its line between heel and toe, their errors independent.</summary>
    public double Tread
    {
        get
        {
            var share = settings.Stride.TreadOnFoot;
            double heel = (1 - share) * Of(BodyPoint.Heel), toe = share * Of(BodyPoint.Toe);
            return Math.Sqrt(heel * heel + toe * toe);
        }
    }

    public double HipOverTread => Math.Sqrt(Of(BodyPoint.Hip) * Of(BodyPoint.Hip) + Tread * Tread);
}
