using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Writes down what is truly in a ride: frames as the camera sees them, strides from the continuous motion.</summary>
internal sealed class TruthMaker(Ride ride, Stage stage, StudioCamera camera)
{
    private readonly Posts _posts = new(ride.Script, FrameTimes.Of(ride.Script).Min(t => stage.At(ride.At(t)).DistanceM));

    /// <summary>Step of the dense sampling that finds tops, ranges and means, share of a stride.</summary>
    private const int StepsPerStride = 1000;

    /// <summary>Angles at sit and top are means over this share of the stride on either side.</summary>
    private const double MeanShare = 0.05;

    public ClipTruth Make(string clipName)
    {
        var script = ride.Script;
        var times = FrameTimes.Of(script);
        var rows = times.Select(FrameAt).ToArray();
        var duration = script.VariableRate ? times[^1] + 1 / script.FrameRateHz : rows.Length / script.FrameRateHz;
        var spells = SpellList.Of(ride.Clock, script.Gait, duration);
        return new ClipTruth
        {
            Clip = clipName,
            Width = script.WidthPx,
            Height = script.HeightPx,
            Fps = script.VariableRate ? (times.Length - 1) / times[^1] : script.FrameRateHz,
            Frames = rows.Length,
            DurationS = duration,
            Gait = SpellList.ChiefGait(spells),
            StatureM = script.StatureCm / 100,
            Facing = MostlyFacing(rows) == Facing.Right ? "right" : "left",
            Camera = CameraWord(script.Camera),
            YawNominalDeg = script.YawDeg,
            YawMeanDeg = rows.Average(r => r.YawDeg),
            PxPerMMean = rows.Average(r => r.PxPerM),
            RiderPxHeightMean = rows.Average(r => r.RiderPxHeight),
            FirstInFrame = Array.FindIndex(rows, r => r.RiderFullInFrame),
            LastInFrame = Array.FindLastIndex(rows, r => r.RiderFullInFrame),
            SpeedMS = ride.SpeedMS,
            StrideHzNominal = script.StrideHzOrUsual,
            TrunkBounceExcursionCm = script.BounceCmOrUsual,
            ThighLenM = ride.Body.ThighM,
            ShankLenM = ride.Body.ShankM,
            LeatherM = ride.LeatherM,
            Conditions = script.Conditions,
            Spells = spells,
            StirrupChanges = script.StirrupChange is { } change ? [change.AtSeconds] : [],
            Strides = [.. Strides(duration)],
            FrameRows = rows,
        };
    }

    private static string CameraWord(CameraWork camera) => camera switch
    {
        CameraWork.Static => "static",
        CameraWork.PanZoom => "pan-zoom",
        CameraWork.HandHeld => "hand-held",
        _ => "pan",
    };

    private static Facing? MostlyFacing(FrameTruth[] rows) =>
        rows.Count(r => r.Facing == Facing.Right) >= rows.Length / 2.0 ? Facing.Right : Facing.Left;

    private FrameTruth FrameAt(double seconds, int frame)
    {
        var moment = ride.At(seconds);
        var (standing, state, pose) = (stage.At(moment), camera.At(seconds), moment.Pose);
        var (w, h) = (ride.Script.WidthPx, ride.Script.HeightPx);
        var posts = _posts.Seen(state).ToArray();
        var points = PosePoints.Of(pose, ride.Body).ToDictionary(
            p => p.Name,
            p =>
            {
                var px = StudioCamera.Project(state, standing, p.Metres).Px;
                var outside = px.X < 0 || px.Y < 0 || px.X >= w || px.Y >= h;
                return new PointTruth(px, outside ? PointVisibility.Outside : p.Hidden || posts.Any(post => post.Hides(px.X, px.Y)) ? PointVisibility.Hidden : PointVisibility.Seen, p.Metres);
            },
            StringComparer.Ordinal);
        var lowest = Math.Max(points["heel"].Px.Y, Math.Max(points["toe"].Px.Y, points["tread"].Px.Y));
        return new FrameTruth
        {
            Frame = frame,
            TimeSeconds = seconds,
            Points = points,
            StridePhase = moment.Phase,
            PxPerM = StudioCamera.Project(state, standing, pose.Hip.At(0)).PxPerM,
            YawDeg = standing.YawDeg,
            Facing = standing.Facing,
            RiderPxHeight = lowest - points["helmet_top"].Px.Y,
            RiderFullInFrame = points.Values.All(p => p.Visibility != PointVisibility.Outside),
            ThighDeg = pose.ThighDeg,
            TrunkDeg = pose.TrunkDeg,
            RiseCm = 100 * (Ride.SeatOverSaddleM(moment) - SeatAtRestM(moment.Mix)),
            TreadFwdOfBarCm = 100 * Ride.TreadOverRestM(moment),
            AnkleFwdOfHipCm = 100 * (pose.Ankle.Forward - pose.Hip.Forward),
            BounceCm = 100 * moment.Trunk.BounceM,
        };
    }

    // The lowest seat of a rising stride; elsewhere the mean seat.
    private double SeatAtRestM(GaitMix mix) =>
        BodyPlan.HipOverSeatM - mix.Of(gait => gait == Gait.RisingTrot ? Math.Min(SeatMotion.SinkM, ride.Script.RiseCm / 100) : 0);

    private IEnumerable<StrideTruth> Strides(double durationSeconds) =>
        from span in StrideSpans.Of(ride.Clock, onlyRising: ride.Script.GaitChanges.Count > 0)
        where span.SitS >= 0 && span.NextSitS <= durationSeconds
        select StrideOf(span.SitS, span.NextSitS) with { Fault = span.Fault };

    private StrideTruth StrideOf(double sit, double nextSit)
    {
        var step = (nextSit - sit) / StepsPerStride;
        var moments = Enumerable.Range(0, StepsPerStride + 1).Select(i => ride.At(sit + i * step)).ToArray();
        var seat = Array.ConvertAll(moments, Ride.SeatOverSaddleM);
        var tread = Array.ConvertAll(moments, Ride.TreadOverRestM);
        var top = Array.IndexOf(seat, seat.Max());
        var topSeconds = sit + top * step;
        var sitPose = moments[0].Pose;
        double Around(double seconds, Func<RiderPose, double> angle) => MeanAround(seconds, nextSit - sit, angle);
        return new StrideTruth
        {
            SitS = sit,
            TopS = topSeconds,
            NextSitS = nextSit,
            RiseCm = 100 * (seat[top] - (seat[0] + seat[^1]) / 2),
            ThighSitDeg = Around(sit, p => p.ThighDeg),
            ThighTopDeg = Around(topSeconds, p => p.ThighDeg),
            ShankSitDeg = Around(sit, p => p.ShankDeg),
            KneeSitDeg = Around(sit, p => p.KneeDeg),
            TrunkSitDeg = Around(sit, p => p.TrunkDeg),
            TrunkTopDeg = Around(topSeconds, p => p.TrunkDeg),
            FootPitchSitDeg = Around(sit, p => p.FootPitchDeg),
            DriftSwingCm = 100 * (tread.Max() - tread.Min()),
            DriftOffsetCm = 100 * tread.Average(),
            DriftOffsetHipCm = 100 * (sitPose.Tread.Forward - sitPose.Hip.Forward),
            StirrupLengthIndexPct = 100 * (sitPose.Hip.Up - sitPose.Tread.Up) / (ride.Body.ThighM + ride.Body.ShankM),
        };
    }

    private double MeanAround(double seconds, double strideSeconds, Func<RiderPose, double> angle)
    {
        const int HalfSteps = (int)(MeanShare * StepsPerStride);
        var sum = 0.0;
        for (var i = -HalfSteps; i <= HalfSteps; i++) sum += angle(ride.At(seconds + i * strideSeconds / StepsPerStride).Pose);
        return sum / (2 * HalfSteps + 1);
    }
}
