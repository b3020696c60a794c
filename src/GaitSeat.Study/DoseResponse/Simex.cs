using System.ComponentModel.DataAnnotations;
using GaitSeat.Study.Linear;
using GaitSeat.Study.Simulation;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.DoseResponse;

/// <summary>How errors of the exposure are simulated.</summary>
public sealed record SimexSettings
{
    /// <summary>Simulated data sets per amount of added error; 50 to 200 are usual (Cook and Stefanski 1994). Each is a fit of its own: take few where rows are many.</summary>
    [Range(1, 10_000)]
    public int Replicates { get; init; } = 50;

    /// <summary>Seed of the random numbers.</summary>
    [Range(0, int.MaxValue)]
    public int Seed { get; init; } = 1;
}

/// <summary>An effect with and without the errors of the exposure.</summary>
/// <param name="Naive">As if the exposure were exact.</param>
/// <param name="Corrected">Extrapolated to no error.</param>
/// <param name="Trend">Mean estimate at each amount of added error variance, in units of the error variance; 0 is the data as they are.</param>
/// <param name="Failed">Simulated data sets that could not be fitted; they are left out of the means.</param>
public sealed record SimexResult(double Naive, double Corrected, IReadOnlyList<(double AddedVariance, double Estimate)> Trend, int Failed);

/// <summary>
/// Sensitivity to errors in the exposure by simulation and extrapolation: add more error, watch the effect shrink, extrapolate by a quadratic to none
/// (Cook and Stefanski 1994, J Am Stat Assoc 89:1314-1328, doi:10.1080/01621459.1994.10476871). The quadratic takes out most of the bias, not all.
/// </summary>
public static class Simex
{
    private static readonly double[] Added = [0.5, 1, 1.5, 2];

    /// <param name="exposure">As measured.</param>
    /// <param name="errorSd">Standard deviation of its error.</param>
    /// <param name="measurementOf">Which measurement each row's exposure comes from (a leather measured once has one error for all strides of the session).</param>
    /// <param name="estimate">The effect for a given exposure; called from several threads.</param>
    /// <exception cref="StudyException">The data as they are, or half of the simulated ones, cannot be fitted.</exception>
    public static SimexResult Of(double[] exposure, double errorSd, IReadOnlyList<int> measurementOf, Func<double[], double> estimate, SimexSettings settings)
    {
        if (!(errorSd > 0)) throw new StudyException(StudyProblem.BadData, $"error of the exposure is {errorSd}; above zero is allowed");
        if (measurementOf.Count != exposure.Length) throw new ArgumentException($"{measurementOf.Count} measurement numbers for {exposure.Length} rows");
        var seeds = new Random(settings.Seed);
        var failed = 0;
        var measurements = measurementOf.Max() + 1;
        List<(double AddedVariance, double Estimate)> trend = [(0, estimate(exposure))];
        foreach (var added in Added)
        {
            double[] found =
            [
                .. Replicates.Of(settings.Replicates, seeds.Next(), random => TryEstimate(Noisier(exposure, measurementOf, errorSd * Math.Sqrt(added), Draw(measurements, random)))).OfType<double>(),
            ];
            if (2 * found.Length < settings.Replicates) throw new StudyException(StudyProblem.NoConvergence, "more than half of the fits with added error did not converge; simplify the model");
            failed += settings.Replicates - found.Length;
            trend.Add((added, found.Average()));
        }

        return new(trend[0].Estimate, Extrapolate(trend), trend, failed);

        double? TryEstimate(double[] noisier)
        {
            try
            {
                return estimate(noisier);
            }
            catch (StudyException e) when (e.Problem == StudyProblem.NoConvergence)
            {
                return null;
            }
        }
    }

    /// <summary>Error's standard deviation from a reliability: the share of the variance between measurements that is not error.</summary>
    public static double ErrorSd(double[] measurements, double reliability)
    {
        if (!(reliability is > 0 and < 1)) throw new StudyException(StudyProblem.BadData, $"reliability is {reliability}; between 0 and 1 is allowed");
        return Moments.Of(measurements).Sd * Math.Sqrt(1 - reliability);
    }

    private static double[] Draw(int count, Random random)
    {
        var noise = new double[count];
        Normal.Samples(random, noise, 0, 1);
        return noise;
    }

    private static double[] Noisier(double[] exposure, IReadOnlyList<int> measurementOf, double sd, double[] noise) =>
        [.. exposure.Select((x, i) => x + sd * noise[measurementOf[i]])];

    private static double Extrapolate(List<(double AddedVariance, double Estimate)> trend)
    {
        double[] added = [.. trend.Select(t => t.AddedVariance)];
        var fit = LeastSquaresFit.Of(
            [.. trend.Select(t => t.Estimate)], [DesignColumn.Intercept(added.Length), new("added", added), new("added²", [.. added.Select(a => a * a)])]);
        return fit.Coefficients[0].Estimate - fit.Coefficients[1].Estimate + fit.Coefficients[2].Estimate;
    }
}
