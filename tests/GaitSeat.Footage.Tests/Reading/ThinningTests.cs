namespace GaitSeat.Footage.Tests;

public sealed class ThinningTests(MadeClips clips)
{
    [Theory]
    [InlineData(120, 60, 2)]
    [InlineData(100, 60, 2)]
    [InlineData(240, 60, 4)]
    [InlineData(60, 60, 1)]
    [InlineData(61, 60, 1)] // within the tolerance of 2 %
    [InlineData(72, 60, 2)]
    [InlineData(30, 7, 5)]
    public async Task ConstantRate_KeepsEveryNthFrameAtItsTime(int rateHz, double maxRateHz, int every)
    {
        var path = await clips.ByFfmpegAsync($"rate{rateHz}.mp4", $"{Barcode.Source(rateHz, 61)} {Clips.X264}");
        var reading = await Reading.OfAsync(clips, path, new ReadSettings { MaxRateHz = maxRateHz });
        var kept = Enumerable.Range(0, 61).Where(n => n % every == 0).ToArray();
        reading.ShowsInOrder(kept);
        reading.TimesAre(kept.Select(n => n / (double)rateHz), 1e-9);
        Assert.Empty(reading.Report.LeftOut);
    }

    [Fact]
    public async Task VariableRate_StaysUnderTheLimitWithTrueTimes()
    {
        var reading = await Reading.OfAsync(clips, await clips.VariableAsync(), new ReadSettings { MaxRateHz = 10 });
        Assert.InRange(reading.Times.Length, 30, 46);
        Assert.True((reading.Times.Length - 1) / (reading.Times[^1] - reading.Times[0]) <= 10 * 1.02);
        reading.TimesAre(reading.Numbers.Select(n => (double)Clips.VariableTicks(n) / Clips.VariableTicksPerSecond), 1e-9);
    }
}
