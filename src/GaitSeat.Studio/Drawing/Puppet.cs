using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>All parts of horse, tack and rider, painted once for a clip at the size they will be seen.</summary>
internal sealed class Puppet
{
    /// <summary>Stature the rider's parts are drawn for, m.</summary>
    public const double DrawnStatureM = 1.68;

    /// <summary>A barrel narrow enough that the leg, whose joints the body plan places, lies on it and not in it.</summary>
    private const float TrunkDepth = 0.62f;

    /// <summary>Leather and cloth that lie flat: their breadth over half their height.</summary>
    private const float PlateDepth = 0.05f;
    private const float SeatDepth = 2.2f;

    public Puppet(ClipScript script, BodyPlan body, float pxPerM)
    {
        // A quarter finer than the picture, so that turning a part does not soften it.
        var texels = 1.25f * pxPerM;
        Part Paint(Loft loft) => Built(loft, new(loft.Roundness));
        Part Built(Loft loft, Build build) => new(loft, texels, build);
        Part Strapped(Loft loft) => Built(loft, new(0.5f, BothSides: true));
        var size = (float)(body.StatureM / DrawnStatureM);
        Size = size;
        var horse = new HorseParts(script.Look, script.Seed);
        var tack = new TackParts(script.Look, script.Seed);
        var rider = new RiderParts(script.Look, script.Seed);
        float Drawn(double metres) => (float)(metres / size);

        (Trunk, Neck, HorseHead, Ear, Tail) = (Built(horse.Trunk(), new(TrunkDepth, Centred: true)), Built(horse.Neck(), new(0.55f, Centred: true)), Built(horse.Head(), new(0.75f, Centred: true)), Paint(horse.Ear()), Built(horse.Tail(), new(1, Centred: true)));
        (ForeUpper, ForeArm, HindUpper, Gaskin) = (Paint(horse.ForeUpper()), Paint(horse.ForeArm()), Paint(horse.HindUpper()), Paint(horse.Gaskin()));
        (Cannon, Pastern) = (Paint(horse.Cannon(false)), Paint(horse.Pastern(false)));
        (WhiteCannon, WhitePastern) = script.Look.Stockings ? (Paint(horse.Cannon(true)), Paint(horse.Pastern(true))) : (Cannon, Pastern);
        (Cloth, Seat, Flap, Girth, Iron) = (Built(tack.Cloth(), new(PlateDepth, BothSides: true)), Built(tack.Seat(), new(SeatDepth, Centred: true)), Built(tack.Flap(), new(PlateDepth, BothSides: true)), Built(tack.Girth(), new(0.3f, BothSides: true)), Built(TackParts.Iron(), new(1.6f, BothSides: true)));
        Leather = Strapped(TackParts.Strap(Tint.Parse(script.Look.Saddle) * 0.75f, 0.011f, 0.3f));
        Rein = Strapped(TackParts.Strap(new Vector3(0.10f, 0.07f, 0.06f), 0.0065f, 0.2f));

        (TrunkM, ThighM, ShankM) = (Drawn(body.TrunkM), Drawn(body.ThighInPlaneM), Drawn(body.ShankInPlaneM));
        (UpperArmM, ForearmM, FootM) = (Drawn(body.UpperArmInPlaneM), Drawn(body.ForearmInPlaneM), Drawn(body.HeelBackM + body.ToeForwardM));
        HeadEarM = Drawn(body.HelmetTop.Up);
        NeckM = Drawn(body.Ear.Up) - 0.015f;
        (RiderTrunk, Pelvis, Thigh, Shank, Foot) = (Built(rider.Trunk(TrunkM), new(1.65f, Centred: true)), Built(rider.Pelvis(), new(1.5f, Centred: true)), Paint(rider.Thigh(ThighM)), Paint(rider.Shank(ShankM)), Paint(rider.Foot(FootM)));
        (UpperArm, Forearm, RiderNeck) = (Paint(rider.UpperArm(UpperArmM)), Paint(rider.Forearm(ForearmM)), Built(rider.Neck(NeckM), new(1, Centred: true)));
        (Head, Peak, Bun) = (Built(rider.Head(HeadEarM), new(0.74f, Centred: true)), Built(rider.Peak(), new(5, Centred: true)), Built(rider.Bun(), new(1, Centred: true)));
        LongHair = script.Look.LongHair ? Built(rider.LongHair(), new(1.6f, Centred: true)) : null;
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

    public Part Trunk { get; }
    public Part Neck { get; }
    public Part HorseHead { get; }
    public Part Ear { get; }
    public Part Tail { get; }
    public Part ForeUpper { get; }
    public Part ForeArm { get; }
    public Part HindUpper { get; }
    public Part Gaskin { get; }
    public Part Cannon { get; }
    public Part Pastern { get; }
    public Part WhiteCannon { get; }
    public Part WhitePastern { get; }
    public Part Cloth { get; }
    public Part Seat { get; }
    public Part Flap { get; }
    public Part Girth { get; }
    public Part Iron { get; }
    public Part Leather { get; }
    public Part Rein { get; }
    public Part RiderTrunk { get; }
    public Part Pelvis { get; }
    public Part Thigh { get; }
    public Part Shank { get; }
    public Part Foot { get; }
    public Part UpperArm { get; }
    public Part Forearm { get; }
    public Part RiderNeck { get; }
    public Part Head { get; }
    public Part Peak { get; }
    public Part Bun { get; }

    /// <summary>Null for a rider whose hair is gathered.</summary>
    public Part? LongHair { get; }

    /// <summary>Whether the cloth moves on the body.</summary>
    public bool LooseJacket { get; }
}
