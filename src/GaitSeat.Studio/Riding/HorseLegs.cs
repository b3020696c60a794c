using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>One leg of the horse in the rider's plane, from the trunk to the ground.</summary>
internal readonly record struct LegPose(PlanePoint Root, PlanePoint Upper, PlanePoint Middle, PlanePoint Fetlock, PlanePoint Hoof, double HoofTurnDeg)
{
    public LegPose Scaled(double size) =>
        size == 1 ? this : new(Root.Scaled(size), Upper.Scaled(size), Middle.Scaled(size), Fetlock.Scaled(size), Hoof.Scaled(size), HoofTurnDeg);
}

/// <summary>The beat of the legs. Only drawn, never measured: hooves stand still on the ground in stance and swing between.</summary>
internal static class HorseLegs
{
    private static readonly PlanePoint ShoulderOverSeat = new(0.40, -0.20);
    private static readonly PlanePoint HipOverSeat = new(-0.70, -0.20);
    private static readonly PlanePoint FetlockOverHoof = new(-0.075, 0.165);

    public static LegPose At(ClipScript script, RideMoment moment, bool fore, bool near)
    {
        var (mix, trunk, size) = (moment.Mix, moment.Trunk, script.HorseScale);
        // Worked out on a horse of the drawn height and then scaled.
        var root = new PlanePoint(0, trunk.SeatUpM / size) + (fore ? ShoulderOverSeat : HipOverSeat).Turned(trunk.PitchDeg);
        var phase = moment.HorsePhase + (script.OtherDiagonal ? 0.5 : 0);
        var (reach, lift, turn) = Hoof(mix.A, phase, fore, near);
        if (!mix.IsPure)
        {
            var other = Hoof(mix.B, phase, fore, near);
            (reach, lift, turn) = (reach + mix.ShareB * (other.Reach - reach), lift + mix.ShareB * (other.Lift - lift), turn + mix.ShareB * (other.TurnDeg - turn));
        }

        // A standing horse's hooves: fore under the withers, hind a little behind the hip.
        var hoof = new PlanePoint((fore ? 0.33 : -0.80) + reach + 0.03 * (near ? 1 : -1), lift);
        var fetlock = hoof + FetlockOverHoof.Turned(turn);
        return (fore ? Fore(root, fetlock, hoof, turn) : Hind(root, fetlock, hoof, turn)).Scaled(size);
    }

    private readonly record struct Beat(double Start, double StanceShare, double LiftM);

    // Start: phase at which the hoof lands. Diagonal pairs in trot; left hind, left fore, right hind, right fore in walk;
    // far hind, then near hind with far fore, then near fore in canter. Stance shares: Korean walk/trot study 59 and 49 %; less in a trot with suspension.
    private static Beat BeatOf(Gait gait, bool fore, bool near) => gait switch
    {
        Gait.RisingTrot or Gait.SittingTrot => new(near == fore ? -0.16 : 0.34, 0.38, fore ? 0.17 : 0.13),
        Gait.Walk => new((near ? 0 : 0.5) + (fore ? 0.25 : 0), 0.61, fore ? 0.09 : 0.07),
        Gait.Canter => new(fore ? (near ? 0.50 : 0.26) : near ? 0.26 : 0.02, 0.30, fore ? 0.22 : 0.15),
        _ => new(0, 1, 0),
    };

    private static (double Reach, double Lift, double TurnDeg) Hoof(Gait gait, double phase, bool fore, bool near)
    {
        if (gait == Gait.Halt) return (0, 0, 0);
        var beat = BeatOf(gait, fore, near);
        var at = phase - beat.Start - Math.Floor(phase - beat.Start);
        var ground = GaitDefaults.StrideLengthM(gait) * beat.StanceShare;
        if (at < beat.StanceShare)
        {
            var share = at / beat.StanceShare;
            // The heel comes off in the last third of stance.
            return (ground * (0.5 - share), 0, -28 * Math.Max(0, share - 0.67) / 0.33);
        }

        var swing = (at - beat.StanceShare) / (1 - beat.StanceShare);
        var along = swing - 0.6 * Math.Sin(2 * Math.PI * swing) / (2 * Math.PI);
        var lift = beat.LiftM * Math.Pow(Math.Sin(Math.PI * swing), 1.3);
        var turn = -28 * (1 - swing) - 62 * Math.Sin(Math.PI * Math.Min(1, swing * 1.15));
        return (ground * (along - 0.5), lift, turn * (1 - Tail(swing)));
    }

    private static double Tail(double swing) => swing < 0.8 ? 0 : (swing - 0.8) / 0.2;

    // The shorter the way from shoulder to fetlock, the more the carpus comes forward.
    private static LegPose Fore(PlanePoint root, PlanePoint fetlock, PlanePoint hoof, double turn)
    {
        const double Straight = 1.13;
        var (along, forward, distance) = Frame(root, fetlock);
        var fold = Math.Sqrt(Math.Max(0, Straight - distance));
        return new(root, At(root, along, forward, 0.40 * distance, -0.05 - 0.12 * fold), At(root, along, forward, 0.72 * distance, 0.015 + 0.30 * fold), fetlock, hoof, turn);
    }

    // Stifle forward, hock back.
    private static LegPose Hind(PlanePoint root, PlanePoint fetlock, PlanePoint hoof, double turn)
    {
        const double Straight = 1.16;
        var (along, forward, distance) = Frame(root, fetlock);
        var fold = Math.Sqrt(Math.Max(0, Straight - distance));
        return new(root, At(root, along, forward, 0.32 * distance, 0.11 + 0.16 * fold), At(root, along, forward, 0.64 * distance, -0.06 - 0.26 * fold), fetlock, hoof, turn);
    }

    private static (PlanePoint Along, PlanePoint Forward, double Distance) Frame(PlanePoint from, PlanePoint to)
    {
        var reach = to - from;
        var along = new PlanePoint(reach.Forward / reach.Length, reach.Up / reach.Length);
        return (along, new(-along.Up, along.Forward), reach.Length);
    }

    private static PlanePoint At(PlanePoint root, PlanePoint along, PlanePoint forward, double down, double ahead) =>
        new(root.Forward + down * along.Forward + ahead * forward.Forward, root.Up + down * along.Up + ahead * forward.Up);
}
