using GaitSeat.Faults.Evaluation;
using GaitSeat.Faults.Training;

namespace GaitSeat.Faults.Tests.Training;

public sealed class CalibrationFitTests
{
    [Fact]
    public void Platt_FindsTheSlopeAndOffsetTheOutcomesWereDrawnWith()
    {
        var (scores, there) = Drawn(slope: 1.7, offset: -0.8, count: 20000);
        var fit = PlattCalibration.Fit(scores, there);
        Assert.Equal(1.7, fit.Slope, 0.1);
        Assert.Equal(-0.8, fit.Offset, 0.1);
    }

    [Fact]
    public void Platt_MakesOverconfidentScoresMeanWhatTheySay()
    {
        var (scores, there) = Drawn(slope: 0.5, offset: 0, count: 5000);
        var raw = scores.Select(s => 1 / (1 + Math.Exp(-2 * s))).ToArray();
        var fit = PlattCalibration.Fit(scores, there);
        var mended = scores.Select(fit.Probability).ToArray();
        Assert.True(Calibration.ExpectedError(raw, there) > 0.1);
        Assert.True(Calibration.ExpectedError(mended, there) < 0.03);
    }

    /// <summary>With three spells each, targets are 4/5 and 1/5 (Platt 1999: (n + 1) / (n + 2) and 1 / (m + 2)), so a clean split gives 0.8 and 0.2.</summary>
    [Fact]
    public void CleanSplit_DoesNotGiveCertainty()
    {
        var fit = PlattCalibration.Fit([1, 1, 1, -1, -1, -1], [true, true, true, false, false, false]);
        Assert.Equal(0.8, fit.Probability(1), 6);
        Assert.Equal(0.2, fit.Probability(-1), 6);
    }

    [Fact]
    public void OneAnswerOnly_IsRefused() => Assert.Throws<ArgumentException>(() => PlattCalibration.Fit([1, 2], [true, true]));

    private static (double[] Scores, bool[] There) Drawn(double slope, double offset, int count)
    {
        var random = new Random(5);
        double[] scores = [.. Enumerable.Range(0, count).Select(_ => 6 * random.NextDouble() - 3)];
        return (scores, [.. scores.Select(s => random.NextDouble() < 1 / (1 + Math.Exp(-(slope * s + offset))))]);
    }
}
