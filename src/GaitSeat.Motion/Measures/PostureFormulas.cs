using GaitSeat.Model;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Measures;

/// <summary>Angles and offsets at the sit and at the top: means over the short span of the definition. Offsets in legs.</summary>
internal static class PostureFormulas
{
    private const int Places = 9;

    public static void Fill(StrideData data, StrideSpan span, StrideSettings settings, Span<double> values)
    {
        double Mean(double centre, Func<double, double> at)
        {
            double sum = 0;
            var half = settings.AngleHalfSpan * span.Length;
            for (var k = 0; k < Places; k++) sum += at(centre + half * (2.0 * k / (Places - 1) - 1));
            return sum / Places;
        }

        double Read(Channel channel, double position) => Sample.At(data[channel], position);
        double Ahead(Channel of, Channel from, double p) => Read(of, p) - Read(from, p);
        double Tread(Channel heel, Channel toe, double p) => Read(heel, p) + settings.TreadOnFoot * Ahead(toe, heel, p);
        double Thigh(double p) => Angles.AgainstDown(Ahead(Channel.KneeForward, Channel.HipForward, p), Ahead(Channel.KneeUp, Channel.HipUp, p));
        double Shank(double p) => Angles.AgainstDown(Ahead(Channel.AnkleForward, Channel.KneeForward, p), Ahead(Channel.AnkleUp, Channel.KneeUp, p));
        double Lean(double p) => Angles.AgainstUp(Ahead(Channel.ShoulderForward, Channel.HipForward, p), Ahead(Channel.ShoulderUp, Channel.HipUp, p));
        double Foot(double p) => Angles.AgainstHorizontal(Ahead(Channel.ToeForward, Channel.HeelForward, p), Ahead(Channel.ToeUp, Channel.HeelUp, p));
        double Knee(double p) => Angles.Between(
            Ahead(Channel.HipForward, Channel.KneeForward, p), Ahead(Channel.HipUp, Channel.KneeUp, p),
            Ahead(Channel.AnkleForward, Channel.KneeForward, p), Ahead(Channel.AnkleUp, Channel.KneeUp, p));

        values[(int)StrideMeasure.ThighAngleSit] = Mean(span.Sit, Thigh);
        values[(int)StrideMeasure.ThighAngleTop] = Mean(span.Top, Thigh);
        values[(int)StrideMeasure.ShankAngleSit] = Mean(span.Sit, Shank);
        values[(int)StrideMeasure.KneeAngleSit] = Mean(span.Sit, Knee);
        values[(int)StrideMeasure.KneeAngleTop] = Mean(span.Top, Knee);
        values[(int)StrideMeasure.TrunkLeanSit] = Mean(span.Sit, Lean);
        values[(int)StrideMeasure.TrunkLeanTop] = Mean(span.Top, Lean);
        values[(int)StrideMeasure.FootPitchSit] = Mean(span.Sit, Foot);
        values[(int)StrideMeasure.StirrupDriftOffsetCm] = Mean(span.Sit, p => Tread(Channel.HeelForward, Channel.ToeForward, p) - Read(Channel.HipForward, p));
        values[(int)StrideMeasure.StirrupLengthIndex] = Mean(span.Sit, p => Read(Channel.HipUp, p) - Tread(Channel.HeelUp, Channel.ToeUp, p));
        values[(int)StrideMeasure.EarOffsetCm] = Mean(span.Sit, p => Ahead(Channel.EarForward, Channel.HipForward, p));
        values[(int)StrideMeasure.ShoulderOffsetCm] = Mean(span.Sit, p => Ahead(Channel.ShoulderForward, Channel.HipForward, p));
        values[(int)StrideMeasure.HeelOffsetCm] = Mean(span.Sit, p => Ahead(Channel.HeelForward, Channel.HipForward, p));
    }
}
