using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>Draws whole frames of a clip. Frames do not depend on each other: any number of threads may ask for any of them, each with its own <see cref="Shutter"/>.</summary>
internal sealed class FrameMaker
{
    /// <summary>Instants drawn and averaged within the exposure: one for every few pixels that a limb runs in it; always two for the usual ways.</summary>
    private const int UsualInstants = 2;
    private const int LeastSolidInstants = 3;
    private const int MostInstants = 5;
    private const double MostCardYawDeg = 16;
    private const double PxPerInstant = 5;
    private const double LimbMS = 4;
    private const double BrightSeconds = 1 / 200.0;

    private readonly Ride _ride;
    private readonly Stage _stage;
    private readonly StudioCamera _camera;
    private readonly double[] _times;
    private readonly int _instants;
    private readonly bool _solid;
    private readonly Backdrop _backdrop;
    private readonly byte[]? _still;
    private readonly HorsePainter _horse;
    private readonly RiderPainter _rider;
    private readonly SensorNoise _noise;
    private readonly Exposure _light;
    private readonly PostPainter _posts;
    private readonly BystanderPainter? _bystander;
    private readonly Standing? _bystanderAt;

    public FrameMaker(Ride ride, Stage stage, StudioCamera camera)
    {
        (_ride, _stage, _camera) = (ride, stage, camera);
        var script = ride.Script;
        _times = FrameTimes.Of(script);
        var states = _times.Append(_times[^1] + 1 / script.FrameRateHz).Select(camera.At).ToArray();
        var turnRadS = Math.Abs(states[^1].PanRad - states[0].PanRad) / (_times[^1] + 1 / script.FrameRateHz);
        _backdrop = new Backdrop(script, states, FarthestM(), turnRadS * script.ShutterSeconds * states[0].FocalPx);
        if (script.Camera == CameraWork.Static && script.ZoomChange == 0)
        {
            _still = new byte[FrameBytes];
            _backdrop.Unroll(states[0], _still);
        }

        var largest = script.Way == Way.Usual ? states.Max(s => s.FocalPx) / script.CameraDistanceM : _times.Max(PxPerMAt);
        var wanted = (int)Math.Ceiling(largest * LimbMS * script.ShutterSeconds / PxPerInstant);
        _instants = script.Way == Way.Usual && script.ShutterSeconds <= BrightSeconds ? UsualInstants : Math.Clamp(wanted, 1, MostInstants);
        // Cards are right from the side; a horse that turns further is built as a body.
        _solid = script.Way != Way.Usual && _times.Any(t => Math.Abs(stage.At(ride.At(t)).YawDeg) > MostCardYawDeg);
        if (_solid) _instants = Math.Max(LeastSolidInstants, _instants);
        var puppet = new Puppet(script, ride.Body, (float)largest);
        _horse = new HorsePainter(script, puppet);
        _rider = new RiderPainter(puppet, ride.Body);
        _noise = new SensorNoise(script.Seed, script.NoiseSd);
        _light = new Exposure(script.Light);
        _posts = new PostPainter(new Posts(script, _times.Min(t => stage.At(ride.At(t)).DistanceM)), script);
        _bystanderAt = BystanderPlace.Of(ride, stage);
        if (_bystanderAt is { } place) _bystander = new BystanderPainter(script, (float)(states.Max(s => s.FocalPx) / place.DistanceM));
    }

    public int FrameBytes => 3 * _ride.Script.WidthPx * _ride.Script.HeightPx;

    /// <param name="frame">0-based; the exposure is centred on the frame's time.</param>
    /// <param name="rgb">Receives <see cref="FrameBytes"/> bytes, packed RGB.</param>
    public void Draw(int frame, Shutter shutter, byte[] rgb)
    {
        var seconds = _times[frame];
        if (_still is not null) _still.CopyTo(rgb);
        else _backdrop.Unroll(_camera.At(seconds), rgb);
        var beyond = _ride.Script.Bystander == Bystander.Behind;
        if (beyond) DrawBystander(seconds, shutter, rgb);
        DrawActor(seconds, shutter, PatchOfThePair(seconds), DrawInstant, rgb);
        if (!beyond) DrawBystander(seconds, shutter, rgb);
        var half = _ride.Script.ShutterSeconds / 2;
        _posts.Draw(_camera.At(seconds - half), _camera.At(seconds + half), rgb);
        _light.Dim(rgb);
        _noise.Add(rgb, frame);
    }

    private void DrawBystander(double seconds, Shutter shutter, byte[] rgb)
    {
        if (_bystander is null || _bystanderAt is not { } standing || !IsAhead(standing, _camera.At(seconds))) return;
        var patch = PatchOf(_camera.At(seconds), standing, new Point3(-0.5, -0.05, -0.4), new Point3(0.6, 1.95, 0.4));
        DrawActor(seconds, shutter, patch, (at, _, onto) => _bystander.Draw(onto, _camera.At(at), standing, at), rgb);
    }

    private static bool IsAhead(Standing standing, CameraState camera) =>
        standing.X * Math.Sin(camera.PanRad) + standing.Depth * Math.Cos(camera.PanRad) > 1.5;

    private void DrawActor(double seconds, Shutter shutter, Patch patch, Action<double, int, Canvas> drawInstant, byte[] rgb)
    {
        if (patch.Width <= 0 || patch.Height <= 0) return;
        shutter.Expose(patch, rgb, _ride.Script.WidthPx, _instants, (i, canvas) =>
            drawInstant(seconds + ((i + 0.5) / _instants - 0.5) * _ride.Script.ShutterSeconds, i, canvas));
    }

    private void DrawInstant(double seconds, int instant, Canvas canvas)
    {
        var moment = _ride.At(seconds);
        var (standing, state) = (_stage.At(moment), _camera.At(seconds));
        GroundShadow.Draw(canvas, state, standing, Hooves(moment));
        IScene scene = _solid ? new SolidScene(canvas, state, standing, AsideOf(instant)) : new CardScene(canvas, new View(state, standing));
        _horse.FarLegs(scene, moment);
        _rider.FarSide(scene, moment);
        _horse.Body(scene, moment);
        _horse.Tack(scene, moment);
        _rider.NearSide(scene, moment, _horse.Bit(moment));
        scene.Finish();
    }

    // Spread over the pixel so that three or more instants make soft edges (Halton's sequence in bases 2 and 3, centred).
    private Vector2 AsideOf(int instant)
    {
        var mean = Enumerable.Range(1, _instants).Select(Halton).Aggregate(Vector2.Zero, (a, b) => a + b) / _instants;
        return Halton(instant + 1) - mean;
    }

    private static Vector2 Halton(int index) => new(Radical(index, 2), Radical(index, 3));

    private static float Radical(int index, int radix)
    {
        var (value, share) = (0f, 1f / radix);
        for (; index > 0; index /= radix, share /= radix) value += index % radix * share;
        return value;
    }

    private double PxPerMAt(double seconds) =>
        StudioCamera.Project(_camera.At(seconds), _stage.At(_ride.At(seconds)), default).PxPerM;

    private double FarthestM() =>
        _ride.Script.Way == Way.Usual ? _ride.Script.CameraDistanceM : _times.Max(t => _stage.At(_ride.At(t)).DistanceM);

    // Near fore, far fore, near hind, far hind.
    private PlanePoint[] Hooves(RideMoment moment)
    {
        PlanePoint Hoof(bool fore, bool near) => HorseLegs.At(_ride.Script, moment, fore, near).Hoof;
        return [Hoof(true, true), Hoof(true, false), Hoof(false, true), Hoof(false, false)];
    }

    private Patch PatchOfThePair(double seconds)
    {
        var size = _ride.Script.HorseScale;
        return PatchOf(_camera.At(seconds), _stage.At(_ride.At(seconds)), new Point3(-1.55 * size, -0.05, -0.9), new Point3(1.65 * size, 1.35 + 1.5 * Math.Max(1, size), 0.6));
    }

    // The part of the picture that a box in space can cover.
    private Patch PatchOf(CameraState state, Standing standing, Point3 low, Point3 high)
    {
        const int MarginPx = 12;
        var (left, top, right, bottom) = (double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
        for (var i = 0; i < 8; i++)
        {
            var corner = new Point3((i & 1) == 0 ? low.Forward : high.Forward, (i & 2) == 0 ? low.Up : high.Up, (i & 4) == 0 ? low.Near : high.Near);
            var px = StudioCamera.Project(state, standing, corner).Px;
            (left, right) = (Math.Min(left, px.X), Math.Max(right, px.X));
            (top, bottom) = (Math.Min(top, px.Y), Math.Max(bottom, px.Y));
        }

        var (w, h) = (_ride.Script.WidthPx, _ride.Script.HeightPx);
        var x0 = (int)Math.Clamp(left - MarginPx, 0, w);
        var y0 = (int)Math.Clamp(top - MarginPx, 0, h);
        return new(x0, y0, (int)Math.Clamp(right + MarginPx, 0, w) - x0, (int)Math.Clamp(bottom + MarginPx, 0, h) - y0);
    }
}
