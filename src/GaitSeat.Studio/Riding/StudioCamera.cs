using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>How the camera is set at one instant.</summary>
/// <param name="PanRad">Turn about the vertical, + to the right.</param>
/// <param name="FocalPx">Focal length, px.</param>
/// <param name="CentreXPx">Principal point.</param>
/// <param name="CentreYPx">Principal point; the lens is shifted, not tilted, so upright things stay upright.</param>
internal readonly record struct CameraState(double PanRad, double FocalPx, double CentreXPx, double CentreYPx)
{
    /// <summary>Turn about the axis, + the right side of the picture is low; about the point <see cref="TurnXPx"/>, <see cref="TurnYPx"/>.</summary>
    public double RollRad { get; init; }

    public double TurnXPx { get; init; }

    public double TurnYPx { get; init; }

    /// <summary>How far the lens has strayed from its place, m. The surroundings are painted as seen from the place itself: they are far enough.</summary>
    public Point3 Shift { get; init; }
}

/// <summary>A pinhole camera at the origin of the stage, at eye height.</summary>
internal sealed class StudioCamera
{
    /// <summary>Lens height over the ground, m.</summary>
    public const double HeightM = 1.55;

    /// <summary>Hand-held pan: how far it strays from the horse, rad (about 0.4 deg), and up and down, share of picture height.</summary>
    private const double PanStrayRad = 0.007;
    private const double TiltStrayShare = 0.004;

    /// <summary>The pan follows the horse this much late, s.</summary>
    private const double LagSeconds = 0.12;

    private const double MiddleOfPairM = 1.22;
    private const double MiddleShare = 0.52;

    /// <summary>The zoom follows the distance by this power: nobody keeps the size exactly.</summary>
    private const double ZoomPower = 0.8;

    private readonly Ride _ride;
    private readonly Stage _stage;
    private readonly double _focalPx;
    private readonly double _centreYPx;
    private readonly double[] _stray;
    private readonly double _usualDistanceM;
    private readonly double _middleOfPairM;
    private readonly HandShake? _shake;

    public StudioCamera(Ride ride, Stage stage)
    {
        (_ride, _stage) = (ride, stage);
        var script = ride.Script;
        var middle = ride.At(script.DurationSeconds / 2);
        var pose = middle.Pose;
        var riderM = pose.HelmetTop.Up - Math.Min(pose.Heel.Up, Math.Min(pose.Toe.Up, pose.Tread.Up));
        // At the middle of the clip the zoom has run half its course.
        _usualDistanceM = script.Way is Way.CircleFromInside or Way.CircleFromOutside ? stage.At(middle).DistanceM : script.CameraDistanceM;
        _focalPx = script.RiderHeightPx / riderM * _usualDistanceM / (1 + script.ZoomChange / 2);
        // Horse and rider are 2.45 m tall together; their middle goes a little below the middle of the picture.
        _middleOfPairM = MiddleOfPairM + 0.7 * TrunkMotion.SeatHeightM * (script.HorseScale - 1);
        var pxPerM = script.RiderHeightPx / riderM;
        _centreYPx = MiddleShare * script.HeightPx - pxPerM * (HeightM - _middleOfPairM);
        var noise = new SeededNoise(script.Seed, stream: 3);
        if (script.Camera == CameraWork.HandHeld) _shake = new HandShake(script.Seed);
        _stray = [.. Enumerable.Range(0, 8).Select(_ => noise.Uniform())];
    }

    public CameraState At(double seconds)
    {
        var script = _ride.Script;
        var focal = _focalPx * (1 + script.ZoomChange * seconds / script.DurationSeconds);
        var level = new CameraState(0, focal, script.WidthPx / 2.0, _centreYPx)
        {
            RollRad = script.RollDeg * Math.PI / 180,
            TurnXPx = script.WidthPx / 2.0,
            TurnYPx = script.HeightPx / 2.0,
        };
        return script.Camera == CameraWork.Static ? level : Following(level, seconds);
    }

    private CameraState Following(CameraState level, double seconds)
    {
        var standing = _stage.At(_ride.At(seconds - LagSeconds) with { Trunk = default });
        var zoom = _ride.Script.Camera == CameraWork.PanZoom ? Math.Pow(standing.DistanceM / _usualDistanceM, ZoomPower) : 1;
        var state = level with
        {
            PanRad = Math.Atan2(standing.X, standing.Depth) + PanStrayRad * Wobble(seconds, 0),
            FocalPx = level.FocalPx * zoom,
            CentreYPx = HorizonYPx(level.FocalPx * zoom / standing.DistanceM) + TiltStrayShare * _ride.Script.HeightPx * Wobble(seconds, 4),
        };
        return _shake is { } shake ? Shaken(state, shake, seconds) : state;
    }

    // Where the distance changes the camera is tilted to keep the pair in the middle.
    private double HorizonYPx(double pxPerM) =>
        _ride.Script.Way == Way.Usual ? _centreYPx : MiddleShare * _ride.Script.HeightPx - pxPerM * (HeightM - _middleOfPairM);

    private static CameraState Shaken(CameraState state, HandShake shake, double seconds) => state with
    {
        PanRad = state.PanRad + shake.PanRad(seconds),
        CentreYPx = state.CentreYPx + state.FocalPx * shake.TiltRad(seconds),
        RollRad = state.RollRad + shake.RollRadAt(seconds),
        Shift = new(shake.RightM(seconds), shake.UpM(seconds), shake.AwayM(seconds)),
    };

    /// <summary>A point given in the rider's frame at its place in the picture, and the picture scale there, px per m.</summary>
    public static (PointPx Px, double PxPerM) Project(CameraState camera, Standing standing, Point3 point) => new Projection(camera, standing).Of(point);

    // Three slow waves of seeded phase: smooth, and the same on every machine.
    private double Wobble(double seconds, int from) =>
        0.5 * Math.Sin(2 * Math.PI * (0.37 * seconds + _stray[from]))
        + 0.3 * Math.Sin(2 * Math.PI * (0.83 * seconds + _stray[from + 1]))
        + 0.2 * Math.Sin(2 * Math.PI * (1.57 * seconds + _stray[from + 2]));
}
