using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>Draws whole frames of a clip. Frames do not depend on each other: any number of threads may ask for any of them, each with its own <see cref="Canvas"/>.</summary>
internal sealed class FrameMaker
{
    /// <summary>Exposure, s: a bright day.</summary>
    private const double ShutterSeconds = 1 / 200.0;

    /// <summary>Instants drawn and averaged within the exposure.</summary>
    private const int SubFrames = 2;

    private readonly Ride _ride;
    private readonly Stage _stage;
    private readonly StudioCamera _camera;
    private readonly Backdrop _backdrop;
    private readonly byte[]? _still;
    private readonly HorsePainter _horse;
    private readonly RiderPainter _rider;
    private readonly SensorNoise _noise;

    public FrameMaker(Ride ride, Stage stage, StudioCamera camera)
    {
        (_ride, _stage, _camera) = (ride, stage, camera);
        var script = ride.Script;
        var states = Enumerable.Range(0, script.FrameCount + 1).Select(i => camera.At(i / script.FrameRateHz)).ToArray();
        var turnRadS = Math.Abs(states[^1].PanRad - states[0].PanRad) / (states.Length - 1) * script.FrameRateHz;
        _backdrop = new Backdrop(script, states, turnRadS * ShutterSeconds * states[0].FocalPx);
        if (script.Camera == CameraWork.Static && script.ZoomChange == 0)
        {
            _still = new byte[FrameBytes];
            _backdrop.Unroll(states[0], _still);
        }

        var largest = states.Max(s => s.FocalPx) / script.CameraDistanceM;
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
        var seconds = frame / _ride.Script.FrameRateHz;
        if (_still is not null) _still.CopyTo(rgb);
        else _backdrop.Unroll(_camera.At(seconds), rgb);
        var box = BoxOfThePair(seconds);
        if (box.Width > 0 && box.Height > 0) DrawPair(seconds, canvas, box, rgb);
        _noise.Add(rgb, frame);
    }

    private void DrawPair(double seconds, Canvas canvas, (int X, int Y, int Width, int Height) box, Span<byte> rgb)
    {
        var sum = canvas.ClearedSum(box.Width * box.Height);
        for (var i = 0; i < SubFrames; i++)
        {
            canvas.Reset(box.X, box.Y, box.Width, box.Height);
            Load(canvas, rgb);
            DrawInstant(seconds + ((i + 0.5) / SubFrames - 0.5) * ShutterSeconds, canvas);
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
        var view = new View(state, standing, _ride.Script.Facing == Model.Facing.Right ? 1 : -1);
        GroundShadow.Draw(canvas, state, standing, Hooves(moment));
        _horse.FarLegs(canvas, view, moment);
        _rider.FarSide(canvas, view, moment);
        _horse.Body(canvas, view, moment);
        _horse.Tack(canvas, view, moment);
        _rider.NearSide(canvas, view, moment, _horse.Bit(moment));
    }

    // Near fore, far fore, near hind, far hind.
    private PlanePoint[] Hooves(RideMoment moment)
    {
        PlanePoint Hoof(bool fore, bool near) => HorseLegs.At(_ride.Script, moment.Phase, moment.Trunk, fore, near).Hoof;
        return [Hoof(true, true), Hoof(true, false), Hoof(false, true), Hoof(false, false)];
    }

    private (int X, int Y, int Width, int Height) BoxOfThePair(double seconds)
    {
        const int MarginPx = 12;
        var (standing, state) = (_stage.At(_ride.At(seconds)), _camera.At(seconds));
        var (left, top, right, bottom) = (double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
        for (var i = 0; i < 8; i++)
        {
            var corner = new Point3((i & 1) == 0 ? -1.55 : 1.65, (i & 2) == 0 ? -0.05 : 2.85, (i & 4) == 0 ? -0.9 : 0.6);
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
        const float Scale = 255f / SubFrames;
        for (var y = 0; y < box.Height; y++)
        {
            var target = rgb.Slice(3 * ((box.Y + y) * _ride.Script.WidthPx + box.X), 3 * box.Width);
            for (var x = 0; x < box.Width; x++)
            {
                var colour = Vector4.Clamp(sum[y * box.Width + x] * Scale, Vector4.Zero, new Vector4(255)) + new Vector4(0.5f);
                (target[3 * x], target[3 * x + 1], target[3 * x + 2]) = ((byte)colour.X, (byte)colour.Y, (byte)colour.Z);
            }
        }
    }
}
