using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Tests.Linear;

public sealed class CollinearTests
{
    private static readonly double[] Inches = [25, 26, 27.5, 28, 30, 31];
    private static readonly double[] Outcome = [1, 2, 2, 3, 5, 4];

    [Fact]
    public void CombinationOfColumns_IsNamedWithItsParts()
    {
        var error = Assert.Throws<StudyException>(() => LeastSquaresFit.Of(
            Outcome, [DesignColumn.Intercept(6), new("leather_in", Inches), new("age", [3, 1, 4, 1, 5, 9]), new("leather_cm", [.. Inches.Select(i => 2.54 * i)])]));
        Assert.Equal(StudyProblem.Collinear, error.Problem);
        Assert.Contains("'leather_cm' is a combination of others (2.54 × 'leather_in')", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ConstantColumn_IsNamedBesideTheIntercept()
    {
        var error = Assert.Throws<StudyException>(() => LeastSquaresFit.Of(Outcome, [DesignColumn.Intercept(6), new("season", [2024, 2024, 2024, 2024, 2024, 2024])]));
        Assert.Contains("'season' is a combination of others (2024 × '(intercept)')", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ZeroColumn_IsNamed() => Assert.Contains(
        "'horse_2' is zero", Assert.Throws<StudyException>(() => LeastSquaresFit.Of(Outcome, [DesignColumn.Intercept(6), new("horse_2", new double[6])])).Message, StringComparison.Ordinal);

    [Fact]
    public void NearlyCollinearColumns_AreFitted()
    {
        var fit = LeastSquaresFit.Of(Outcome, [DesignColumn.Intercept(6), new("x", Inches), new("x plus a little", [.. Inches.Select((x, i) => x + (i % 2 == 0 ? 1e-4 : -1e-4))])]);
        Assert.Equal(3, fit.Coefficients.Count);
        Assert.Equal(0, fit.Residuals.Sum(), 1e-8);
    }
}
