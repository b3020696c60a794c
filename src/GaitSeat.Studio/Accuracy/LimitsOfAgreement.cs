namespace GaitSeat.Studio.Accuracy;

/// <summary>
/// Bland-Altman limits of agreement where each clip gives several strides and the true value varies: bias ± 1.96 total standard deviations, the total
/// variance being that within clips plus that between them, from a one-way analysis of variance of the differences
/// (Bland and Altman 2007, J Biopharm Stat 17:571, section on multiple observations with a varying true value).
/// </summary>
/// <param name="WithinSd">Standard deviation of the error from stride to stride of one clip.</param>
/// <param name="BetweenSd">Standard deviation of the clips' own mean errors; NaN below two clips.</param>
public readonly record struct LimitsOfAgreement(double Bias, double WithinSd, double BetweenSd)
{
    private const double Z = 1.959964;

    public double Lower => Bias - Z * TotalSd;

    public double Upper => Bias + Z * TotalSd;

    /// <summary>NaN where it cannot be told: fewer than two clips, or one stride in all.</summary>
    public double TotalSd => Math.Sqrt(WithinSd * WithinSd + BetweenSd * BetweenSd);

    /// <param name="errorsByClip">Errors, clip by clip; clips without any do not count.</param>
    public static LimitsOfAgreement Of(IEnumerable<IReadOnlyCollection<double>> errorsByClip)
    {
        ArgumentNullException.ThrowIfNull(errorsByClip);
        var clips = errorsByClip.Where(c => c.Count > 0).ToArray();
        var n = clips.Sum(c => c.Count);
        var bias = n == 0 ? double.NaN : clips.Sum(c => c.Sum()) / n;
        if (clips.Length < 2) return new(bias, double.NaN, double.NaN);

        var withinSquares = clips.Sum(c => c.Average() is var mean ? c.Sum(e => (e - mean) * (e - mean)) : 0);
        var betweenSquares = clips.Sum(c => c.Count * Math.Pow(c.Average() - bias, 2)) / (clips.Length - 1);
        // One stride a clip: nothing repeats, and the spread of the differences is all between clips.
        if (n == clips.Length) return new(bias, 0, Math.Sqrt(betweenSquares));
        var within = withinSquares / (n - clips.Length);
        var strides = (n * (double)n - clips.Sum(c => (double)c.Count * c.Count)) / ((clips.Length - 1.0) * n);
        return new(bias, Math.Sqrt(within), Math.Sqrt(Math.Max(0, (betweenSquares - within) / strides)));
    }
}
