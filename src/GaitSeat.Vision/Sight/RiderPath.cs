using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Where one rider and the horse are through a clip, at the times of the scouting looks, smoothed.</summary>
public sealed record RiderPath
{
    /// <summary>Times of the looks, s, increasing.</summary>
    public required double[] TimeSeconds { get; init; }

    /// <summary>Rider's box at each look, smoothed, px; null where there is no rider in view.</summary>
    public required BoxPx?[] Rider { get; init; }

    /// <summary>Horse's box at each look, smoothed, px; where it was missed on a rider in view it is carried over from its usual place under the rider.</summary>
    public required BoxPx?[] Horse { get; init; }

    public required int WidthPx { get; init; }

    public required int HeightPx { get; init; }

    /// <summary>Stretches with the rider in view.</summary>
    public required IReadOnlyList<TimeSpanSeconds> Spans { get; init; }

    /// <summary>Things a person should know, as stable words: <c>two_riders</c>.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Why there is no rider: <c>no_frames</c>, <c>no_rider</c>, <c>no_horse</c>; null where there is one.</summary>
    public string? MissingReason { get; init; }

    /// <summary>Share of all looks in which the rider's own horse was seen, 0..1.</summary>
    public required double HorseSeenShare { get; init; }

    /// <summary>Share of all looks in which the rider was seen, 0..1.</summary>
    public required double RiderSeenShare { get; init; }

    /// <summary>Every person seen who is not the rider, surely or faintly; a false one counts too.</summary>
    public IReadOnlyList<OtherPerson> Others { get; init; } = [];

    /// <summary>Boxes that hold the other people at a time, inside and outside <see cref="Spans"/>, px; two for each where they may have moved.</summary>
    public IReadOnlyList<BoxPx> OthersAt(double timeSeconds) => [.. Others.SelectMany(o => o.At(timeSeconds))];

    /// <summary>Rider's box at any time; null outside <see cref="Spans"/>.</summary>
    public BoxPx? RiderAt(double timeSeconds) => At(Rider, timeSeconds);

    /// <summary>Horse's box at any time; null outside <see cref="Spans"/>.</summary>
    public BoxPx? HorseAt(double timeSeconds) => At(Horse, timeSeconds);

    private BoxPx? At(BoxPx?[] boxes, double time)
    {
        if (!Spans.Any(s => s.Contains(time))) return null;
        var next = Array.BinarySearch(TimeSeconds, time);
        if (next >= 0 && boxes[next] is { } exact) return exact;
        if (next < 0) next = ~next;
        int before = Seek(boxes, next - 1, -1), after = Seek(boxes, next, +1);
        if (before < 0 && after < 0) return null;
        if (before < 0) return Carried(boxes, after, +1, time);
        if (after < 0 || !SameSpan(before, after)) return Nearest(boxes, before, after, time);
        return Blend(boxes, before, after, time);
    }

    private bool SameSpan(int a, int b) => Spans.Any(s => s.Contains(TimeSeconds[a]) && s.Contains(TimeSeconds[b]));

    private BoxPx? Nearest(BoxPx?[] boxes, int before, int after, double time)
    {
        var takeAfter = after >= 0 && Spans.Any(s => s.Contains(time) && s.Contains(TimeSeconds[after]));
        return takeAfter ? Carried(boxes, after, +1, time) : Carried(boxes, before, -1, time);
    }

    // Past the end of a track the last two looks are carried on: a rider crossing a standing picture is a box further by then.
    private BoxPx? Carried(BoxPx?[] boxes, int end, int inward, double time)
    {
        var other = end + inward;
        var straight = other >= 0 && other < boxes.Length && boxes[other] is not null && SameSpan(end, other);
        return straight ? Blend(boxes, end, other, time) : boxes[end];
    }

    private BoxPx Blend(BoxPx?[] boxes, int a, int b, double time)
    {
        var share = (time - TimeSeconds[a]) / (TimeSeconds[b] - TimeSeconds[a]);
        BoxPx p = boxes[a]!.Value, q = boxes[b]!.Value;
        double Mix(double from, double to) => from + share * (to - from);
        return new(Mix(p.X, q.X), Mix(p.Y, q.Y), Math.Max(1, Mix(p.Width, q.Width)), Math.Max(1, Mix(p.Height, q.Height)));
    }

    private static int Seek(BoxPx?[] boxes, int from, int step)
    {
        for (var i = from; i >= 0 && i < boxes.Length; i += step)
            if (boxes[i] is not null) return i;
        return -1;
    }
}
