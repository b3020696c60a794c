namespace GaitSeat.Studio;

/// <summary>Draws the rider: the far side before the horse, the near side after the saddle.</summary>
internal sealed class RiderPainter(Puppet puppet, BodyPlan body)
{
    private const float FarDim = 0.66f;

    public void FarSide(Canvas canvas, View view, RideMoment moment)
    {
        Leg(canvas, view, moment.Pose, -1, FarDim);
        Arm(canvas, view, moment.Pose, -1, FarDim);
    }

    public void NearSide(Canvas canvas, View view, RideMoment moment, PlanePoint bit)
    {
        var pose = moment.Pose;
        Rein(canvas, view, pose, bit);
        Strap(canvas, view, pose);
        Seat(canvas, view, pose);
        Leg(canvas, view, pose, 1, 1);
        Iron(canvas, view, pose);
        TrunkAndHead(canvas, view, moment);
        Arm(canvas, view, pose, 1, 1);
    }

    private void Seat(Canvas canvas, View view, RiderPose pose)
    {
        // Lies halfway between trunk and thigh, so it follows both.
        var down = pose.Hip + Plane.Hung(1, -pose.TrunkDeg + 0.25 * (pose.ThighDeg + pose.TrunkDeg));
        canvas.Draw(puppet.Pelvis, view.Between(pose.Hip, BodyPlan.HipNearM, down, BodyPlan.HipNearM, 1 / puppet.Size, puppet.Size), 0.97f);
    }

    private void Leg(Canvas canvas, View view, RiderPose pose, int side, float dim)
    {
        var s = puppet.Size;
        canvas.Draw(puppet.Foot, view.Between(pose.Heel, side * BodyPlan.AnkleNearM, pose.Toe, side * BodyPlan.TreadNearM, puppet.FootM, s), dim);
        canvas.Draw(puppet.Shank, view.Between(pose.Knee, side * BodyPlan.KneeNearM, pose.Ankle, side * BodyPlan.AnkleNearM, puppet.ShankM, s), dim);
        canvas.Draw(puppet.Thigh, view.Between(pose.Hip, side * BodyPlan.HipNearM, pose.Knee, side * BodyPlan.KneeNearM, puppet.ThighM, s), dim);
    }

    private void TrunkAndHead(Canvas canvas, View view, RideMoment moment)
    {
        var (s, pose) = (puppet.Size, moment.Pose);
        var ear = pose.Ear;
        // The head's axis is upright through the helmet's top; the ear lies a little behind it.
        var up = Plane.Hung(1, -pose.HeadLeanDeg);
        var top = ear - up.Scaled(body.HelmetTop.Up);
        var nape = ear + new PlanePoint(-0.02 * s, -0.03 * s);
        var collar = pose.Shoulder + new PlanePoint(-0.012, 0.055).Turned(-pose.TrunkDeg).Scaled(s);
        canvas.Draw(puppet.RiderNeck, view.Between(nape, 0, collar, 0, (float)((nape - collar).Length / s), s), 0.9f);
        canvas.Draw(puppet.RiderTrunk, view.Between(pose.Shoulder, 0.6 * body.ShoulderNearM, pose.Hip, BodyPlan.HipNearM, puppet.TrunkM, s * Billow(moment)), 1);
        var bun = ear + new PlanePoint(-0.112, -0.045).Turned(-pose.HeadLeanDeg).Scaled(s);
        canvas.Draw(puppet.Bun, view.Between(bun, 0, bun + up, 0, 1 / s, s), 0.9f);
        if (puppet.LongHair is { } hair)
        {
            // It swings with the two beats of the stride and lies against the back.
            var hang = Plane.Hung(1, -0.6 * pose.TrunkDeg - 10 + 9 * Math.Sin(4 * Math.PI * moment.Phase));
            var root = ear + new PlanePoint(-0.085, -0.05).Turned(-pose.HeadLeanDeg).Scaled(s);
            canvas.Draw(hair, view.Between(root, 0.04, root + hang, 0.04, 1 / s, s), 0.95f);
        }

        canvas.Draw(puppet.Head, view.Between(top, 0.03, ear, 0.03, puppet.HeadEarM, s), 1);
        var peak = ear + new PlanePoint(0.108, 0.042).Turned(-pose.HeadLeanDeg).Scaled(s);
        canvas.Draw(puppet.Peak, view.Between(peak, 0.03, peak + new PlanePoint(1, -0.22).Turned(-pose.HeadLeanDeg), 0.03, 1.02f / s, s), 1);
    }

    // A wide jacket fills and falls in with the stride, so its outline is not the body's.
    private float Billow(RideMoment moment) => puppet.LooseJacket ? 1 + 0.07f * (float)Math.Sin(2 * Math.PI * (moment.Phase + 0.15)) : 1;

    private void Arm(Canvas canvas, View view, RiderPose pose, int side, float dim)
    {
        var s = puppet.Size;
        canvas.Draw(puppet.UpperArm, view.Between(pose.Shoulder, side * body.ShoulderNearM, pose.Elbow, side * BodyPlan.ElbowNearM, puppet.UpperArmM, s), dim);
        canvas.Draw(puppet.Forearm, view.Between(pose.Elbow, side * BodyPlan.ElbowNearM, pose.Wrist, side * BodyPlan.WristNearM, puppet.ForearmM, s), dim);
    }

    private void Rein(Canvas canvas, View view, RiderPose pose, PlanePoint bit)
    {
        var hand = pose.Wrist + (pose.Wrist - pose.Elbow).Scaled(0.06 / (pose.Wrist - pose.Elbow).Length);
        canvas.Draw(puppet.Rein, view.Between(hand, BodyPlan.WristNearM, bit, 0.06, 1, 1), 1);
    }

    private void Strap(Canvas canvas, View view, RiderPose pose)
    {
        var eye = IronEye(pose);
        canvas.Draw(puppet.Leather, view.Between(pose.Bar, BodyPlan.BarNearM, eye, BodyPlan.TreadNearM, 1, 1), 1);
    }

    private void Iron(Canvas canvas, View view, RiderPose pose)
    {
        var eye = IronEye(pose);
        canvas.Draw(puppet.Iron, view.Between(eye, BodyPlan.TreadNearM + 0.05, pose.Tread, BodyPlan.TreadNearM + 0.05, 0.13f, 1), 1);
    }

    // The iron hangs on from the leather, 13 cm from its eye to the tread.
    private static PlanePoint IronEye(RiderPose pose)
    {
        var up = pose.Bar - pose.Tread;
        return pose.Tread + up.Scaled(0.13 / up.Length);
    }
}
