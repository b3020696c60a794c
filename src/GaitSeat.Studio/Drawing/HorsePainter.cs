using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Draws the horse and its tack from the far side to the near side.</summary>
internal sealed class HorsePainter(ClipScript script, Puppet puppet)
{
    /// <summary>Far legs stand in the shade of the body.</summary>
    public const float FarDim = 0.62f;
    private readonly double _size = script.HorseScale;
    private readonly float _scale = (float)script.HorseScale;
    private const double LegNearM = 0.15;
    private const double SideNearM = 0.22;

    private static readonly PlanePoint Withers = new(0.46, -0.16);
    private static readonly PlanePoint Dock = new(-0.965, -0.09);

    public void FarLegs(IScene scene, RideMoment moment)
    {
        Leg(scene, moment, fore: false, near: false);
        Leg(scene, moment, fore: true, near: false);
    }

    public void Body(IScene scene, RideMoment moment)
    {
        var trunk = moment.Trunk;
        Tail(scene, moment);
        // A straight metre of the trunk's axis under the seat carries the whole part.
        var below = -HorseParts.TrunkAxisBelowSeatM;
        scene.Draw(puppet.Trunk, OnTrunk(trunk, 0, below), 0, OnTrunk(trunk, 1, below), 0, 1, _scale, 1);
        NeckAndHead(scene, moment);
        Leg(scene, moment, fore: false, near: true);
        Leg(scene, moment, fore: true, near: true);
    }

    // A saddle fits the rider: only the girth goes with the size of the horse.
    public void Tack(IScene scene, RideMoment moment)
    {
        var trunk = moment.Trunk;
        scene.Draw(puppet.Girth, OnTrunk(trunk, 0.13, -0.44), SideNearM, OnTrunk(trunk, 0.15, -0.735), 0.1, 0.30f, 1, 0.95f);
        scene.Draw(puppet.Cloth, OnSaddle(trunk, 0, 0), SideNearM, OnSaddle(trunk, 1, 0), SideNearM, 1, 1, 1);
        scene.Draw(puppet.Flap, OnSaddle(trunk, 0.09, -0.05), SideNearM, OnSaddle(trunk, 0.17, -0.48), SideNearM, 0.44f, 1, 1);
        scene.Draw(puppet.Seat, OnSaddle(trunk, 0, 0), 0.1, OnSaddle(trunk, 1, 0), 0.1, 1, 1, 1);
    }

    /// <summary>Where the rein meets the bit.</summary>
    public PlanePoint Bit(RideMoment moment)
    {
        var (poll, muzzle) = HeadLine(moment);
        return poll + (muzzle - poll).Scaled(0.80) + new PlanePoint(-0.045, -0.03);
    }

    private PlanePoint OnTrunk(TrunkState trunk, double forward, double up) =>
        new PlanePoint(0, trunk.SeatUpM) + new PlanePoint(forward, up).Turned(trunk.PitchDeg).Scaled(_size);

    private static PlanePoint OnSaddle(TrunkState trunk, double forward, double up) =>
        new PlanePoint(0, trunk.SeatUpM) + new PlanePoint(forward, up).Turned(trunk.PitchDeg);

    private void NeckAndHead(IScene scene, RideMoment moment)
    {
        var (poll, muzzle) = HeadLine(moment);
        var root = OnTrunk(moment.Trunk, Withers.Forward, Withers.Up);
        var crown = poll + new PlanePoint(-0.02, 0.055).Scaled(_size);
        scene.Draw(puppet.Ear, crown, -0.06, crown + new PlanePoint(0.055, 0.135).Scaled(_size), -0.06, 0.15f, _scale, 0.75f);
        scene.Draw(puppet.Neck, root, 0.03, poll, 0, HorseParts.NeckM, _scale, 1);
        scene.Draw(puppet.HorseHead, poll, 0.02, muzzle, 0.02, HorseParts.HeadM, _scale, 1);
        scene.Draw(puppet.Ear, crown, 0.06, crown + new PlanePoint(0.04, 0.14).Scaled(_size), 0.06, 0.15f, _scale, 1);
    }

    // The head nods with the beat: hardly in trot, freely in walk and canter.
    private (PlanePoint Poll, PlanePoint Muzzle) HeadLine(RideMoment moment)
    {
        var nodding = moment.Mix.Of(gait => NodDeg(gait) * Math.Sin(2 * Math.PI * (GaitDefaults.BouncesPerStride(gait) * moment.HorsePhase + 0.2)));
        var root = OnTrunk(moment.Trunk, Withers.Forward, Withers.Up);
        var poll = root + Plane.Hung(HorseParts.NeckM * _size, 138 + nodding);
        return (poll, poll + Plane.Hung(HorseParts.HeadM * _size, 38 + 0.6 * nodding));
    }

    private static double NodDeg(Gait gait) => gait switch { Gait.Walk => 2.5, Gait.Canter => 4.0, Gait.Halt => 0, _ => 0.8 };

    private void Tail(IScene scene, RideMoment moment)
    {
        var dock = OnTrunk(moment.Trunk, Dock.Forward, Dock.Up);
        var swing = moment.Mix.Of(gait => gait == Gait.Halt ? 0 : 5) * Math.Sin(2 * Math.PI * (moment.HorsePhase + 0.1));
        var end = dock + Plane.Hung(HorseParts.TailM * _size, -9 - swing);
        scene.Draw(puppet.Tail, dock, 0, end, 0, HorseParts.TailM, _scale, 0.95f);
    }

    private void Leg(IScene scene, RideMoment moment, bool fore, bool near)
    {
        var leg = HorseLegs.At(script, moment, fore, near);
        var depth = _size * (near ? LegNearM : -LegNearM);
        var dim = near ? 1 : FarDim;
        // Stockings on the near hind and the far fore.
        var white = near != fore;
        Lay(white ? puppet.WhitePastern : puppet.Pastern, leg.Fetlock, leg.Hoof, 0.185f);
        Lay(white ? puppet.WhiteCannon : puppet.Cannon, leg.Middle, leg.Fetlock, 0.30f);
        if (!near) Lay(fore ? puppet.ForeUpper : puppet.HindUpper, leg.Root, leg.Upper, 0.42f);
        Lay(fore ? puppet.ForeArm : puppet.Gaskin, leg.Upper, leg.Middle, fore ? 0.40f : 0.44f);
        if (near) Lay(fore ? puppet.ForeUpper : puppet.HindUpper, leg.Root, leg.Upper, 0.42f);

        void Lay(Part part, PlanePoint a, PlanePoint b, float length) => scene.Draw(part, a, depth, b, depth, length, _scale, dim);
    }
}
