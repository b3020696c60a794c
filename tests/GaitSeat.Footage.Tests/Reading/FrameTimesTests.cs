namespace GaitSeat.Footage.Tests;

/// <summary>Each picture carries its number and each number has a known time, so both a wrong time and a wrong pairing show.</summary>
public sealed class FrameTimesTests(MadeClips clips)
{
    /// <summary>A double holds these times to better than this; a single tick of the clips' clock is 11 us.</summary>
    private const double Exact = 1e-9;

    private static IEnumerable<double> VariableTimes =>
        Enumerable.Range(0, Clips.VariableFrames).Select(n => (double)Clips.VariableTicks(n) / Clips.VariableTicksPerSecond);

    [Fact]
    public async Task ConstantRate_TimesAndPicturesInOrder()
    {
        var reading = await Reading.OfAsync(clips, await clips.PlainAsync());
        reading.ShowsInOrder(Enumerable.Range(0, 30));
        reading.TimesAre(Enumerable.Range(0, 30).Select(n => n / 30.0), Exact);
        Assert.Empty(reading.Report.LeftOut);
        Assert.Equal(30, reading.Report.FramesRead);
    }

    [Fact]
    public async Task VariableRate_TimesAreThoseOfTheFile()
    {
        var reading = await Reading.OfAsync(clips, await clips.VariableAsync());
        reading.ShowsInOrder(Enumerable.Range(0, Clips.VariableFrames));
        reading.TimesAre(VariableTimes, Exact);
    }

    [Theory]
    [InlineData("offset.mp4", "-output_ts_offset 1.5", Exact)]
    [InlineData("variable.ts", "", Exact)]
    [InlineData("variable.mkv", "", 0.0005 + Exact)] // Matroska's own clock is the millisecond: half a one is lost in the file.
    [InlineData("variable.nut", "", Exact)]
    public async Task VariableRateInOtherContainer_TimesCountFromTheFirstFrame(string name, string more, double tolerance)
    {
        var reading = await Reading.OfAsync(clips, await clips.VariableAsync(name, more));
        reading.ShowsInOrder(Enumerable.Range(0, Clips.VariableFrames));
        reading.TimesAre(VariableTimes, tolerance * 2);
    }

    [Fact]
    public async Task SoundBeginsEarlier_TimesCountFromTheFirstPicture()
    {
        var path = await clips.ByFfmpegAsync("late.mp4", $"{Barcode.Source(30, 30)},setpts=PTS+0.7/TB -f lavfi -i sine=d=2 {Clips.X264} -c:a aac");
        var reading = await Reading.OfAsync(clips, path);
        reading.ShowsInOrder(Enumerable.Range(0, 30));
        reading.TimesAre(Enumerable.Range(0, 30).Select(n => n / 30.0), Exact);
    }

    [Theory]
    [InlineData("variable.mp4")]
    [InlineData("variable.mkv")]
    [InlineData("variable.ts")]
    [InlineData("offset.mp4")]
    public async Task PartOfClip_IsThatPartOfTheWholeReading(string name)
    {
        var path = await clips.VariableAsync(name, name == "offset.mp4" ? "-output_ts_offset 1.5" : "");
        var whole = await Reading.OfAsync(clips, path);
        foreach (var (start, end) in new (double?, double?)[] { (1.0, 2.0), (null, 0.5), (3.33, null), (whole.Times[40], whole.Times[41]) })
        {
            var part = await Reading.OfAsync(clips, path, new ReadSettings { StartSeconds = start, EndSeconds = end });
            var wanted = Enumerable.Range(0, whole.Times.Length).Where(i => whole.Times[i] >= (start ?? 0) && whole.Times[i] < (end ?? double.MaxValue)).ToArray();
            part.ShowsInOrder(wanted);
            part.TimesAre(wanted.Select(i => whole.Times[i]), Exact);
            Assert.Empty(part.Report.LeftOut);
        }
    }

    [Fact]
    public async Task PartOfLongMpegTs_KeepsTimes()
    {
        var path = await clips.ByFfmpegAsync("long.ts", $"{Barcode.Source(25, 750)} {Clips.X264} -g 25");
        var part = await Reading.OfAsync(clips, path, new ReadSettings { StartSeconds = 25, EndSeconds = 25.2 });
        part.ShowsInOrder(Enumerable.Range(625, 5));
        part.TimesAre(Enumerable.Range(625, 5).Select(n => n / 25.0), Exact);
    }

    [Fact]
    public async Task PartBeyondTheEnd_IsEmpty()
    {
        var part = await Reading.OfAsync(clips, await clips.PlainAsync(), new ReadSettings { StartSeconds = 50 });
        Assert.Empty(part.Times);
    }

    [Fact]
    public async Task EndBeforeStart_IsRefused()
    {
        var settings = new ReadSettings { StartSeconds = 2, EndSeconds = 2 };
        await Assert.ThrowsAsync<ArgumentException>(async () => await Reading.OfAsync(clips, await clips.PlainAsync(), settings));
    }

    [Fact]
    public async Task RecordingsJoinedWithTimesThatStepBack_TimesStillRise()
    {
        var path = await clips.ChangedAsync("joined.ts", () => clips.VariableAsync("variable.ts"), bytes => [.. bytes, .. bytes]);
        var reading = await Reading.OfAsync(clips, path);
        reading.TimesAre(VariableTimes, Exact);
    }
}
