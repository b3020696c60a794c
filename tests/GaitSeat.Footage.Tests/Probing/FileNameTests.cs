namespace GaitSeat.Footage.Tests;

/// <summary>Names FFmpeg would take for an option, a pattern or a protocol, or that would end a quoted argument, are just names.</summary>
public sealed class FileNameTests(MadeClips clips)
{
    [Theory]
    [InlineData("-y.mp4")]
    [InlineData("frame%03d.mp4")]
    [InlineData("with space and é.mp4")]
    [InlineData("it's.mp4")]
    [InlineData("a&b;c$(d)`e`.mp4")]
    [InlineData("100%.mp4")]
    public async Task OddName_IsRead(string name) => await ReadsAsync(name);

    [Theory]
    [InlineData("concat:a|b.mp4")]
    [InlineData("pipe:0")]
    [InlineData("quo\"te\" -f null -.mp4")]
    [InlineData("back\\slash\\\"quote.mp4")]
    [InlineData("ends with backslash\\")]
    [InlineData("new\nline.mp4")]
    [InlineData("*.mp4")]
    public async Task NameForbiddenOnWindows_IsReadElsewhere(string name)
    {
        if (OperatingSystem.IsWindows()) Assert.Skip("Windows has no such file names.");
        await ReadsAsync(name);
    }

    private async Task ReadsAsync(string name)
    {
        var path = clips.NewPath(name);
        File.Copy(await clips.PlainAsync(), path);
        var reading = await Reading.OfAsync(clips, path);
        Assert.Equal(path, reading.Clip.Path);
        reading.ShowsInOrder(Enumerable.Range(0, 30));
    }
}
