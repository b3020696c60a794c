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
    /// Where rising trot borders on frames that were not followed, a stride was cut there; between two spells on one rein less than two strides apart it is one
    /// stride, seen from both sides.
    /// </summary>
    private void CutByGaps(List<SegmentSignals> segments)
    {
        foreach (var signals in segments)
        {
            var (start, end) = (signals.Grid.StartSeconds, signals.Grid.EndSeconds);
            if (signals.Segment.EndsAtGap && Rising(s => s.EndSeconds == end) is { } last)
                Cut(_strides.LastOrDefault(s => s.SpellNumber == last.Number)?.EndSeconds ?? end);
            if (signals.Segment.StartsAtGap && Rising(s => s.StartSeconds == start) is { } first && !SeenFromBefore(first))
                Cut(start);
        }

        Spell? Rising(Predicate<Spell> at) => _spells.Find(s => s.Gait == Gait.RisingTrot && at(s));
        bool SeenFromBefore(Spell spell) => _spells.Exists(b =>
            b.Gait == Gait.RisingTrot && b.Facing == spell.Facing && b.EndSeconds <= spell.StartSeconds && spell.StartSeconds - b.EndSeconds <= 2 * 2 / b.BounceHz);
        void Cut(double seconds) => _leftOut.Add(new(LeftOutScope.Stride, "cut_by_gap", 1, "The rider was not followed through the whole stride.", seconds));
    }

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
