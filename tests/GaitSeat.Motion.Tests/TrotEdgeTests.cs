using GaitSeat.Model;
using GaitSeat.Motion.Gaits;
using GaitSeat.Motion.Strides;
using GaitSeat.Motion.Tests.Made;
using GaitSeat.Motion.Tracks;
using GaitSeat.Motion.View;

namespace GaitSeat.Motion.Tests;

public sealed class TrotEdgeTests
{
    private static readonly MotionSettings Settings = new();

    [Fact]
    public void StridesThatGoOn_AreFoundBeyondTheBorderAndNoFurtherThanTold()
    {
        var rider = new MadeRider();
        var sits = rider.Sits(0, 8).ToArray();

        var strides = new StrideCutter(Settings.Stride).Cut(Signals(rider, 8), Trot(rider, 2.5, 5.5), 1.5, 6.5);

        // Sits at 0.52, 1.26, 2.00 .. 6.07, 6.81 s: from the first after 1.5 to the last before 6.5.
        Assert.Equal(sits.Count(s => s is > 1.5 and < 6.5) - 1, strides.Count);
        Assert.All(strides, s => Assert.InRange(sits.Min(t => Math.Abs(t - s.Start.Seconds)), 0, 0.02));
    }

    [Fact]
    public void WhereTheRiderStaysDown_NoStrideIsAdded()
    {
        // Rising up to 4 s, in the saddle from then on.
        var rider = new MadeRider();
        var down = rider with { Gait = Gait.SittingTrot };
        MadeCamera camera = new() { Seconds = 8 };
        Sightings rises = camera.Film(rider), sitsDown = camera.Film(down);
        var lastSit = rider.Sits(0, 4).Last();
        foreach (var point in Enum.GetValues<BodyPoint>())
            for (var i = 0; i < rises.Count; i++)
                if (rises.TimeSeconds[i] > lastSit) (rises[point].XPx[i], rises[point].YPx[i]) = (sitsDown[point].XPx[i], sitsDown[point].YPx[i]);

        var strides = new StrideCutter(Settings.Stride).Cut(Signals(rises), Trot(rider, 0, 3), 0, 5);

        Assert.NotEmpty(strides);
        Assert.All(strides, s => Assert.True(s.End.Seconds < lastSit + 0.1, $"a stride ends at {s.End.Seconds:0.00} s, the last sit is at {lastSit:0.00} s"));
    }

    [Fact]
    public void NeighbourGivesWhatTheTrotTakes_AndIsGoneWhereNothingIsLeft()
    {
        RawSpell[] spells =
        [
            new(Gait.Walk, 0, 2, 1, 1.8, 2), new(Gait.RisingTrot, 2, 5, 1, 2.7, 4), new(Gait.Unknown, 5, 5.5, 1, double.NaN, 3),
        ];

        var settled = TrotEdges.Settle(spells, 1.2, (_, from, to) =>
        {
            Assert.Equal((0.8, 5.5), (from, to));
            return [new(new(1.5, 0.01), 1.9, new(2.2, 0.01), 0.1, null), new(new(4.8, 0.01), 5.1, new(5.45, 0.01), 0.1, null)];
        });

        Assert.Equal([(Gait.Walk, 0.0, 1.5), (Gait.RisingTrot, 1.5, 5.45)], settled.Select(s => (s.Spell.Gait, s.Spell.StartSeconds, s.Spell.EndSeconds)));
        Assert.Equal([0, 2], settled.Select(s => s.Strides.Count));
    }

    private static RawSpell Trot(MadeRider rider, double from, double to) => new(Gait.RisingTrot, from, to, 1, 2 * rider.StrideHz, 4);

    private static SegmentSignals Signals(MadeRider rider, double seconds) => Signals(new MadeCamera { Seconds = seconds }.Film(rider));

    private static SegmentSignals Signals(Sightings film)
    {
        var facing = FacingFill.Steady(film);
        var course = TurnCourse.Of(film, facing, Settings.View);
        var verdict = FrameVerdict.Judge(film, course, Settings.Segment);
        var segment = Assert.Single(Segmenter.Cut(film, verdict, facing, Settings.Segment, []));
        return new SegmentBuilder(film, verdict, course, Settings).Build(segment)!.Value.Signals;
    }
}
