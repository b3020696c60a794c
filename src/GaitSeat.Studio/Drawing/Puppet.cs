using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>All parts of horse, tack and rider, painted once for a clip at the size they will be seen.</summary>
internal sealed class Puppet
{
    /// <summary>Stature the rider's parts are drawn for, m.</summary>
    public const double DrawnStatureM = 1.68;

    public Puppet(ClipScript script, BodyPlan body, float pxPerM)
    {
        // A quarter finer than the picture, so that turning a part does not soften it.
        var texels = 1.25f * pxPerM;
        Sprite Paint(Loft loft) => Sprite.Paint(loft, texels);
        var size = (float)(body.StatureM / DrawnStatureM);
        Size = size;
        var horse = new HorseParts(script.Look, script.Seed);
        var tack = new TackParts(script.Look, script.Seed);
        var rider = new RiderParts(script.Look, script.Seed);
        float Drawn(double metres) => (float)(metres / size);

        (Trunk, Neck, HorseHead, Ear, Tail) = (Paint(horse.Trunk()), Paint(horse.Neck()), Paint(horse.Head()), Paint(horse.Ear()), Paint(horse.Tail()));
        (ForeUpper, ForeArm, HindUpper, Gaskin) = (Paint(horse.ForeUpper()), Paint(horse.ForeArm()), Paint(horse.HindUpper()), Paint(horse.Gaskin()));
        (Cannon, Pastern) = (Paint(horse.Cannon(false)), Paint(horse.Pastern(false)));
        (WhiteCannon, WhitePastern) = script.Look.Stockings ? (Paint(horse.Cannon(true)), Paint(horse.Pastern(true))) : (Cannon, Pastern);
        (Cloth, Seat, Flap, Girth, Iron) = (Paint(tack.Cloth()), Paint(tack.Seat()), Paint(tack.Flap()), Paint(tack.Girth()), Paint(TackParts.Iron()));
        Leather = Paint(TackParts.Strap(Tint.Parse(script.Look.Saddle) * 0.75f, 0.011f, 0.3f));
        Rein = Paint(TackParts.Strap(new Vector3(0.10f, 0.07f, 0.06f), 0.0065f, 0.2f));

        (TrunkM, ThighM, ShankM) = (Drawn(body.TrunkM), Drawn(body.ThighInPlaneM), Drawn(body.ShankInPlaneM));
        (UpperArmM, ForearmM, FootM) = (Drawn(body.UpperArmInPlaneM), Drawn(body.ForearmInPlaneM), Drawn(body.HeelBackM + body.ToeForwardM));
        HeadEarM = Drawn(body.HelmetTop.Up);
        NeckM = Drawn(body.Ear.Up) - 0.015f;
        (RiderTrunk, Pelvis, Thigh, Shank, Foot) = (Paint(rider.Trunk(TrunkM)), Paint(rider.Pelvis()), Paint(rider.Thigh(ThighM)), Paint(rider.Shank(ShankM)), Paint(rider.Foot(FootM)));
        (UpperArm, Forearm, RiderNeck) = (Paint(rider.UpperArm(UpperArmM)), Paint(rider.Forearm(ForearmM)), Paint(rider.Neck(NeckM)));
        (Head, Peak, Bun) = (Paint(rider.Head(HeadEarM)), Paint(rider.Peak()), Paint(rider.Bun()));
        LongHair = script.Look.LongHair ? Paint(rider.LongHair()) : null;
        LooseJacket = script.Look.LooseJacket;
    }

    /// <summary>Rider over the drawn rider.</summary>
    public float Size { get; }

    public float TrunkM { get; }
    public float ThighM { get; }
    public float ShankM { get; }
    public float UpperArmM { get; }
    public float ForearmM { get; }
    public float FootM { get; }
    public float HeadEarM { get; }
    public float NeckM { get; }

    public Sprite Trunk { get; }
    public Sprite Neck { get; }
    public Sprite HorseHead { get; }
    public Sprite Ear { get; }
    public Sprite Tail { get; }
    public Sprite ForeUpper { get; }
    public Sprite ForeArm { get; }
    public Sprite HindUpper { get; }
    public Sprite Gaskin { get; }
    public Sprite Cannon { get; }
    public Sprite Pastern { get; }
    public Sprite WhiteCannon { get; }
    public Sprite WhitePastern { get; }
    public Sprite Cloth { get; }
    public Sprite Seat { get; }
    public Sprite Flap { get; }
    public Sprite Girth { get; }
    public Sprite Iron { get; }
    public Sprite Leather { get; }
    public Sprite Rein { get; }
    public Sprite RiderTrunk { get; }
    public Sprite Pelvis { get; }
    public Sprite Thigh { get; }
    public Sprite Shank { get; }
    public Sprite Foot { get; }
    public Sprite UpperArm { get; }
    public Sprite Forearm { get; }
    public Sprite RiderNeck { get; }
    public Sprite Head { get; }
    public Sprite Peak { get; }
    public Sprite Bun { get; }

    /// <summary>Null for a rider whose hair is gathered.</summary>
    public Sprite? LongHair { get; }

    /// <summary>Whether the cloth moves on the body.</summary>
    public bool LooseJacket { get; }
}
