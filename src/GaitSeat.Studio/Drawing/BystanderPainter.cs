namespace GaitSeat.Studio;

/// <summary>A person on the ground: upright, in other clothes than the rider, seen from the side.</summary>
internal sealed class BystanderPainter
{
    private const float LegM = 0.41f;
    private const float TrunkM = 0.48f;
    private const float UpperArmM = 0.31f;
    private const float ForearmM = 0.25f;
    private const float FootM = 0.24f;
    private const float HeadEarM = 0.15f;
    private const float NeckM = 0.17f;
    private const double AnkleM = 0.10;

    private readonly Sprite _trunk, _thigh, _shank, _foot, _upperArm, _forearm, _neck, _head;
    private readonly double _sway;

    public BystanderPainter(ClipScript script, float pxPerM)
    {
        var noise = new SeededNoise(script.Seed, stream: 11);
        _sway = noise.Uniform();
        var clothes = Wardrobe.Pick(noise);
        var parts = new RiderParts(clothes with { Breeches = "#34405a", Boots = "#4a3b2e", Helmet = clothes.Hair }, script.Seed + 77);
        Sprite Paint(Loft loft) => Sprite.Paint(loft, 1.25f * pxPerM);
        (_trunk, _thigh, _shank, _foot) = (Paint(parts.Trunk(TrunkM)), Paint(parts.Thigh(LegM)), Paint(parts.Shank(LegM)), Paint(parts.Foot(FootM)));
        (_upperArm, _forearm, _neck, _head) = (Paint(parts.UpperArm(UpperArmM)), Paint(parts.Forearm(ForearmM)), Paint(parts.Neck(NeckM)), Paint(parts.Head(HeadEarM)));
    }

    public void Draw(Canvas canvas, CameraState camera, Standing standing, double seconds)
    {
        var view = new View(camera, standing);
        var scene = new CardScene(canvas, view);
        var lean = 1.5 * Math.Sin(2 * Math.PI * (0.23 * seconds + _sway));
        var hip = new PlanePoint(0, AnkleM + 2 * LegM - 0.005);
        var shoulder = hip - Plane.Hung(TrunkM, -2 - lean);
        var ear = shoulder + new PlanePoint(0.03, 0.19);
        Leg(scene, view, hip, -0.09, -4, 0.8f);
        Arm(scene, view, shoulder, -0.18, 14 + lean, 0.8f);
        scene.Lay(_neck, view.Between(ear + new PlanePoint(-0.02, -0.03), 0, shoulder + new PlanePoint(-0.01, 0.05), 0, 0.15f, 1), 0.9f);
        Leg(scene, view, hip, 0.09, 5, 1);
        scene.Lay(_trunk, view.Between(shoulder, 0.1, hip, 0.1, TrunkM, 1), 1);
        scene.Lay(_head, view.Between(ear + new PlanePoint(0, HeadEarM), 0.03, ear, 0.03, HeadEarM, 1), 1);
        Arm(scene, view, shoulder, 0.18, 8 - lean, 1);
        scene.Finish();
    }

    private void Leg(CardScene scene, View view, PlanePoint hip, double near, double spreadDeg, float dim)
    {
        var knee = hip + Plane.Hung(LegM, spreadDeg + 3);
        var ankle = knee + Plane.Hung(LegM, spreadDeg - 4);
        var heel = ankle + new PlanePoint(-0.06, -0.08);
        scene.Lay(_foot, view.Between(heel, near, heel + new PlanePoint(FootM, 0), near, FootM, 1), dim);
        scene.Lay(_shank, view.Between(knee, near, ankle, near, LegM, 1), dim);
        scene.Lay(_thigh, view.Between(hip, near, knee, near, LegM, 1), dim);
    }

    private void Arm(CardScene scene, View view, PlanePoint shoulder, double near, double swingDeg, float dim)
    {
        var elbow = shoulder + Plane.Hung(UpperArmM, swingDeg);
        scene.Lay(_forearm, view.Between(elbow, near, elbow + Plane.Hung(ForearmM, swingDeg + 35), near, ForearmM, 1), dim);
        scene.Lay(_upperArm, view.Between(shoulder, near, elbow, near, UpperArmM, 1), dim);
    }
}
