namespace GaitSeat.Faults.Training;

/// <summary>
/// A trainer's raw score as a probability: 1 / (1 + exp(-(Slope·score + Offset))), fitted to scores of spells the trainer had not seen. Targets are
/// drawn in as Platt (1999) does, so that a clean split does not give certainty; Newton steps as in Lin, Lin and Weng (2007). Both from memory.
/// </summary>
public sealed record PlattCalibration(double Slope, double Offset)
{
    private const int Rounds = 100;
    private const double Tolerance = 1e-10;
    private const double Ridge = 1e-12;

    public double Probability(double score) => 1 / (1 + Math.Exp(-(Slope * score + Offset)));

    /// <summary>Needs both answers.</summary>
    public static PlattCalibration Fit(IReadOnlyList<double> scores, IReadOnlyList<bool> isThere)
    {
        ArgumentNullException.ThrowIfNull(scores);
        ArgumentNullException.ThrowIfNull(isThere);
        ArgumentOutOfRangeException.ThrowIfNotEqual(isThere.Count, scores.Count);
        double there = isThere.Count(t => t), not = isThere.Count - there;
        if (there == 0 || not == 0) throw new ArgumentException("Calibration needs spells with the fault and spells without.", nameof(isThere));
        var targets = isThere.Select(t => t ? (there + 1) / (there + 2) : 1 / (not + 2)).ToArray();
        var fit = new PlattCalibration(0, Math.Log((there + 1) / (not + 1)));
        for (var round = 0; round < Rounds; round++)
        {
            var next = Step(fit, scores, targets);
            if (Math.Abs(next.Slope - fit.Slope) + Math.Abs(next.Offset - fit.Offset) < Tolerance) return next;
            fit = next;
        }

        return fit;
    }

    /// <summary>A Newton step, halved until the loss does not grow.</summary>
    private static PlattCalibration Step(PlattCalibration fit, IReadOnlyList<double> scores, double[] targets)
    {
        double g1 = 0, g2 = 0, h11 = Ridge, h12 = 0, h22 = Ridge;
        for (var i = 0; i < targets.Length; i++)
        {
            var p = fit.Probability(scores[i]);
            var (error, weight) = (p - targets[i], p * (1 - p));
            (g1, g2) = (g1 + error * scores[i], g2 + error);
            (h11, h12, h22) = (h11 + weight * scores[i] * scores[i], h12 + weight * scores[i], h22 + weight);
        }

        var det = h11 * h22 - h12 * h12;
        if (!(Math.Abs(det) > 0)) return fit;
        var (slope, offset) = ((h22 * g1 - h12 * g2) / det, (h11 * g2 - h12 * g1) / det);
        var before = fit.Loss(scores, targets);
        for (var step = 1.0; step > Tolerance; step /= 2)
        {
            var next = new PlattCalibration(fit.Slope - step * slope, fit.Offset - step * offset);
            if (next.Loss(scores, targets) <= before) return next;
        }

        return fit;
    }

    /// <summary>Cross-entropy, in the form that does not overflow.</summary>
    private double Loss(IReadOnlyList<double> scores, double[] targets)
    {
        double loss = 0;
        for (var i = 0; i < targets.Length; i++)
        {
            var f = Slope * scores[i] + Offset;
            loss += Math.Max(f, 0) - f * targets[i] + Math.Log(1 + Math.Exp(-Math.Abs(f)));
        }

        return loss;
    }
}
