using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

/// <summary>Records made up for tests; every number is invented.</summary>
internal static class Made
{
    internal const string KeyA = "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa";
    internal const string KeyB = "bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb";
    internal const int Frames = 50;

    internal static Provenance Provenance(string key = KeyA, string pipeline = "pipe1", string model = "model1") =>
        new(key, $"clip-{key[0]}.mp4", pipeline, model, "0.1.0-test", GaitSeat.Model.Provenance.CurrentSchemaVersion);

    internal static Session Session(bool consent = true, double? stature = 171.5) => new(
        "clip-a.mp4", new(2026, 5, 31), "2026", "R07", "H3", new(stature), 9, 62.5, "left", consent, "wind; \"gusts\"",
        new Dictionary<string, string> { ["trainer"] = "T1", ["arena"] = "süd" });

    internal static ClipRecord Measured(string key = KeyA, string pipeline = "pipe1", string model = "model1", Session? session = null) => new(
        Provenance(key, pipeline, model),
        session ?? Session(),
        new("/clips/x.mp4", 12.5, 1280, 720, 29.97, "h264", "yuv420p", 0, false, new("mov,mp4", 0, 1, 30000, 0, "bt709", ColourMatrix.Bt709)),
        ClipStatus.Measured,
        null,
        null,
        Sightings(),
        Motion(),
        [Finding()],
        [new(LeftOutScope.Frame, "turned_out", 7, "yaw 31 deg; at most 20", 1.5), new(LeftOutScope.Stride, "hole_in_points", 1, "0.2 s; at most 0.12")],
        Frames);

    internal static ClipRecord SetAside(string key = KeyB) => new(
        Provenance(key), null, null, ClipStatus.SetAside, "no_video_stream", "only sound was found", null, null, [], [], 0);

    internal static ClipMotion Motion() => new(
        [
            new(1, Gait.Walk, Facing.Right, 0, 3, 0.9, 1.8, double.NaN, 4, 0, 0, GaitSeat.Model.Measured.Missing, double.NaN),
            new(2, Gait.RisingTrot, Facing.Right, 3, 9, 0.95, 2.7, 9.1, 11.2, 3, 1, new(0.2, 0.05), 2.5),
        ],
        [Stride(1, 70, 48), Stride(2, 74, 50), Stride(4, 72, double.NaN)],
        [],
        Trace());

    internal static Stride Stride(int number, double durationHundredths, double thigh)
    {
        var measures = new MeasureSet
        {
            [StrideMeasure.StrideDuration] = new(durationHundredths / 100, 0.004),
            [StrideMeasure.ThighAngleSit] = new(thigh, 1.2),
            [StrideMeasure.RiseHeightPctLeg] = new(14, double.NaN),
        };
        return new(2, number, Facing.Right, 3 + number, 3.4 + number, 3.7 + number, 0.8, "good", measures);
    }

    private static Finding Finding() => new(
        2, Fault.PressingTheStirrup, "stirrup_drift_swing_cm", new(6.5, 0.5), 5, "cm", 0.998, "common practice, no source", 3, 9, [1, 4],
        "The foot swings forward 6.5 cm.");

    private static MotionTrace Trace() => new()
    {
        TimeSeconds = Ramp(0.04),
        SeatPctLeg = Ramp(0.1),
        BouncePctLeg = Ramp(0.2),
        TreadForwardPctLeg = [.. Ramp(0.3).Select((v, i) => i == 4 ? double.NaN : v)],
        ThighAngleDeg = Ramp(1),
        Points = [.. Enum.GetValues<BodyPoint>().Select(_ => new PointTrack(Ramp(2), Ramp(3), Ramp(0.01), Ramp(0)))],
    };

    private static Sightings Sightings() => new()
    {
        WidthPx = 1280,
        HeightPx = 720,
        TimeSeconds = Ramp(0.04),
        Rider = new BoxPx?[Frames],
        Horse = new BoxPx?[Frames],
        Facing = new Facing[Frames],
        Reason = [.. Enumerable.Range(0, Frames).Select(i => i == 3 ? FrameReason.TurnedOut : FrameReason.None)],
        CutBefore = new bool[Frames],
        Points = [.. Enum.GetValues<BodyPoint>().Select(_ => PointTrack.Empty(Frames))],
        Trunk = Still(),
        Surroundings = Still(),
    };

    private static PatchMotion Still() => new(Ramp(0), Ramp(0), Ramp(0), Ramp(0), new int[Frames], Ramp(0));

    private static double[] Ramp(double step) => [.. Enumerable.Range(0, Frames).Select(i => i * step)];
}
