using GaitSeat.Model;

namespace GaitSeat.Faults.Tests;

public sealed class IrregularRiseTests
{
    private static readonly RuleSettings TellAll = new() { MinimumProbability = 0.5, IrregularRise = new() { DurationCvPct = 4, RiseCvPct = 25 } };

    /// <summary>Durations 0.70 ± 0.05: SD sqrt(8 x 0.0025 / 7) and its noise taken off.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.01)]
    [InlineData(0.03)]
    public void UnevenDurations_CvWithTheNoiseTakenOff(double noise)
    {
        var strides = Rides.Strides(8, (m, i) => m[StrideMeasure.StrideDuration] = new(i % 2 == 0 ? 0.65 : 0.75, noise));
        var finding = Assert.Single(Rides.Find(strides, TellAll));
        Assert.Equal((Fault.IrregularRise, "stride_duration_s", "% (CV)"), (finding.Fault, finding.Measure, finding.Unit));
        var variance = 8 * 0.0025 / 7;
        var raw = Math.Sqrt(variance) / 0.7;
        Assert.Equal(100 * Math.Sqrt(variance - noise * noise) / 0.7, finding.Value.Value, 9);
        Assert.Equal(100 * raw * Math.Sqrt((1 + 2 * raw * raw) / 14), finding.Value.StandardError, 9);
    }

    [Fact]
    public void SpreadNoLargerThanTheNoise_NotIrregular()
    {
        var strides = Rides.Strides(12, (m, i) => m[StrideMeasure.StrideDuration] = new(i % 2 == 0 ? 0.65 : 0.75, 0.06));
        Assert.Empty(Rides.Find(strides, TellAll));
    }

    [Fact]
    public void OneOddStrideAmongEven_OnlyThatStrideShown()
    {
        var strides = Rides.Strides(8, (m, i) => m[StrideMeasure.StrideDuration] = new(i == 4 ? 1.1 : 0.72, 0.005));
        var finding = Assert.Single(Rides.Find(strides));
        Assert.Equal([5], finding.StrideNumbers);
        Assert.Equal(4 * Rides.StrideSeconds, finding.StartSeconds, 9);
    }
}
