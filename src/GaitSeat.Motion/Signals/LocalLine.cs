namespace GaitSeat.Motion.Signals;

/// <summary>A straight line laid through scattered values around an instant; near ones count more, wild ones not.</summary>
/// <param name="Level">At the instant.</param>
/// <param name="Slope">A second.</param>
/// <param name="SlopeSe">Its standard error.</param>
internal readonly record struct LocalLine(double Level, double Slope, double SlopeSe)
{
    private const double OutlierSigmas = 3;
    private const int Rounds = 3;
    private const int LeastValues = 10;

    /// <param name="seconds">Increasing.</param>
    /// <param name="values">NaN where missing.</param>
    /// <param name="at">The instant, s.</param>
    /// <param name="halfWidthSeconds">Values farther away do not count; the weight falls as a parabola.</param>
    /// <param name="togetherSeconds">How long errors hang together.</param>
    /// <returns>Null where the values do not fix a line.</returns>
    public static LocalLine? Through(ReadOnlySpan<double> seconds, ReadOnlySpan<double> values, double at, double halfWidthSeconds, double togetherSeconds)
    {
        var window = Instants.Near(seconds, at, halfWidthSeconds);
        var near = (Seconds: seconds[window].ToArray(), Values: values[window].ToArray());
        if (near.Seconds.Length < LeastValues) return null;
        var independentShare = Math.Min(1, EvenGrid.MedianStep(near.Seconds) / togetherSeconds);
        LocalLine? line = null;
        for (var round = 0; round < Rounds; round++)
        {
            var limit = double.PositiveInfinity;
            if (line is { } l) limit = Math.Max(1e-9, OutlierSigmas * Robust.Sigma(Array.ConvertAll(Residuals(near, l, at), Math.Abs), 0));
            line = Fit(near, at, halfWidthSeconds, line, limit, independentShare);
            if (line is null) return null;
        }

        return line;
    }

    private static double[] Residuals((double[] Seconds, double[] Values) near, LocalLine line, double at) =>
        [.. near.Seconds.Zip(near.Values, (t, v) => v - line.Level - line.Slope * (t - at))];

    private static LocalLine? Fit(
        (double[] Seconds, double[] Values) near, double at, double halfWidth, LocalLine? before, double limit, double independentShare)
    {
        var residuals = before is { } line ? Residuals(near, line, at) : new double[near.Values.Length];
        var squares = new LeastSquares(2);
        double weights = 0, spread = 0;
        for (var i = 0; i < near.Values.Length; i++)
        {
            if (!double.IsFinite(near.Values[i]) || !(Math.Abs(residuals[i]) <= limit)) continue;
            var (u, away) = ((near.Seconds[i] - at) / halfWidth, near.Seconds[i] - at);
            var weight = 1 - u * u;
            squares.Add([weight, weight * away], weight * near.Values[i]);
            weights += weight * weight;
            spread += weight * weight * away * away;
        }

        if (squares.Count < LeastValues || squares.Solve() is not { } fit) return null;
        var independent = Math.Max(2, squares.Count * independentShare);
        return new(fit.Solution[0], fit.Solution[1], Math.Sqrt(fit.ResidualSumSquares / weights / spread * squares.Count / independent));
    }
}
