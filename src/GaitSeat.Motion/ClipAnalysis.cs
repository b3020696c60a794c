using GaitSeat.Model;
using GaitSeat.Motion.Gaits;
using GaitSeat.Motion.Measures;
using GaitSeat.Motion.Scale;
using GaitSeat.Motion.Sessions;
using GaitSeat.Motion.Strides;
using GaitSeat.Motion.Tracks;
using GaitSeat.Motion.View;

namespace GaitSeat.Motion;

/// <summary>The steps of one clip in their order, and what they leave behind.</summary>
internal sealed class ClipAnalysis(Sightings sightings, BodyLengths lengths, MotionSettings settings)
{
    private readonly List<Spell> _spells = [];
    private readonly List<Stride> _strides = [];
    private readonly List<LeftOut> _leftOut = [];

    public ClipMotion Run()
    {
        var trace = new TraceWriter(sightings, new(settings.Scale));
        var facing = FacingFill.Steady(sightings);
        var course = TurnCourse.Of(sightings, facing, settings.View);
        var verdict = FrameVerdict.Judge(sightings, course, settings.Segment);
        var segments = Segmenter.Cut(sightings, verdict, facing, settings.Segment, _leftOut);
        var builder = new SegmentBuilder(sightings, verdict, course, settings);
        var built = new List<(SegmentSignals Signals, BodySize Size)>();
        foreach (var segment in segments)
        {
            if (builder.Build(segment) is { } b) built.Add(b);
            else _leftOut.Add(new(LeftOutScope.Frame, "no_leg_seen", segment.Count, "Hip, knee and ankle were never seen together.", sightings.TimeSeconds[segment.First]));
        }

        var scale = LegScale.From(lengths, built.ConvertAll(b => b.Size), settings);
        foreach (var (signals, _) in built) Segment(signals, scale, trace);
        CutByGaps(built.ConvertAll(b => b.Signals));
        return new(_spells, _strides, _leftOut, trace.Finish()) { Changes = ChangeFinder.InClip(_strides, settings.Session) };
    }

    /// <summary>
    /// Where rising trot borders on frames that were not followed, a stride was cut there. Where it goes on beyond them on the same rein within two strides, the rhythm tells how many:
    /// one that is seen from both sides, or two where a sit fell into the gap.
    /// </summary>
    private void CutByGaps(List<SegmentSignals> segments)
    {
        foreach (var signals in segments)
        {
            var (start, end) = (signals.Grid.StartSeconds, signals.Grid.EndSeconds);
            if (signals.Segment.EndsAtGap && Rising(s => s.EndSeconds == end) is { } last)
            {
                var from = _strides.LastOrDefault(s => s.SpellNumber == last.Number)?.EndSeconds ?? end - StrideSeconds(last);
                if (_spells.Find(next => GoesOn(last, next)) is { } beyond) CutBetween(last, from, beyond);
                else Cut(from);
            }

            if (signals.Segment.StartsAtGap && Rising(s => s.StartSeconds == start) is { } first && !_spells.Exists(before => GoesOn(before, first)))
                Cut(start);
        }

        Spell? Rising(Predicate<Spell> at) => _spells.Find(s => s.Gait == Gait.RisingTrot && at(s));
    }

    private void CutBetween(Spell last, double from, Spell beyond)
    {
        var to = _strides.Find(s => s.SpellNumber == beyond.Number)?.StartSeconds ?? beyond.StartSeconds + StrideSeconds(beyond);
        var count = Math.Max(1, (int)Math.Round((to - from) / StrideSeconds(last)));
        var each = (to - from) / count;
        for (var k = 0; k < count; k++)
            if (from + (k + 1) * each > last.EndSeconds && from + k * each < beyond.StartSeconds) Cut(from + k * each);
    }

    private void Cut(double seconds) => _leftOut.Add(new(LeftOutScope.Stride, "cut_by_gap", 1, "The rider was not followed through the whole stride.", seconds));

    private static bool GoesOn(Spell spell, Spell next) =>
        spell.Gait == Gait.RisingTrot && next.Gait == Gait.RisingTrot && next.Facing == spell.Facing
        && next.StartSeconds >= spell.EndSeconds && next.StartSeconds - spell.EndSeconds <= 2 * StrideSeconds(spell);

    /// <summary>Two bounces of the trunk are one stride.</summary>
    private static double StrideSeconds(Spell trot) => 2 / trot.BounceHz;

    private void Segment(SegmentSignals signals, LegScale scale, TraceWriter trace)
    {
        trace.Signals(signals);
        var cutter = new StrideCutter(settings.Stride);
        var measurer = new StrideMeasurer(sightings, signals, scale, settings);
        var spells = TrotEdges.Settle(new SpellFinder(settings.Gait).Find(signals), settings.Gait.WindowSeconds / 2, (spell, from, to) => cutter.Cut(signals, spell, from, to));
        foreach (var (raw, cut) in spells)
        {
            var number = _spells.Count + 1;
            Strides(signals, raw, number, cut, scale, measurer);
            _spells.Add(SpellSummary.Of(number, raw, signals, cut, scale, settings));
            trace.Sits(signals, raw, cut);
        }
    }

    private void Strides(SegmentSignals signals, RawSpell raw, int spell, List<StrideCandidate> cut, LegScale scale, StrideMeasurer measurer)
    {
        for (var k = 0; k < cut.Count; k++)
        {
            var stride = cut[k];
            if (stride.DropReason is { } reason)
            {
                _leftOut.Add(new(LeftOutScope.Stride, reason, 1, DropDetail.Of(reason, settings), stride.Start.Seconds));
                continue;
            }

            var (measures, top) = measurer.Measure(stride, spell * 10007 + k);
            var quality = StrideQuality.Of(signals, stride, measures, scale, settings);
            var confidence = StrideQuality.Confidence(stride, raw.Confidence);
            _strides.Add(new(spell, k + 1, signals.Segment.Facing, stride.Start.Seconds, top, stride.End.Seconds, confidence, quality, measures));
        }
    }
}
