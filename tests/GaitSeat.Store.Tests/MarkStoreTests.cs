using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

public sealed class MarkStoreTests : IDisposable
{
    private static readonly DateTimeOffset Noon = new(2026, 6, 1, 12, 0, 0, 125, TimeSpan.Zero);
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Mark_ComesBackAsItWasGiven()
    {
        var store = Open();
        var full = Hip(Noon, 410.25, 220.5) with { SawTool = true, ToolXPx = 402, ToolYPx = 211.5 };
        var back = Hip(Noon.AddMinutes(1), double.NaN, double.NaN);
        await store.AppendAsync([full], CancellationToken.None);
        await store.AppendAsync([back], CancellationToken.None);
        Assert.Equal([full, back], store.All());
    }

    [Fact]
    public async Task LaterMark_Counts_UntilTakenBack_AndEveryRowStays()
    {
        var store = Open();
        await store.AppendAsync([Hip(Noon, 410, 220), Hip(Noon, 500, 300) with { Point = HandPoint.Knee }], CancellationToken.None);
        await store.AppendAsync([Hip(Noon.AddSeconds(1), 412, 221)], CancellationToken.None);
        await store.AppendAsync([Hip(Noon, 400, 200) with { Judge = "coach-2" }], CancellationToken.None);
        Assert.Equal([412, 500, 400], HandMark.Standing(store.All()).Select(m => m.XPx));
        await store.AppendAsync([Hip(Noon.AddSeconds(2), double.NaN, double.NaN)], CancellationToken.None);
        Assert.Equal([(HandPoint.Knee, "coach-1"), (HandPoint.Hip, "coach-2")], HandMark.Standing(store.All()).Select(m => (m.Point, m.Judge)));
        Assert.Equal(5, store.All().Count);
    }

    [Fact]
    public async Task ErasedClip_TakesItsMarksAlongAndNoOthers()
    {
        var store = Open();
        await store.AppendAsync([Hip(Noon, 410, 220)], CancellationToken.None);
        await store.AppendAsync([Hip(Noon, 410, 220) with { ClipKey = Made.KeyB }], CancellationToken.None);
        Dataset.Open(_folder.Path).Erase(Made.KeyA);
        Assert.Equal(Made.KeyB, Assert.Single(store.All()).ClipKey);
    }

    [Fact]
    public async Task MarksWithoutJudgeOrOfTwoClips_AreRefused()
    {
        var store = Open();
        await Assert.ThrowsAsync<ArgumentException>(() => store.AppendAsync([Hip(Noon, 1, 1) with { Judge = " " }], CancellationToken.None));
        await Assert.ThrowsAsync<ArgumentException>(() => store.AppendAsync([Hip(Noon, 1, 1), Hip(Noon, 1, 1) with { ClipKey = Made.KeyB }], CancellationToken.None));
        await Assert.ThrowsAsync<ArgumentException>(() => store.AppendAsync([], CancellationToken.None));
        Assert.Empty(store.All());
    }

    [Theory]
    [InlineData(Facing.Right, 1)]
    [InlineData(Facing.Left, -1)]
    public void Angles_AreThoseDrawn(Facing facing, int forward)
    {
        // A thigh at 45 deg, a shank straight down, a foot with the toe 10 px higher over 100 px, a trunk leaning forward by 30 of 300 px.
        var points = new Dictionary<HandPoint, PointPx>
        {
            [HandPoint.Hip] = new(500, 300), [HandPoint.Knee] = new(500 + forward * 100, 400), [HandPoint.Ankle] = new(500 + forward * 100, 550),
            [HandPoint.Heel] = new(500 + forward * 90, 580), [HandPoint.Toe] = new(500 + forward * 190, 570), [HandPoint.Shoulder] = new(500 + forward * 30, 0),
        };
        var angles = HandAngles.Of(p => points.GetValueOrDefault(p, PointPx.Missing), facing);
        Assert.Equal((45, 0, 135), (angles.Thigh, angles.Shank, Math.Round(angles.Knee, 9)));
        Assert.Equal(double.RadiansToDegrees(Math.Atan(0.1)), angles.FootPitch, 9);
        Assert.Equal(double.RadiansToDegrees(Math.Atan(0.1)), angles.TrunkLean, 9);
        points.Remove(HandPoint.Knee);
        Assert.True(double.IsNaN(HandAngles.Of(p => points.GetValueOrDefault(p, PointPx.Missing), facing).Thigh));
        Assert.True(double.IsNaN(HandAngles.Of(_ => new(1, 1), Facing.Unknown).Thigh));
    }

    [Fact]
    public void Values_AreOfTheStridesWhoseSitOrTopWasMarked()
    {
        // Sits at 1.0 and 1.7 s, a top at 1.35; 5 % of 0.7 s is 0.035 s.
        var stride = new Stride(1, 4, Facing.Right, 1.0, 1.35, 1.7, 0.9, "good", new());
        var spell = new RiddenSpell(
            new(Made.KeyA, "a.mp4", "p", "m", "1", Provenance.CurrentSchemaVersion), "R", "H", null, null, new(1, Gait.RisingTrot, Facing.Right, 0, 3, 1, 2.7, 8, 10, 1, 0, Measured.Missing, 1), [stride], new Dictionary<string, string>());
        HandMark[] Thigh(double seconds, double forwardPx, string judge) => [Hip(Noon, 500, 300) with { TimeSeconds = seconds, Judge = judge }, Hip(Noon, 500 + forwardPx, 400) with { TimeSeconds = seconds, Judge = judge, Point = HandPoint.Knee }];
        var values = HandValues.Of([.. Thigh(1.0, 100, "coach-1"), .. Thigh(1.03, 0, "coach-2"), .. Thigh(1.36, 100, "coach-1"), .. Thigh(1.2, 50, "coach-1"), .. Thigh(1.0, 10, "coach-3")[..1]], [spell]);
        var line = Assert.Single(values.Lines);
        Assert.Equal((4, 3, 2), (line.Stride, line.Frames, line.Judges));
        double Of(string column) => line.Values[HandValues.Columns.ToList().IndexOf(column)];
        Assert.Equal(22.5, Of("hand_thigh_angle_sit_deg"), 9);
        Assert.Equal(45, Of("hand_thigh_angle_top_deg"), 9);
        Assert.True(double.IsNaN(Of("hand_knee_angle_sit_deg")));
        Assert.Equal(2, values.Unused);
    }

    private MarkStore Open() => new(Dataset.Open(_folder.Path));

    private static HandMark Hip(DateTimeOffset at, double x, double y) =>
        new(Made.KeyA, "a.mp4", 1.24, 1280, 720, HandPoint.Hip, x, y, false, "coach-1", at, double.NaN, double.NaN, "pipe", "model");
}
