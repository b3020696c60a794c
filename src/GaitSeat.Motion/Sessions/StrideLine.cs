namespace GaitSeat.Motion.Sessions;

/// <summary>Strides of one side in order: when, in which clip, and how much each counts.</summary>
internal sealed class StrideLine
{
    private readonly double[] _end;

    /// <param name="strides">Ordered by clip, then by time.</param>
    /// <param name="share">Share of a stride's error that the strides of a clip have in common, 0..1: a clip of many strides counts little more than one of few.</param>
    public StrideLine(IReadOnlyList<SessionStride> strides, double share)
    {
        Clip = [.. strides.Select(s => s.Clip)];
        Start = [.. strides.Select(s => s.Stride.StartSeconds)];
        _end = [.. strides.Select(s => s.Stride.EndSeconds)];
        var counts = strides.CountBy(s => s.Clip).ToDictionary();
        Weight = [.. Clip.Select(c => 1 / (1 + (counts[c] - 1) * share))];
    }

    public int Count => Clip.Length;

    public int[] Clip { get; }

    public double[] Start { get; }

    public double[] Weight { get; }

    public bool SameClip(int i) => i > 0 && Clip[i] == Clip[i - 1];

    /// <summary>Whether there is time enough before stride i to change the leathers.</summary>
    public bool Pauses(int i, double seconds) => !SameClip(i) || Start[i] - _end[i - 1] >= seconds;

    /// <summary>Whether stride i follows on the one before without a pause of half a stride.</summary>
    public bool Touches(int i) => SameClip(i) && Start[i] - _end[i - 1] < (_end[i - 1] - Start[i - 1]) / 2;

    /// <summary>How much of the wandering error is still there from the stride before, 0..1.</summary>
    public double Kept(int i, double slowSeconds) => SameClip(i) ? Math.Exp(-(Start[i] - Start[i - 1]) / slowSeconds) : 0;
}
