using GaitSeat.Model;
using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Studio.Tests.Accuracy;

/// <summary>One input is spoilt at a time: the swap of that input must mend the measure it spoils, and the swaps of the others must not.</summary>
public sealed class ErrorBudgetTests
{
    private static readonly ClipTruth Truth = TruthOfARideTests.TruthOf(new ClipScript { Seed = 4, DurationSeconds = 5, FrameRateHz = 30, RiseCm = 9, YawDeg = 10 });
    private static readonly BodyLengths Lengths = new(StatureCm: 100 * Truth.StatureM);
    private static readonly Sightings Exact = Perfect();

    [Fact]
    public void SpoiltPoints_AreMendedByTruePoints()
    {
        var knee = Exact[BodyPoint.Knee];
        PointTrack[] points = [.. Exact.Points];
        points[(int)BodyPoint.Knee] = knee with { XPx = [.. knee.XPx.Select(x => x + 12)] };

        Mends(Exact with { Points = points }, Lengths, StrideMeasure.ThighAngleSit, Swap.Points, spoiltBy: 3, mendedTo: 1);
    }

    [Fact]
    public void WrongStature_IsMendedByTheTrueScale() =>
        Mends(Exact, new(StatureCm: 120 * Truth.StatureM), StrideMeasure.RiseHeightCm, Swap.Scale, spoiltBy: 1, mendedTo: 0.4);

    [Fact]
    public void DriftingAnchor_IsMendedByTheTrueAnchor()
    {
        var y = Exact.Trunk.YPx.Select((step, i) => step + 3 * Math.Cos(2 * Math.PI * 1.34 * Exact.TimeSeconds[i])).ToArray();

        Mends(Exact with { Trunk = Exact.Trunk with { YPx = y } }, Lengths, StrideMeasure.RiseHeightCm, Swap.Anchor, spoiltBy: 1, mendedTo: 0.4);
    }

    [Fact]
    public void WrongTurn_IsMendedByTheTrueOne()
    {
        var turned = Exact with { KnownTurnDeg = [.. Exact.KnownTurnDeg!.Select(t => -t)] };

        Mends(turned, Lengths, StrideMeasure.ThighAngleSit, Swap.Yaw, spoiltBy: 3, mendedTo: 1.5);
    }

    [Fact]
    public void AllTrue_LeavesOnlyTheMaths()
    {
        var errors = ErrorBudget.Run(Truth, Exact, Lengths, new(), Swap.All);

        Assert.True(Mae(errors, StrideMeasure.StrideDuration) < 0.01);
        Assert.True(Mae(errors, StrideMeasure.RiseHeightCm) < 0.3);
        Assert.True(Mae(errors, StrideMeasure.ThighAngleSit) < 1.5);
    }

    [Fact]
    public void Table_HasAColumnForEachStage()
    {
        var row = BudgetTable.Markdown([.. ErrorBudget.Stages.Select(s => ErrorBudget.Run(Truth, Exact, Lengths, new(), s.Swap))]).Split('\n').First(l => l.StartsWith("| rise_height_cm", StringComparison.Ordinal));

        Assert.Equal(ErrorBudget.Stages.Count + 1, row.Trim('|', ' ').Split('|').Length);
    }

    /// <summary>A stride that one run alone matched would tell of the stride, not of the input.</summary>
    [Fact]
    public void Table_ComparesTheSameStrides()
    {
        MeasureError[] one = [Made.Error("a", 1)], two = [Made.Error("a", 1), Made.Error("b", 9)];

        var table = BudgetTable.Markdown([two, one, two, two, two, two]).Split('\n');

        Assert.Contains("Of the 1 strides", table[0], StringComparison.Ordinal);
        Assert.Equal("1.00 (+1.00)", table.First(l => l.StartsWith("| rise_height_cm", StringComparison.Ordinal)).Split('|')[2].Trim());
        Assert.Equal(["2", "1", "2", "2", "2", "2"], table.First(l => l.StartsWith("| strides", StringComparison.Ordinal)).Trim('|', ' ').Split('|').Skip(1).Select(c => c.Trim()));
    }

    private static void Mends(Sightings spoilt, BodyLengths lengths, StrideMeasure measure, Swap mend, double spoiltBy, double mendedTo)
    {
        foreach (var swap in new[] { Swap.None, Swap.Points, Swap.Scale, Swap.Anchor, Swap.Yaw })
        {
            var mae = Mae(ErrorBudget.Run(Truth, spoilt, lengths, new(), swap), measure);
            if (swap == mend) Assert.True(mae < mendedTo, $"{swap}: {mae}");
            else Assert.True(mae > spoiltBy, $"{swap}: {mae}");
        }
    }

    private static double Mae(IReadOnlyList<MeasureError> errors, StrideMeasure measure) => ErrorSummary.Of(errors.Where(e => e.Measure == measure)).Mae;

    /// <summary>Sightings as the truth would have them.</summary>
    private static Sightings Perfect()
    {
        var rows = Truth.FrameRows;
        var n = rows.Count;
        T[] Each<T>(Func<int, T> of) => [.. Enumerable.Range(0, n).Select(of)];
        PointTrack Track(string name) => new(Each(i => rows[i][name].Px.X), Each(i => rows[i][name].Px.Y), Each(_ => 1.0), Each(_ => 0.0));
        PatchMotion Patch(Func<int, double> x, Func<int, double> y) => new(Each(x), Each(y), Each(_ => 0.0), Each(_ => 1.0), Each(_ => 50), Each(_ => 0.1));
        double Step(string name, bool up, int i) => i == 0 ? 0 : up ? rows[i][name].Px.Y - rows[i - 1][name].Px.Y : rows[i][name].Px.X - rows[i - 1][name].Px.X;
        double Bounce(int i) => i == 0 ? 0 : (rows[i].BounceCm - rows[i - 1].BounceCm) / 100 * rows[i].PxPerM;
        return new()
        {
            WidthPx = Truth.Width,
            HeightPx = Truth.Height,
            TimeSeconds = Each(i => rows[i].TimeSeconds),
            Rider = Each<BoxPx?>(_ => new(500, 150, 150, 270)),
            Horse = Each<BoxPx?>(_ => new(300, 250, 500, 350)),
            Facing = Each(_ => Truth.FacingTerm),
            KnownTurnDeg = Each(i => TrueTurn.Of(rows[i], Truth.FacingTerm)),
            Reason = Each(_ => FrameReason.None),
            CutBefore = Each(_ => false),
            Points = [.. Enum.GetValues<BodyPoint>().Select(p => Track(NameOf(p)))],
            PointsAreJoints = true,
            Trunk = Patch(i => Step("bar", false, i), i => Step("saddle", true, i)),
            Surroundings = Patch(i => Step("saddle", false, i) - 10, i => Step("saddle", true, i) + Bounce(i)),
        };
    }

    private static string NameOf(BodyPoint point) => point switch
    {
        BodyPoint.Nose => "ear",
        BodyPoint.FarShoulder => "shoulder",
        BodyPoint.FarHip => "hip",
        _ => point.ToString().ToLowerInvariant(),
    };
}
