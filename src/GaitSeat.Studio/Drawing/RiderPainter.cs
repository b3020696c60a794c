namespace GaitSeat.Studio;

/// <summary>Draws the rider: the far side before the horse, the near side after the saddle.</summary>
internal sealed class RiderPainter(Puppet puppet, BodyPlan body)
{
    private const float FarDim = 0.66f;

    public void FarSide(IScene scene, RideMoment moment)
    {
        Leg(scene, moment.Pose, -1, FarDim);
        Arm(scene, moment.Pose, -1, FarDim);
    }

    public void NearSide(IScene scene, RideMoment moment, PlanePoint bit)
    {
        var pose = moment.Pose;
        Rein(scene, pose, bit);
        Strap(scene, pose);
        Seat(scene, pose);
        Leg(scene, pose, 1, 1);
        Iron(scene, pose);
        TrunkAndHead(scene, moment);
        Arm(scene, pose, 1, 1);
    }

    private void Seat(IScene scene, RiderPose pose)
    {
        // Lies halfway between trunk and thigh, so it follows both.
        var down = pose.Hip + Plane.Hung(1, -pose.TrunkDeg + 0.25 * (pose.ThighDeg + pose.TrunkDeg));
        scene.Draw(puppet.Pelvis, pose.Hip, BodyPlan.HipNearM, down, BodyPlan.HipNearM, 1 / puppet.Size, puppet.Size, 0.97f);
    }

    private void Leg(IScene scene, RiderPose pose, int side, float dim)
    {
        var s = puppet.Size;
        scene.Draw(puppet.Foot, pose.Heel, side * BodyPlan.AnkleNearM, pose.Toe, side * BodyPlan.TreadNearM, puppet.FootM, s, dim);
        scene.Draw(puppet.Shank, pose.Knee, side * BodyPlan.KneeNearM, pose.Ankle, side * BodyPlan.AnkleNearM, puppet.ShankM, s, dim);
        scene.Draw(puppet.Thigh, pose.Hip, side * BodyPlan.HipNearM, pose.Knee, side * BodyPlan.KneeNearM, puppet.ThighM, s, dim);
    }

    private void TrunkAndHead(IScene scene, RideMoment moment)
    {
        var (s, pose) = (puppet.Size, moment.Pose);
        var ear = pose.Ear;
        // The head's axis is upright through the helmet's top; the ear lies a little behind it.
        var up = Plane.Hung(1, -pose.HeadLeanDeg);
        var top = ear - up.Scaled(body.HelmetTop.Up);
        var nape = ear + new PlanePoint(-0.02 * s, -0.03 * s);
        var collar = pose.Shoulder + new PlanePoint(-0.012, 0.055).Turned(-pose.TrunkDeg).Scaled(s);
        scene.Draw(puppet.RiderNeck, nape, 0, collar, 0, (float)((nape - collar).Length / s), s, 0.9f);
        scene.Draw(puppet.RiderTrunk, pose.Shoulder, 0.6 * body.ShoulderNearM, pose.Hip, BodyPlan.HipNearM, puppet.TrunkM, s * Billow(moment), 1);
        var bun = ear + new PlanePoint(-0.112, -0.045).Turned(-pose.HeadLeanDeg).Scaled(s);
        scene.Draw(puppet.Bun, bun, 0, bun + up, 0, 1 / s, s, 0.9f);
        if (puppet.LongHair is { } hair)
        {
            // It swings with the two beats of the stride and lies against the back.
            var hang = Plane.Hung(1, -0.6 * pose.TrunkDeg - 10 + 9 * Math.Sin(4 * Math.PI * moment.Phase));
            var root = ear + new PlanePoint(-0.085, -0.05).Turned(-pose.HeadLeanDeg).Scaled(s);
            scene.Draw(hair, root, 0.04, root + hang, 0.04, 1 / s, s, 0.95f);
        }

        scene.Draw(puppet.Head, top, 0.03, ear, 0.03, puppet.HeadEarM, s, 1);
        var peak = ear + new PlanePoint(0.108, 0.042).Turned(-pose.HeadLeanDeg).Scaled(s);
        scene.Draw(puppet.Peak, peak, 0.03, peak + new PlanePoint(1, -0.22).Turned(-pose.HeadLeanDeg), 0.03, 1.02f / s, s, 1);
    }

    // A wide jacket fills and falls in with the stride, so its outline is not the body's.
    private float Billow(RideMoment moment) => puppet.LooseJacket ? 1 + 0.07f * (float)Math.Sin(2 * Math.PI * (moment.Phase + 0.15)) : 1;

    private void Arm(IScene scene, RiderPose pose, int side, float dim)
    {
        var s = puppet.Size;
        scene.Draw(puppet.UpperArm, pose.Shoulder, side * body.ShoulderNearM, pose.Elbow, side * BodyPlan.ElbowNearM, puppet.UpperArmM, s, dim);
        scene.Draw(puppet.Forearm, pose.Elbow, side * BodyPlan.ElbowNearM, pose.Wrist, side * BodyPlan.WristNearM, puppet.ForearmM, s, dim);
    }

    private void Rein(IScene scene, RiderPose pose, PlanePoint bit)
    {
        var hand = pose.Wrist + (pose.Wrist - pose.Elbow).Scaled(0.06 / (pose.Wrist - pose.Elbow).Length);
        scene.Draw(puppet.Rein, hand, BodyPlan.WristNearM, bit, 0.06, 1, 1, 1);
    }

    private void Strap(IScene scene, RiderPose pose)
    {
        var eye = IronEye(pose);
        scene.Draw(puppet.Leather, pose.Bar, BodyPlan.BarNearM, eye, BodyPlan.TreadNearM, 1, 1, 1);
    }

    private void Iron(IScene scene, RiderPose pose)
    {
        var eye = IronEye(pose);
        scene.Draw(puppet.Iron, eye, BodyPlan.TreadNearM + 0.05, pose.Tread, BodyPlan.TreadNearM + 0.05, 0.13f, 1, 1);
    }

    // The iron hangs on from the leather, 13 cm from its eye to the tread.
    private static PlanePoint IronEye(RiderPose pose)
    {
        var up = pose.Bar - pose.Tread;
        return pose.Tread + up.Scaled(0.13 / up.Length);
    }
}
