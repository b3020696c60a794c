using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>Draws whole frames of a clip. Frames do not depend on each other: any number of threads may ask for any of them, each with its own <see cref="Canvas"/>.</summary>
internal sealed class FrameMaker
{
    /// <summary>Instants drawn and averaged within the exposure: two, and one more for every few pixels that a limb runs in it.</summary>
    private const int LeastInstants = 2;
    private const int MostInstants = 7;
    private const double PxPerInstant = 4;
    private const double LimbMS = 4;
    private const double BrightSeconds = 1 / 200.0;

    private readonly Ride _ride;
    private readonly Stage _stage;
    private readonly StudioCamera _camera;
    private readonly double[] _times;
    private readonly int _instants;
    private readonly Backdrop _backdrop;
    private readonly byte[]? _still;
    private readonly HorsePainter _horse;
    private readonly RiderPainter _rider;
    private readonly SensorNoise _noise;

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
        _instants = script.ShutterSeconds <= BrightSeconds ? LeastInstants : (int)Math.Clamp(Math.Ceiling(largest * LimbMS * script.ShutterSeconds / PxPerInstant), LeastInstants, MostInstants);
        var puppet = new Puppet(script, ride.Body, (float)largest);
        _horse = new HorsePainter(script, puppet);
        _rider = new RiderPainter(puppet, ride.Body);
        _noise = new SensorNoise(script.Seed, script.NoiseSd);
    }

    public int FrameBytes => 3 * _ride.Script.WidthPx * _ride.Script.HeightPx;

    /// <param name="frame">0-based; the exposure is centred on frame / rate.</param>
    /// <param name="rgb">Receives <see cref="FrameBytes"/> bytes, packed RGB.</param>
    public void Draw(int frame, Canvas canvas, Span<byte> rgb)
    {
        var seconds = _times[frame];
        if (_still is not null) _still.CopyTo(rgb);
        else _backdrop.Unroll(_camera.At(seconds), rgb);
        var box = BoxOfThePair(seconds);
        if (box.Width > 0 && box.Height > 0) DrawPair(seconds, canvas, box, rgb);
        _noise.Add(rgb, frame);
    }

    private void DrawPair(double seconds, Canvas canvas, (int X, int Y, int Width, int Height) box, Span<byte> rgb)
    {
        var sum = canvas.ClearedSum(box.Width * box.Height);
        for (var i = 0; i < _instants; i++)
        {
            canvas.Reset(box.X, box.Y, box.Width, box.Height);
            Load(canvas, rgb);
            DrawInstant(seconds + ((i + 0.5) / _instants - 0.5) * _ride.Script.ShutterSeconds, canvas);
            for (var y = 0; y < box.Height; y++)
            {
                var row = canvas.Row(y);
                var target = sum.Slice(y * box.Width, box.Width);
                for (var x = 0; x < row.Length; x++) target[x] += row[x];
            }
        }

        Store(box, sum, rgb);
    }

    private void DrawInstant(double seconds, Canvas canvas)
    {
        var moment = _ride.At(seconds);
        var (standing, state) = (_stage.At(moment), _camera.At(seconds));
        var view = new View(state, standing);
        GroundShadow.Draw(canvas, state, standing, Hooves(moment));
        _horse.FarLegs(canvas, view, moment);
        _rider.FarSide(canvas, view, moment);
        _horse.Body(canvas, view, moment);
        _horse.Tack(canvas, view, moment);
        _rider.NearSide(canvas, view, moment, _horse.Bit(moment));
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

    private (int X, int Y, int Width, int Height) BoxOfThePair(double seconds)
    {
        const int MarginPx = 12;
        var size = _ride.Script.HorseScale;
        var (standing, state) = (_stage.At(_ride.At(seconds)), _camera.At(seconds));
        var (left, top, right, bottom) = (double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
        for (var i = 0; i < 8; i++)
        {
            var corner = new Point3((i & 1) == 0 ? -1.55 * size : 1.65 * size, (i & 2) == 0 ? -0.05 : 1.35 + 1.5 * Math.Max(1, size), (i & 4) == 0 ? -0.9 : 0.6);
            var px = StudioCamera.Project(state, standing, corner).Px;
            (left, right) = (Math.Min(left, px.X), Math.Max(right, px.X));
            (top, bottom) = (Math.Min(top, px.Y), Math.Max(bottom, px.Y));
        }

        var x0 = Math.Clamp((int)left - MarginPx, 0, _ride.Script.WidthPx);
        var y0 = Math.Clamp((int)top - MarginPx, 0, _ride.Script.HeightPx);
        return (x0, y0, Math.Clamp((int)right + MarginPx, 0, _ride.Script.WidthPx) - x0, Math.Clamp((int)bottom + MarginPx, 0, _ride.Script.HeightPx) - y0);
    }

    private void Load(Canvas canvas, ReadOnlySpan<byte> rgb)
    {
        for (var y = 0; y < canvas.Height; y++)
        {
            var source = rgb[(3 * ((canvas.Y + y) * _ride.Script.WidthPx + canvas.X))..];
            var row = canvas.Row(y);
            for (var x = 0; x < row.Length; x++) row[x] = new Vector4(source[3 * x], source[3 * x + 1], source[3 * x + 2], 0) * (1 / 255f);
        }
    }

    private void Store((int X, int Y, int Width, int Height) box, ReadOnlySpan<Vector4> sum, Span<byte> rgb)
    {
        var scale = 255f / _instants;
        for (var y = 0; y < box.Height; y++)
        {
            var target = rgb.Slice(3 * ((box.Y + y) * _ride.Script.WidthPx + box.X), 3 * box.Width);
            for (var x = 0; x < box.Width; x++)
            {
                var colour = Vector4.Clamp(sum[y * box.Width + x] * scale, Vector4.Zero, new Vector4(255)) + new Vector4(0.5f);
                (target[3 * x], target[3 * x + 1], target[3 * x + 2]) = ((byte)colour.X, (byte)colour.Y, (byte)colour.Z);
            }
        }
    }
}
