using GaitSeat.Model;
using GaitSeat.Vision.Flow;
using OpenCvSharp;

namespace GaitSeat.Vision.Tests.Flow;

/// <summary>An independent implementation as the judge: OpenCV's pyramidal Lucas–Kanade on the same points of the same pictures.</summary>
public sealed class OpenCvAgreementTests
{
    private const int Width = 640;
    private const int Height = 360;
    private const int Levels = 3;

    private static readonly Texture Fine = new(21, 4, 40);
    private static readonly Texture Coarse = new(22, 23, 110);

    [Theory]
    [InlineData(3.3, -1.7, 0.004)]
    [InlineData(-11.2, 6.6, -0.01)]
    public void SamePoints_MotionsAgree(double dx, double dy, double turn)
    {
        using var first = Pictures.Paint(0, Width, Height, Scene);
        using var second = Pictures.Paint(1, Width, Height, (x, y) => Scene(x - dx + (turn * (y - 180)), y - dy - (turn * (x - 320))));
        var places = Grid();
        var theirs = FollowWithOpenCv(first, second, places);
        var ours = FollowWithOurs(first, second, places);

        var differences = places.Select((_, i) => (Ours: ours[i], Theirs: theirs[i]))
            .Where(p => p is { Ours: not null, Theirs: not null })
            .Select(p => p.Ours!.Value.DistanceTo(p.Theirs!.Value)).Order().ToArray();

        Assert.True(differences.Length > 0.9 * places.Count, $"only {differences.Length} of {places.Count} points followed by both");
        Assert.InRange(differences[differences.Length / 2], 0, 0.05);
        Assert.InRange(differences[(int)(differences.Length * 0.95)], 0, 0.25);
    }

    private static double Scene(double x, double y) => 120 + Fine.At(x, y) + Coarse.At(x, y);

    private static List<PointPx> Grid()
    {
        var places = new List<PointPx>();
        for (var y = 60; y <= 300; y += 20)
        {
            for (var x = 60; x <= 580; x += 20) places.Add(new PointPx(x, y));
        }

        return places;
    }

    private static List<PointPx?> FollowWithOurs(Frame first, Frame second, List<PointPx> places)
    {
        var reducer = new GreyReducer(Width, Height, Width);
        var (before, now) = (new GreyPyramid(reducer, Levels), new GreyPyramid(reducer, Levels));
        before.Fill(first);
        now.Fill(second);
        var follower = new PointFollower(new MatchSettings());
        return [.. places.Select(p => follower.TryFollow(before, now, p, (0, 0), Levels - 1, 0, rough: false, out var m) ? new PointPx(m.Dx, m.Dy) : (PointPx?)null)];
    }

    private static List<PointPx?> FollowWithOpenCv(Frame first, Frame second, List<PointPx> places)
    {
        try
        {
            using var before = Grey(first);
            using var now = Grey(second);
            // OpenCV counts from pixel centres.
            var from = places.Select(p => new Point2f((float)(p.X - 0.5), (float)(p.Y - 0.5))).ToArray();
            var to = (Point2f[])from.Clone();
            Cv2.CalcOpticalFlowPyrLK(before, now, from, ref to, out var found, out _, new Size(17, 17), Levels - 1,
                new TermCriteria(CriteriaTypes.Count | CriteriaTypes.Eps, 30, 0.005));
            return [.. from.Select((p, i) => found[i] == 1 ? new PointPx(to[i].X - p.X, to[i].Y - p.Y) : (PointPx?)null)];
        }
        catch (Exception e) when (e is DllNotFoundException or TypeInitializationException)
        {
            Assert.Skip($"OpenCV's native library does not load here (on Debian it needs libgtk-3-0): {e.Message}");
            throw;
        }
    }

    private static Mat Grey(Frame frame)
    {
        var grey = new Mat(frame.HeightPx, frame.WidthPx, MatType.CV_8UC1);
        for (var y = 0; y < frame.HeightPx; y++)
        {
            for (var x = 0; x < frame.WidthPx; x++) grey.Set(y, x, frame.Rgb[((y * frame.WidthPx) + x) * 3]);
        }

        return grey;
    }
}
