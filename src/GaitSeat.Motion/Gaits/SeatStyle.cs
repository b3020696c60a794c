using MathNet.Numerics;

namespace GaitSeat.Motion.Gaits;

/// <summary>
/// Rising or sitting, by how well each explains the seat motion seen at half the bounce. An amplitude measured with equal errors in its cosine and sine
/// is Rice-distributed about the true one (Rice 1945, Bell Syst Tech J 24:46): noise alone looks like a small rise.
/// </summary>
internal static class SeatStyle
{
    /// <summary>True amplitudes in sitting trot, over the border: half-normal, one standard deviation. Two diagonals differ by some millimetres. No source.</summary>
    private const double SittingSpread = 0.4;

    /// <summary>True amplitudes in rising trot, over the border: each order of size as likely as the other from the border to a rise of 20 cm (closed form: 1.6 % of leg length for 3 cm).</summary>
    private const double LargestRise = 10.6;

    /// <summary>What the points themselves may sway with the horse, over the border. No source.</summary>
    private const double LeastSe = 0.15;

    private const int Steps = 120;

    /// <returns>0..1, with neither more likely beforehand.</returns>
    public static double ChanceOfRising(double risePct, double risePctSe, double borderPct)
    {
        var (seen, se) = (risePct / borderPct, Math.Max(LeastSe, risePctSe / borderPct));
        double rising = 0, sitting = 0, weights = 0;
        for (var i = 0; i < Steps; i++)
        {
            var share = (i + 0.5) / Steps;
            rising += Density(seen, Math.Pow(LargestRise, share), se) / Steps;
            var still = 4 * SittingSpread * share;
            var weight = Math.Exp(-still * still / (2 * SittingSpread * SittingSpread));
            sitting += weight * Density(seen, still, se);
            weights += weight;
        }

        sitting /= weights;
        return rising + sitting > 0 ? rising / (rising + sitting) : seen > 1 ? 1 : 0;
    }

    private static double Density(double seen, double truth, double se)
    {
        var (off, turn) = ((seen - truth) / se, seen * truth / (se * se));
        return seen / (se * se) * Math.Exp(-off * off / 2) * SpecialFunctions.BesselIScaled(0, turn);
    }
}
