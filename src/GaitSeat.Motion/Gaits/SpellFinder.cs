using GaitSeat.Model;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Gaits;

/// <summary>From the windows of a segment to its spells.</summary>
internal sealed class SpellFinder(GaitSettings settings)
{
    private readonly GaitEvidence _evidence = new(settings);

    public List<RawSpell> Find(SegmentSignals signals)
    {
        var windows = GaitWindows.Of(signals.Grid.StartSeconds, signals.Grid.EndSeconds, settings);
        var read = windows.ConvertAll(w => Read(signals, w.From, w.To));
        var evidence = read.ConvertAll(_evidence.Of);
        var path = GaitPath.Best(evidence, settings.SwitchCost);
        Settle(path, windows);
        var spells = new List<RawSpell>();
        for (var from = 0; from < path.Length;)
        {
            var to = from;
            while (to < path.Length && path[to] == path[from]) to++;
            var start = from == 0 ? signals.Grid.StartSeconds : Border(windows, from);
            var end = to == path.Length ? signals.Grid.EndSeconds : Border(windows, to);
            spells.Add(Spell((Gait)path[from], start, end, read[from..to], evidence[from..to]));
            from = to;
        }

        return spells;
    }

    private WindowEvidence? Read(SegmentSignals signals, double from, double to)
    {
        var more = Math.Max(0, settings.SeatWindowSeconds - (to - from)) / 2;
        return WindowReader.Read(signals, from, to, Math.Max(signals.Grid.StartSeconds, from - more), Math.Min(signals.Grid.EndSeconds, to + more));
    }

    /// <summary>Spells change half way between the centres of two windows.</summary>
    private static double Border(List<(double From, double To)> windows, int second) =>
        (windows[second - 1].From + windows[second].From + windows[second - 1].To + windows[second].To) / 4;

    /// <summary>Runs shorter than a spell may be take their neighbours' gait where both agree, and are unknown otherwise. A segment of one run stays.</summary>
    private void Settle(int[] path, List<(double From, double To)> windows)
    {
        for (var from = 0; from < path.Length;)
        {
            var to = from;
            while (to < path.Length && path[to] == path[from]) to++;
            var start = from == 0 ? windows[0].From : Border(windows, from);
            var end = to == path.Length ? windows[^1].To : Border(windows, to);
            if (end - start < settings.MinSpellSeconds && !(from == 0 && to == path.Length))
            {
                var agree = from > 0 && to < path.Length && path[from - 1] == path[to];
                Array.Fill(path, agree ? path[to] : (int)Gait.Unknown, from, to - from);
            }

            from = to;
        }
    }

    private static RawSpell Spell(Gait gait, double start, double end, List<WindowEvidence?> read, List<double[]> evidence)
    {
        var hz = Robust.Median([.. read.Select(w => w?.BounceHz ?? double.NaN)]);
        var amplitude = Robust.Median([.. read.Select(w => w?.BouncePct ?? double.NaN)]);
        var confidence = evidence.Average(e => e[(int)gait] / e.Sum());
        var moves = gait is not (Gait.Unknown or Gait.Halt);
        return new(gait, start, end, confidence, moves ? hz : double.NaN, amplitude);
    }
}
