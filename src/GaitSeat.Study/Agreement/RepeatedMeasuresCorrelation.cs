using GaitSeat.Study.Linear;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Agreement;

/// <summary>
/// Correlation of two measures within subjects, one slope for all and a level for each: Bland and Altman (1995), BMJ 310:446; Bakdash and Marusich (2017), Front Psychol 8:456, doi:10.3389/fpsyg.2017.00456.
/// </summary>
/// <param name="Slope">Common slope, units of y per unit of x.</param>
/// <param name="Low">95 % interval by Fisher's z with the error degrees of freedom less one.</param>
public sealed record RepeatedMeasuresCorrelation(double R, double Slope, int DegreesOfFreedom, double PValue, double Low, double High)
{
    public static RepeatedMeasuresCorrelation Of(IReadOnlyList<(string Subject, double X, double Y)> rows)
    {
        var subjects = rows.GroupBy(r => r.Subject).ToArray();
        var df = rows.Count - subjects.Length - 1;
        if (subjects.Length < 2 || df < 2)
            throw new StudyException(StudyProblem.TooFewRows, $"{rows.Count} rows of {subjects.Length} subjects; two or more subjects and more than one row each are needed");
        DataCheck.Finite("values", [.. rows.SelectMany(r => new[] { r.X, r.Y })]);
        double xx = 0, yy = 0, xy = 0;
        foreach (var subject in subjects)
        {
            var (mx, my) = (subject.Average(r => r.X), subject.Average(r => r.Y));
            xx += subject.Sum(r => (r.X - mx) * (r.X - mx));
            yy += subject.Sum(r => (r.Y - my) * (r.Y - my));
            xy += subject.Sum(r => (r.X - mx) * (r.Y - my));
        }

        if (!(xx > 0 && yy > 0)) throw new StudyException(StudyProblem.BadData, "a measure does not change within any subject; there is nothing to correlate");
        var r = xy / Math.Sqrt(xx * yy);
        var t = r * Math.Sqrt(df / (1 - r * r));
        var half = Normal.InvCDF(0, 1, 0.975) / Math.Sqrt(df - 1);
        return new(r, xy / xx, df, 2 * StudentT.CDF(0, 1, df, -Math.Abs(t)), Math.Tanh(Math.Atanh(r) - half), Math.Tanh(Math.Atanh(r) + half));
    }
}
