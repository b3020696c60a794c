using GaitSeat.Model;
using GaitSeat.Motion.Scale;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.View;

namespace GaitSeat.Motion.Tracks;

/// <summary>Makes the signals of one segment out of what was seen.</summary>
internal sealed class SegmentBuilder(Sightings sightings, FrameReason[] verdict, TurnCourse course, MotionSettings settings)
{
    /// <returns>Null where leg length cannot be told: hip, knee or ankle never seen.</returns>
    public (SegmentSignals Signals, BodySize Size)? Build(Segment segment)
    {
        var seconds = sightings.TimeSeconds[segment.First..segment.EndExcl];
        var roll = CameraRoll.Of(seconds, sightings.Surroundings.RotationRad.AsSpan(segment.First, segment.Count), TravelRoll.Of(sightings, segment, settings.Segment));
        var points = PlanePoints.Of(sightings, segment, i => FrameVerdict.IsFollowed(verdict[i]), roll);
        points.DropOutliers(EvenGrid.MedianStep(seconds), settings.Smoothing);
        if (BodySize.Of(seconds, points, settings.Scale) is not { } asSeen) return null;
        double[] turn = course.TurnDeg[segment.First..segment.EndExcl], turnSe = course.SeDeg[segment.First..segment.EndExcl];
        if (!sightings.PointsAreJoints) new JointOffsets(settings.Joints, settings.Stride.TreadOnFoot).TakeOff(points, asSeen.LegPx);
        new TurnCorrection(settings.Scale).Apply(points, asSeen.LegPx, turn);
        if (BodySize.Of(seconds, points, settings.Scale) is not { } size) return null;

        var grid = EvenGrid.Over(seconds, settings.Smoothing.MinGridHz);
        var smoother = new TrackSmoother(seconds, grid, settings.Segment.MaxHoleSeconds, settings.Smoothing);
        var signals = Signals(segment, seconds, roll, points, smoother, OnGrid(seconds, size.LegPx, grid));
        return (signals with { TurnDeg = OnGrid(seconds, turn, grid), TurnSeDeg = OnGrid(seconds, turnSe, grid) }, size);
    }

    private static double[] OnGrid(double[] seconds, double[] values, EvenGrid grid)
    {
        var onGrid = new double[grid.Count];
        Spline.OnGrid(seconds, values, grid, onGrid);
        return onGrid;
    }

    private SegmentSignals Signals(Segment segment, double[] seconds, double[] roll, PlanePoints points, TrackSmoother smoother, double[] legPx)
    {
        var hole = settings.Segment.MaxHoleSeconds;
        var (trunkForward, trunkUp) = PatchPath.InRiderPlane(sightings.Trunk, segment, roll, seconds, hole);
        var (groundForward, groundUp) = PatchPath.InRiderPlane(sightings.Surroundings, segment, roll, seconds, hole);
        double[] trunkX = PatchPath.Sum(trunkForward), trunkY = PatchPath.Sum(trunkUp);
        var groundY = PatchPath.Sum(StillWhereLost(groundUp));
        var (treadX, treadY) = points.Tread(settings.Stride.TreadOnFoot);
        double[] hipX = points.ForwardPx[(int)BodyPoint.Hip], hipY = points.UpPx[(int)BodyPoint.Hip];
        var spread = new SpreadNoise(sightings, segment, settings, Robust.Median(legPx));
        Smoothed InLegs(double[] raw) => smoother.Smooth(raw).Over(legPx);
        Smoothed Free(double[] a, double[] path) => InLegs(Levelled(Minus(a, path), trunkY));

        return new()
        {
            Segment = segment,
            Frames = (seconds, [.. Enumerable.Range(segment.First, segment.Count).Select(i => FrameVerdict.IsFollowed(verdict[i]))]),
            Grid = smoother.Grid,
            Seconds = [.. Enumerable.Range(0, smoother.Grid.Count).Select(i => smoother.Grid.TimeAt(i))],
            LegPx = legPx,
            RollRad = OnGrid(seconds, roll, smoother.Grid),
            Forward = [.. points.ForwardPx.Select((raw, p) => InLegs(raw).AtLeast(spread.Of((BodyPoint)p)))],
            Up = [.. points.UpPx.Select((raw, p) => InLegs(raw).AtLeast(spread.Of((BodyPoint)p)))],
            Seat = Free(hipY, trunkY).AtLeast(spread.Of(BodyPoint.Hip)),
            OverStirrup = InLegs(Minus(hipY, treadY)).AtLeast(spread.HipOverTread),
            Bounce = Free(trunkY, groundY),
            TreadBounce = InLegs(Minus(treadY, groundY)).AtLeast(spread.Tread),
            TreadInTrunk = Free(treadX, trunkX).AtLeast(spread.Tread),
            WristForwardInTrunk = Free(points.ForwardPx[(int)BodyPoint.Wrist], trunkX).AtLeast(spread.Of(BodyPoint.Wrist)),
            WristUpInTrunk = Free(points.UpPx[(int)BodyPoint.Wrist], trunkY).AtLeast(spread.Of(BodyPoint.Wrist)),
            Way = new(seconds, hipX, groundForward),
        };
    }

    /// <summary>A camera that could not be followed is taken as still: its own motion is slow against a bounce.</summary>
    private static double[] StillWhereLost(double[] steps) => [.. steps.Select(s => double.IsFinite(s) ? s : 0)];

    private static double[] Minus(double[] a, double[] b)
    {
        var difference = new double[a.Length];
        for (var i = 0; i < a.Length; i++) difference[i] = a[i] - b[i];
        return difference;
    }

    /// <summary>
    /// Takes the median off each stretch over which <paramref name="path"/> was added up without a break: the level there is free,
    /// and what stays small cannot be tilted by a changing scale.
    /// </summary>
    private static double[] Levelled(double[] values, double[] path)
    {
        for (var from = 0; from < values.Length; from++)
        {
            if (!double.IsFinite(path[from])) continue;
            var to = from;
            while (to < values.Length && double.IsFinite(path[to])) to++;
            var level = Robust.Median(values.AsSpan(from, to - from));
            for (var i = from; i < to; i++) values[i] -= level;
            from = to;
        }

        return values;
    }
}
