namespace GaitSeat.Motion.Sessions;

/// <summary>
/// What a split before stride k makes of the three kinds of error, for every k: the variance of (mean after less mean before) is
/// scatter² · <see cref="Scatter"/> + slow² · <see cref="Slow"/> + clip² · <see cref="ClipSteady"/>. For a split within a clip the steady error of that clip falls out.
/// </summary>
internal sealed class SplitFactors
{
    private SplitFactors(int count) => (Scatter, Slow, ClipSteady) = (new double[count], new double[count], new double[count]);

    /// <summary>By k, 1 to count - 1; NaN elsewhere is never read.</summary>
    public double[] Scatter { get; }

    public double[] Slow { get; }

    public double[] ClipSteady { get; }

    public static SplitFactors Of(StrideLine line, double slowSeconds)
    {
        var n = line.Count;
        var factors = new SplitFactors(n);
        double[] weight = Sums(line.Weight), squares = Sums([.. line.Weight.Select(w => w * w)]);
        double[] slowBefore = SlowSums(line, slowSeconds, forward: true), slowAfter = SlowSums(line, slowSeconds, forward: false);
        double[] clipsBefore = ClipSums(line, forward: true), clipsAfter = ClipSums(line, forward: false);
        for (var k = 1; k < n; k++)
        {
            double before = weight[k], after = weight[n] - weight[k];
            factors.Scatter[k] = squares[k] / (before * before) + (squares[n] - squares[k]) / (after * after);
            factors.Slow[k] = Split(slowBefore[k], slowAfter[k], slowBefore[n], before, after);
            factors.ClipSteady[k] = Split(clipsBefore[k], clipsAfter[k], clipsBefore[n], before, after);
        }

        return factors;
    }

    // Of the quadratic form over all strides, what is neither within the one part nor within the other lies twice between them.
    private static double Split(double withinBefore, double withinAfter, double all, double before, double after) => Math.Max(
        0, withinBefore / (before * before) + withinAfter / (after * after) - (all - withinBefore - withinAfter) / (before * after));

    private static double[] Sums(double[] values)
    {
        var sums = new double[values.Length + 1];
        for (var i = 0; i < values.Length; i++) sums[i + 1] = sums[i] + values[i];
        return sums;
    }

    /// <summary>w' K w over the strides up to k (or from k), K = exp(-lag / slow) within a clip.</summary>
    private static double[] SlowSums(StrideLine line, double slowSeconds, bool forward) =>
        Grow(line, forward, (i, carried, last) => (carried + last) * line.Kept(i, slowSeconds));

    /// <summary>The same with K = 1 within a clip.</summary>
    private static double[] ClipSums(StrideLine line, bool forward) =>
        Grow(line, forward, (i, carried, last) => line.SameClip(i) ? carried + last : 0);

    private static double[] Grow(StrideLine line, bool forward, Func<int, double, double, double> carry)
    {
        var n = line.Count;
        var sums = new double[n + 1];
        double carried = 0, last = 0;
        for (var step = 0; step < n; step++)
        {
            var i = forward ? step : n - 1 - step;
            var w = line.Weight[i];
            // What lies between a stride and its neighbour is told by the later one of the two.
            carried = step == 0 ? 0 : carry(forward ? i : i + 1, carried, last);
            var added = w * w + 2 * w * carried;
            if (forward) sums[i + 1] = sums[i] + added;
            else sums[i] = sums[i + 1] + added;
            last = w;
        }

        return sums;
    }
}
