using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

public sealed class KeyFrameTests(MadeClips clips)
{
    private const int Group = 12;

    private Task<string> GroupsAsync() => clips.ByFfmpegAsync("groups.mp4", $"{Barcode.Source(30, 90)} {Clips.X264} -g {Group} -sc_threshold 0 -movflags +faststart");

    [Fact]
    public async Task KeyFrames_AreTheWholeReadingsPicturesAtTheirTimes()
    {
        var reading = await Reading.OfAsync(clips, await GroupsAsync(), choice: FrameChoice.KeyFrames);
        var keys = Enumerable.Range(0, 90).Where(n => n % Group == 0).ToArray();
        reading.ShowsInOrder(keys);
        reading.TimesAre(keys.Select(n => n / 30.0), 1e-9);
        Assert.Empty(reading.Report.LeftOut);
    }

    [Fact]
    public async Task VariableRate_KeyFramesHaveTheirOwnTimes()
    {
        var reading = await Reading.OfAsync(clips, await clips.VariableAsync(), choice: FrameChoice.KeyFrames);
        Assert.True(reading.Times.Length >= Clips.VariableFrames / 12);
        reading.TimesAre(reading.Numbers.Select(n => (double)Clips.VariableTicks(n) / Clips.VariableTicksPerSecond), 1e-9);
    }

    [Fact]
    public async Task KeyFramesCloserThanTheRate_AreThinned()
    {
        var reading = await Reading.OfAsync(clips, await GroupsAsync(), new() { MaxRateHz = 1.6 }, FrameChoice.KeyFrames);
        reading.ShowsInOrder([0, 24, 48, 72]);
    }

    [Fact]
    public async Task OneKeyFrame_IsTheFirst_AndNoEndIsMissed()
    {
        var reading = await Reading.OfAsync(clips, await clips.ByFfmpegAsync("onekey.mp4", $"{Barcode.Source(30, 90)} {Clips.X264} -g 1000 -sc_threshold 0"), choice: FrameChoice.KeyFrames);
        reading.ShowsInOrder([0]);
        Assert.Empty(reading.Report.LeftOut);
    }

    [Theory]
    [InlineData(5, "damaged")] // a key frame's bytes
    [InlineData(2, "damaged")] // cut off
    public async Task Damage_IsHeard(int way, string reason)
    {
        var path = await clips.ChangedAsync($"keydamage{way}.mp4", GroupsAsync, file =>
        {
            var pictures = Mp4Surgery.Find(file, "mdat");
            if (way == 2) return file[..(pictures + ((file.Length - pictures) / 2))];
            file.AsSpan(pictures + 900, 60).Fill(0xA5);
            return file;
        });
        var reading = await Reading.OfAsync(clips, path, choice: FrameChoice.KeyFrames);
        Assert.Equal(reason, Assert.Single(reading.Report.LeftOut).Reason);
    }

    [Theory]
    [InlineData(60, 30, 2 / 60.0)]
    [InlineData(30, 60, 1 / 30.0)]
    [InlineData(30, 5, 0.2)]
    public async Task StepSeconds_IsTheTimeBetweenFramesGivenOut(int rateHz, double maxRateHz, double seconds)
    {
        var settings = new ReadSettings { MaxRateHz = maxRateHz };
        var reading = await Reading.OfAsync(clips, await clips.ByFfmpegAsync($"step{rateHz}.mp4", $"{Barcode.Source(rateHz, 31)} {Clips.X264}"), settings);
        Assert.Equal(seconds, FrameReader.StepSeconds(reading.Clip, settings), 9);
        Assert.Equal(seconds, reading.Times[1] - reading.Times[0], 9);
    }
}
