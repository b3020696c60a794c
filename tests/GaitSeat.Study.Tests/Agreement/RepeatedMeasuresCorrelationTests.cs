using GaitSeat.Study.Agreement;

namespace GaitSeat.Study.Tests.Agreement;

/// <summary>Intramural pH and PaCO2 of eight patients: Bland JM, Altman DG (1995) BMJ 310:446; values as in Bakdash JZ, Marusich LR (2017) Front Psychol 8:456, doi:10.3389/fpsyg.2017.00456 (package documentation).</summary>
public sealed class RepeatedMeasuresCorrelationTests
{
    private static readonly double[][] PhAndCarbonDioxide =
    [
        [6.68, 3.97, 6.53, 4.12, 6.43, 4.09, 6.33, 3.97], [6.85, 5.27, 7.06, 5.37, 7.13, 5.41, 7.17, 5.44],
        [7.40, 5.67, 7.42, 3.64, 7.41, 4.32, 7.37, 4.73, 7.34, 4.96, 7.35, 5.04, 7.28, 5.22, 7.30, 4.82, 7.34, 5.07],
        [7.36, 5.67, 7.33, 5.10, 7.29, 5.53, 7.30, 4.75, 7.35, 5.51], [7.35, 4.28, 7.30, 4.44, 7.30, 4.32, 7.37, 3.23, 7.27, 4.46, 7.28, 4.72, 7.32, 4.75, 7.32, 4.99],
        [7.38, 4.78, 7.30, 4.73, 7.29, 5.12, 7.33, 4.93, 7.31, 5.03, 7.33, 4.93], [6.86, 6.85, 6.94, 6.44, 6.92, 6.52],
        [7.19, 5.28, 7.29, 4.56, 7.21, 4.34, 7.25, 4.32, 7.20, 4.41, 7.19, 3.69, 6.77, 6.09, 6.82, 5.58],
    ];

    private static (string Subject, double X, double Y)[] Rows => [.. PhAndCarbonDioxide.SelectMany((values, s) => values.Chunk(2).Select(v => ($"{s}", v[0], v[1])))];

    [Fact]
    public void PublishedCorrelation_IsFound()
    {
        var found = RepeatedMeasuresCorrelation.Of(Rows);
        Assert.Equal(-0.5067697422, found.R, 5e-11);
        Assert.Equal(38, found.DegreesOfFreedom);
        Assert.Equal(0.0008471081, found.PValue, 5e-11);
        Assert.Equal(-0.7067146, found.Low, 5e-8);
        Assert.Equal(-0.2318631, found.High, 5e-8);
        Assert.Equal(-2.37083, found.Slope, 5e-6);
    }

    [Fact]
    public void OneRowEach_IsRefused() =>
        Assert.Equal(StudyProblem.TooFewRows, Assert.Throws<StudyException>(() => RepeatedMeasuresCorrelation.Of([("a", 1, 2), ("b", 2, 3), ("c", 3, 4)])).Problem);
}
