using GaitSeat.Model;
using GaitSeat.Motion.Tests.Made;

namespace GaitSeat.Motion.Tests;

/// <summary>Points moved to where a model would put them come back to the joints.</summary>
public sealed class JointOffsetTests
{
    private static readonly MotionSettings Quick = new() { Uncertainty = new() { Draws = 8 } };
    private static readonly MadeRider Rider = new();

    [Theory]
    [InlineData(Facing.Right)]
    [InlineData(Facing.Left)]
    public void OffsetsOfTheSettings_AreTakenOff(Facing facing)
    {
        var exact = new MadeCamera { Facing = facing }.Film(Rider);
        var asModelsPutThem = exact with { PointsAreJoints = false, Points = Displaced(exact, facing, Quick.Joints) };

        var truth = Measures(exact);
        var mended = Measures(asModelsPutThem);
        var blind = Measures(asModelsPutThem with { PointsAreJoints = true });

        foreach (var measure in new[] { StrideMeasure.ThighAngleSit, StrideMeasure.FootPitchSit, StrideMeasure.StirrupDriftOffsetPctLeg })
        {
            Assert.InRange(Math.Abs(mended(measure) - truth(measure)), 0, 0.8);
            Assert.True(Math.Abs(blind(measure) - truth(measure)) > 1.5, $"{measure} does not feel the offsets");
        }
    }

    private static Func<StrideMeasure, double> Measures(Sightings film)
    {
        var strides = MotionAnalysis.Analyse(film, BodyLengths.Unknown, Quick).Strides;
        Assert.NotEmpty(strides);
        return m => strides.Average(s => s.Measures[m].Value);
    }

    private static PointTrack[] Displaced(Sightings film, Facing facing, JointSettings j)
    {
        var leg = 1.7 * (Rider.ThighCm + Rider.ShankCm) / 100;
        var sign = facing == Facing.Left ? -1 : 1;
        var points = film.Points.Select(p => new PointTrack([.. p.XPx], [.. p.YPx], p.Confidence, p.SpreadPx)).ToArray();
        for (var i = 0; i < film.Count; i++)
        {
            PointPx hip = film[BodyPoint.Hip][i], shoulder = film[BodyPoint.Shoulder][i];
            var share = j.HipTowardsShoulderPctLeg * leg / hip.DistanceTo(shoulder);
            Move(BodyPoint.Hip, share * (shoulder.X - hip.X), share * (shoulder.Y - hip.Y));
            Move(BodyPoint.Knee, 0, -j.KneeUpPctLeg * leg);
            // The made rider's ankle is 6 cm behind the tread.
            Move(BodyPoint.Ankle, sign * (1.7 * 6 - j.TreadAheadOfAnklePctLeg * leg), -j.AnkleUpPctLeg * leg);
            Move(BodyPoint.Heel, sign * j.HeelForwardPctLeg * leg, -j.HeelUpPctLeg * leg);
            Move(BodyPoint.Toe, sign * j.ToeForwardPctLeg * leg, -j.ToeUpPctLeg * leg);

            void Move(BodyPoint point, double x, double y)
            {
                points[(int)point].XPx[i] += x;
                points[(int)point].YPx[i] += y;
            }
        }

        return points;
    }
}
