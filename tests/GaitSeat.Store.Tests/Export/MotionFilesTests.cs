using GaitSeat.Model;

namespace GaitSeat.Store.Tests.Export;

/// <summary>TRC and C3D, opened again by readers that do not know the writers.</summary>
public sealed class MotionFilesTests(RiddenSeason season) : IClassFixture<RiddenSeason>
{
    /// <summary>The hip's mean position over the 30 frames of the first spell is the origin: frame 14.5.</summary>
    private static (double Forward, double Up) Expected(BodyPoint point, int frame)
    {
        var (x, y) = RiddenSeason.Place(point, frame);
        var (x0, y0) = (RiddenSeason.Place(BodyPoint.Hip, 0).X + 2 * 14.5, RiddenSeason.Place(BodyPoint.Hip, 0).Y + 14.5);
        return ((x - x0) * 10 * RiddenSeason.ScaleCmPerPx, -(y - y0) * 10 * RiddenSeason.ScaleCmPerPx);
    }

    [Fact]
    public void C3d_HoldsThePointsInMillimetres()
    {
        var c3d = new C3dReader(File.ReadAllBytes(FileOf("c3d", "spell1")));
        Assert.Equal((12, 1, 30, 25f), (c3d.Points, c3d.FirstFrame, c3d.LastFrame, c3d.RateHz));
        Assert.Equal((12, 30, 25f, -1f), ((int)c3d["POINT:USED"], (int)c3d["POINT:FRAMES"], (float)c3d["POINT:RATE"], (float)c3d["POINT:SCALE"]));
        Assert.Equal(["mm"], (string[])c3d["POINT:UNITS"]);
        foreach (var point in Enum.GetValues<BodyPoint>())
        {
            for (var i = 0; i < 30; i++)
            {
                var found = c3d.Data[i][(int)point];
                if (RiddenSeason.IsHole(point, i))
                {
                    Assert.Equal([0, 0, 0, -1], found);
                    continue;
                }

                var (forward, up) = Expected(point, i);
                Assert.Equal(forward, found[0], 1e-3);
                Assert.Equal(up, found[1], 1e-3);
                Assert.Equal([0, 0], found[2..]);
            }
        }
    }

    [Fact]
    public void C3d_NamesTheRidersSides()
    {
        var right = (string[])new C3dReader(File.ReadAllBytes(FileOf("c3d", "spell1")))["POINT:LABELS"];
        Assert.Equal(["NOSE", "R_EAR", "R_SHOULDER", "R_ELBOW", "R_WRIST", "R_HIP", "R_KNEE", "R_ANKLE", "R_HEEL", "R_TOE", "L_SHOULDER", "L_HIP"], right);
        var left = (string[])new C3dReader(File.ReadAllBytes(FileOf("c3d", "spell2")))["POINT:LABELS"];
        Assert.Equal(right.Select(n => n.StartsWith("R_", StringComparison.Ordinal) ? "L_" + n[2..] : n.Replace("L_", "R_", StringComparison.Ordinal)), left);
    }

    /// <summary>A horse that goes to the left is mirrored: forward is plus all the same. Points move 2 px a frame to the right, so backward.</summary>
    [Fact]
    public void FacingLeft_ForwardIsPlus()
    {
        var c3d = new C3dReader(File.ReadAllBytes(FileOf("c3d", "spell2")));
        Assert.Equal(-2 * 10 * RiddenSeason.ScaleCmPerPx, c3d.Data[1][0][0] - c3d.Data[0][0][0], 1e-3);
        Assert.Equal(-1 * 10 * RiddenSeason.ScaleCmPerPx, c3d.Data[1][0][1] - c3d.Data[0][0][1], 1e-3);
    }

    [Fact]
    public void Trc_HoldsTheSameAsC3d()
    {
        var trc = new TrcReader(File.ReadAllText(FileOf("trc", "spell1")));
        var c3d = new C3dReader(File.ReadAllBytes(FileOf("c3d", "spell1")));
        Assert.Equal(("25", "30", "12", "mm"), (trc.Header["DataRate"], trc.Header["NumFrames"], trc.Header["NumMarkers"], trc.Header["Units"]));
        Assert.Equal((string[])c3d["POINT:LABELS"], trc.Markers);
        Assert.Equal(30, trc.Rows.Count);
        for (var i = 0; i < 30; i++)
        {
            Assert.Equal(i / 25.0, trc.Seconds[i], 1e-6);
            for (var m = 0; m < 12; m++)
            {
                var found = c3d.Data[i][m];
                Assert.Equal(found[3] < 0, trc.Rows[i][m] is null);
                if (trc.Rows[i][m] is not { } place) continue;
                Assert.Equal(found[0], place.X, 2e-3);
                Assert.Equal(found[1], place.Y, 2e-3);
                Assert.Equal(0, place.Z);
            }
        }
    }

    /// <summary>Frames at uneven times are brought to an even rate by straight lines, and a hole in time stays a hole.</summary>
    [Fact]
    public async Task UnevenTimes_BecomeEven()
    {
        using var folder = new TemporaryFolder();
        double[] seconds = [0, 0.04, 0.07, 0.12, 0.16, 0.30, 0.34, 0.38];
        var points = Enum.GetValues<BodyPoint>().Select(p => new PointTrack([.. seconds.Select(t => 100 * t)], [.. seconds.Select(_ => 50.0)], [.. seconds.Select(_ => 1.0)], new double[seconds.Length])).ToArray();
        var measures = new MeasureSet { [StrideMeasure.Scale] = new(0.1, 0.01) };
        var motion = new ClipMotion(
            [new(1, Gait.RisingTrot, Facing.Right, 0, 1, 0.9, 2.7, 9, 11, 1, 0, Measured.Missing, 2)],
            [new(1, 1, Facing.Right, 0, 0.2, 0.38, 0.9, "good", measures)],
            [],
            new() { TimeSeconds = seconds, SeatPctLeg = new double[8], BouncePctLeg = new double[8], TreadForwardPctLeg = new double[8], ThighAngleDeg = new double[8], Points = points });
        await Dataset.Open(folder.Path).WriteAsync(Made.Measured() with { Motion = motion, Sightings = null, LeftOut = [] }, withTracks: true, CancellationToken.None);
        using var export = DatasetExport.Open(folder.Path, null, null);
        var trc = new TrcReader(File.ReadAllText(Assert.Single(export.Trc(folder.File("out")).Files)));
        Assert.Equal(Enumerable.Range(0, 10).Select(i => Math.Round(0.04 * i, 6)), trc.Seconds);
        // 100 px a second at 1 mm a px is 4 mm a frame.
        for (var i = 1; i <= 4; i++) Assert.Equal(4 * i, trc.Rows[i][0]!.Value.X - trc.Rows[0][0]!.Value.X, 1e-2);
        Assert.Equal([5, 6, 7], Enumerable.Range(0, 10).Where(i => trc.Rows[i][0] is null));
    }

    private string FileOf(string format, string spell)
    {
        using var export = DatasetExport.Open(season.Dataset, null, null);
        var folder = season.Out("motion-" + format);
        var files = (format == "c3d" ? export.C3d(folder) : export.Trc(folder)).Files;
        return files.Single(f => Path.GetFileName(f) == $"{RiddenSeason.Agreed[..16]}-{spell}.{format}");
    }
}
