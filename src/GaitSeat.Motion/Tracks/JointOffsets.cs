using GaitSeat.Model;

namespace GaitSeat.Motion.Tracks;

/// <summary>Moves the points of one segment from where the models put them to the joints, in place.</summary>
/// <param name="treadOnFoot">The tread's place from heel (0) to toe (1).</param>
internal sealed class JointOffsets(JointSettings settings, double treadOnFoot)
{
    /// <param name="points">In the picture, px, forward and up.</param>
    /// <param name="legPx">By frame.</param>
    public void TakeOff(PlanePoints points, double[] legPx)
    {
        Hip(points, legPx);
        Move(BodyPoint.Knee, 0, settings.KneeUpPctLeg);
        Move(BodyPoint.Ankle, 0, settings.AnkleUpPctLeg);
        Move(BodyPoint.Heel, settings.HeelForwardPctLeg, settings.HeelUpPctLeg);
        Move(BodyPoint.Toe, settings.ToeForwardPctLeg, settings.ToeUpPctLeg);
        SlideFoot(points, legPx);

        void Move(BodyPoint point, double forwardPct, double upPct)
        {
            double[] forward = points.ForwardPx[(int)point], up = points.UpPx[(int)point];
            for (var i = 0; i < forward.Length; i++)
            {
                forward[i] -= forwardPct / 100 * legPx[i];
                up[i] -= upPct / 100 * legPx[i];
            }
        }
    }

    /// <summary>Heel and toe together, along the foot's travel alone: its pitch stays. Where one of the three is missing nothing is moved.</summary>
    private void SlideFoot(PlanePoints points, double[] legPx)
    {
        var (tread, _) = points.Tread(treadOnFoot);
        double[] ankle = points.ForwardPx[(int)BodyPoint.Ankle], heel = points.ForwardPx[(int)BodyPoint.Heel], toe = points.ForwardPx[(int)BodyPoint.Toe];
        for (var i = 0; i < tread.Length; i++)
        {
            var slide = settings.FootByAnkleShare * (ankle[i] + settings.TreadAheadOfAnklePctLeg / 100 * legPx[i] - tread[i]);
            if (!double.IsFinite(slide)) continue;
            heel[i] += slide;
            toe[i] += slide;
        }
    }

    private void Hip(PlanePoints points, double[] legPx)
    {
        double[] hipForward = points.ForwardPx[(int)BodyPoint.Hip], hipUp = points.UpPx[(int)BodyPoint.Hip];
        double[] shoulderForward = points.ForwardPx[(int)BodyPoint.Shoulder], shoulderUp = points.UpPx[(int)BodyPoint.Shoulder];
        for (var i = 0; i < hipForward.Length; i++)
        {
            double forward = shoulderForward[i] - hipForward[i], up = shoulderUp[i] - hipUp[i];
            var share = settings.HipTowardsShoulderPctLeg / 100 * legPx[i] / Math.Sqrt(forward * forward + up * up);
            if (!double.IsFinite(share)) share = forward = up = 0;
            hipForward[i] -= share * forward;
            hipUp[i] -= share * up;
        }
    }
}
