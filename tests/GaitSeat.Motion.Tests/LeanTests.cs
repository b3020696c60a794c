using GaitSeat.Model;
using GaitSeat.Motion.Tests.Made;

namespace GaitSeat.Motion.Tests;

/// <summary>A camera held askew leans every angle; the way over level ground tells by how much.</summary>
public sealed class LeanTests
{
    private static readonly MotionSettings Quick = new() { Uncertainty = new() { Draws = 8 } };
    private static readonly MadeRider Rider = new();

    [Theory]
    [InlineData(3, Facing.Right)]
    [InlineData(-4, Facing.Right)]
    [InlineData(3, Facing.Left)]
    public void LeaningCamera_LeavesTheAnglesAlone(double leanDeg, Facing facing)
    {
        var upright = new MadeCamera { Facing = facing }.Film(Rider);

        Assert.InRange(Math.Abs(Thigh(Leaning(upright, leanDeg), Quick) - Thigh(upright, Quick)), 0, 0.3);
        Assert.InRange(Math.Abs(Thigh(Leaning(upright, leanDeg), Quick with { Segment = new() { MaxRollDeg = 0 } }) - Thigh(upright, Quick)), 2.5, 5);
    }

    [Fact]
    public void SteepGround_IsNotTakenForALean()
    {
        var slope = new MadeCamera().Film(Rider);

        Assert.InRange(Math.Abs(Thigh(Leaning(slope, 10), Quick) - Thigh(slope, Quick)), 8, 12);
    }

    private static double Thigh(Sightings film, MotionSettings settings) =>
        MotionAnalysis.Analyse(film, BodyLengths.Unknown, settings).Strides.Average(s => s.Measures[StrideMeasure.ThighAngleSit].Value);

    private static Sightings Leaning(Sightings film, double deg)
    {
        var (s, c) = Math.SinCos(double.DegreesToRadians(deg));
        (double[] X, double[] Y) Turned(double[] x, double[] y, double x0, double y0) =>
            ([.. x.Zip(y, (a, b) => x0 + c * (a - x0) - s * (b - y0))], [.. x.Zip(y, (a, b) => y0 + s * (a - x0) + c * (b - y0))]);
        PatchMotion Patch(PatchMotion p)
        {
            var (x, y) = Turned(p.XPx, p.YPx, 0, 0);
            return p with { XPx = x, YPx = y };
        }

        return film with
        {
            Points = [.. film.Points.Select(p =>
            {
                var (x, y) = Turned(p.XPx, p.YPx, film.WidthPx / 2.0, film.HeightPx / 2.0);
                return new PointTrack(x, y, p.Confidence, p.SpreadPx);
            })],
            Trunk = Patch(film.Trunk),
            Surroundings = Patch(film.Surroundings),
        };
    }
}
