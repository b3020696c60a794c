using GaitSeat.Footage.Pictures;
using GaitSeat.Model;
using GaitSeat.Studio;

namespace GaitSeat.Pipeline.Tests.Privacy;

/// <summary>
/// How much of a rider's true face is blurred. The face is the studio's: brow (0.03 m over the ear's opening) to chin (0.108 m under it), and 0.125 m from the ear forward; turned out of
/// the picture plane it also shows 0.09 m to either side. Points of a 7 x 7 grid over it that lie in the picture are looked up; a frame is covered where all of them are in blurred boxes.
/// </summary>
/// <param name="Frames">Frames with some of the face in the picture.</param>
/// <param name="Covered">Those with every point of it blurred.</param>
/// <param name="WholePicture">Those in which nothing was known, and the whole picture is blurred.</param>
/// <param name="MostlyCovered">Those with at least nine points of ten.</param>
internal sealed record HeadCover(int Frames, int Covered, int MostlyCovered, int WholePicture)
{
    private const double BrowM = 0.030, ChinM = 0.108, NoseM = 0.125, SideM = 0.09;
    private const int Grid = 7;

    public double Share => Frames == 0 ? double.NaN : (double)Covered / Frames;

    public static HeadCover operator +(HeadCover a, HeadCover b) => new(a.Frames + b.Frames, a.Covered + b.Covered, a.MostlyCovered + b.MostlyCovered, a.WholePicture + b.WholePicture);

    public static HeadCover Of(ClipTruth truth, Sightings sightings, ClipMotion motion, Func<double, IReadOnlyList<BoxPx>> othersAt, List<string>? misses = null)
    {
        var scenes = new SceneSource(sightings, motion, othersAt, sightings.WidthPx, sightings.HeightPx);
        var zoom = (double)sightings.WidthPx / truth.Width;
        var sum = new HeadCover(0, 0, 0, 0);
        foreach (var row in truth.FrameRows)
        {
            var face = Face(row, truth.FacingTerm, zoom).Where(p => p.X >= 0 && p.Y >= 0 && p.X < sightings.WidthPx && p.Y < sightings.HeightPx).ToArray();
            if (face.Length == 0) continue;
            var boxes = HeadBoxes.Of(scenes.At(row.TimeSeconds), sightings.WidthPx, sightings.HeightPx, new());
            var hit = face.Count(p => boxes.Any(b => b.Contains(p)));
            var whole = boxes.Any(b => b.Width >= sightings.WidthPx && b.Height >= sightings.HeightPx);
            if (hit < face.Length) misses?.Add(WordsOf(scenes.At(row.TimeSeconds), row, hit, face.Length));
            sum += new HeadCover(1, hit == face.Length ? 1 : 0, hit >= 0.9 * face.Length ? 1 : 0, whole ? 1 : 0);
        }

        return sum;
    }

    private static string WordsOf(OverlayScene scene, FrameTruth row, int hit, int points)
    {
        bool Has(BodyPoint point) => scene.TraceIndex >= 0 && !scene.Trace.Points[(int)point][scene.TraceIndex].IsMissing;
        var head = Has(BodyPoint.Ear) || Has(BodyPoint.Nose);
        return $"box {(scene.Rider is null ? "unknown" : "known")}, frame {(scene.TraceIndex < 0 ? "not followed" : "followed")}, head {(head ? "seen" : "not seen")}, rider {(row.RiderFullInFrame ? "whole" : "cut")}, {(2 * hit > points ? "more" : "less")} than half";
    }

    /// <summary>Points of the face in a frame, px of a picture <paramref name="zoom"/> times the clip's size.</summary>
    public static IEnumerable<PointPx> Face(FrameTruth row, Facing facing, double zoom)
    {
        var (ear, top) = (row["ear"].Px, row["helmet_top"].Px);
        var length = ear.DistanceTo(top);
        var (upX, upY) = ((top.X - ear.X) / length, (top.Y - ear.Y) / length);
        var right = (row.Facing ?? facing) == Facing.Right;
        // A quarter turn from up: towards the face.
        var (frontX, frontY) = right ? (-upY, upX) : (upY, -upX);
        var yaw = row.YawDeg * Math.PI / 180;
        var (ahead, side) = (NoseM * Math.Abs(Math.Cos(yaw)), SideM * Math.Abs(Math.Sin(yaw)));
        for (var i = 0; i < Grid; i++)
        {
            for (var j = 0; j < Grid; j++)
            {
                var up = (BrowM - (BrowM + ChinM) * i / (Grid - 1)) * row.PxPerM;
                var front = (-side + (ahead + 2 * side) * j / (Grid - 1)) * row.PxPerM;
                yield return new((ear.X + upX * up + frontX * front) * zoom, (ear.Y + upY * up + frontY * front) * zoom);
            }
        }
    }
}
