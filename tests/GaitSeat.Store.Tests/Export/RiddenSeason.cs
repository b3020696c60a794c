using GaitSeat.Model;

namespace GaitSeat.Store.Tests.Export;

/// <summary>
/// Four clips: one with consent, one whose consent is taken back afterwards, one without a row in the sheet, one whose rider stands there by her full name.
/// Every number is invented; each body point moves on its own line, so that a mix-up shows.
/// </summary>
public sealed class RiddenSeason : IAsyncLifetime
{
    internal const int Frames = 60;
    internal const double RateHz = 25;
    internal const double ScaleCmPerPx = 0.5;
    internal static readonly string Agreed = new('a', 64);
    internal static readonly string TakenBack = new('b', 64);
    internal static readonly string NoRow = new('c', 64);
    internal static readonly string FullName = new('d', 64);
    private readonly TemporaryFolder _folder = new();

    public string Dataset => _folder.File("dataset");

    internal string Out(string name) => _folder.File(name);

    internal static IReadOnlyDictionary<string, Session> SheetOfToday { get; } = new[] { Row("a", "R07", true), Row("b", "R08", false), Row("d", "Anna Berg", true) }.ToDictionary(s => s.ClipFile);

    public async ValueTask InitializeAsync()
    {
        var dataset = Store.Dataset.Open(Dataset);
        await dataset.WriteAsync(Clip(Agreed, Row("a", "R07", true)), withTracks: true, CancellationToken.None);
        await dataset.WriteAsync(Clip(TakenBack, Row("b", "R08", true)), withTracks: true, CancellationToken.None);
        await dataset.WriteAsync(Clip(NoRow, null), withTracks: true, CancellationToken.None);
        await dataset.WriteAsync(Clip(FullName, Row("d", "Anna Berg", true)), withTracks: true, CancellationToken.None);
        SessionFact fact = new(SessionFactKind.ReinDifference, StrideMeasure.RiseHeightCm, new(8, 1), new(9, 1), new(1, 0.6), 0.8, 20, 24, 1, 1);
        await dataset.WriteSessionsAsync(
            [new(new(new(2026, 5, 31), "R07", "H3"), [Agreed], "pipe1", "model1", "test", [fact]), new(new(new(2026, 5, 31), "R08", "H3"), [Agreed, TakenBack], "pipe1", "model1", "test", [fact])],
            "pipe1", "model1", CancellationToken.None);
    }

    public ValueTask DisposeAsync()
    {
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }

    /// <summary>px of the analysed picture.</summary>
    internal static (double X, double Y) Place(BodyPoint point, int frame) => (100 + 10 * (int)point + 2 * frame, 300 - 5 * (int)point + frame);

    /// <summary>Not seen in three frames.</summary>
    internal static bool IsHole(BodyPoint point, int frame) => point == BodyPoint.Elbow && frame is >= 10 and < 13;

    private static Session Row(string letter, string rider, bool consent) => Made.Session(consent) with { ClipFile = $"clip-{letter}.mp4", Rider = rider };

    private static ClipRecord Clip(string key, Session? session)
    {
        var made = Made.Measured(key);
        return made with { Session = session, Motion = Motion(), Sightings = null, Info = made.Info! with { WidthPx = 2560, HeightPx = 1440 }, LeftOut = [] };
    }

    private static ClipMotion Motion() => new(
        [
            new(1, Gait.RisingTrot, Facing.Right, 0, 1.16, 0.95, 2.7, 9.1, 11.2, 2, 0, Measured.Missing, 2.5),
            new(2, Gait.RisingTrot, Facing.Left, 1.2, 2.36, 0.95, 2.7, 9.1, 11.2, 1, 0, Measured.Missing, 2.5),
        ],
        [Stride(1, 1, 0, Facing.Right), Stride(1, 2, 0.58, Facing.Right), Stride(2, 1, 1.3, Facing.Left)],
        [],
        new()
        {
            TimeSeconds = [.. Enumerable.Range(0, Frames).Select(i => i / RateHz)],
            SeatPctLeg = new double[Frames],
            BouncePctLeg = new double[Frames],
            TreadForwardPctLeg = new double[Frames],
            ThighAngleDeg = new double[Frames],
            Points = [.. Enum.GetValues<BodyPoint>().Select(Track)],
        });

    private static Stride Stride(int spell, int number, double start, Facing facing)
    {
        var measures = new MeasureSet { [StrideMeasure.Scale] = new(ScaleCmPerPx, 0.01), [StrideMeasure.RiseHeightCm] = new(8.46, 1), [StrideMeasure.ThighAngleSit] = new(47, double.NaN) };
        return new(spell, number, facing, start, start + 0.3, start + 0.58, 0.9, "good", measures);
    }

    private static PointTrack Track(BodyPoint point) => new(
        [.. Enumerable.Range(0, Frames).Select(i => IsHole(point, i) ? double.NaN : Place(point, i).X)],
        [.. Enumerable.Range(0, Frames).Select(i => IsHole(point, i) ? double.NaN : Place(point, i).Y)],
        [.. Enumerable.Range(0, Frames).Select(i => IsHole(point, i) ? 0 : 0.9)],
        new double[Frames]);
}
