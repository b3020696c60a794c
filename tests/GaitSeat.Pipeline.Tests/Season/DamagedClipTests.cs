using GaitSeat.Cli;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;

namespace GaitSeat.Pipeline.Tests.Season;

/// <summary>
/// A clip with some fifty flipped bits. With several threads the decoder patches such a clip each time otherwise: five readings showed five sets of pictures.
/// </summary>
[Collection(nameof(SeasonFolder))]
public sealed class DamagedClipTests(SeasonFolder season) : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-damaged-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Damaged_GivesTheSameNumbersAndPicturesEveryTime()
    {
        var path = await DamagedAsync();
        var settings = new PipelineSettings { Read = new() { DecoderThreads = 4 } };
        using var workshop = Workshop.Open(FfmpegTools.Locate(), Places.Models(), settings);
        SeenClip first = await SeeAsync(), second = await SeeAsync();

        Assert.Equal("damaged", Assert.Single(first.Unread).Reason);
        Assert.Equal(first.Unread, second.Unread);
        Assert.Equal(first.TimeSeconds, second.TimeSeconds);
        Assert.Equal(first.People.Rider, second.People.Rider);
        Assert.Equal(first.Poses.SelectMany(p => p!.First.X), second.Poses.SelectMany(p => p!.First.X));
        Assert.Equal(first.Trunk.YPx, second.Trunk.YPx);
        Assert.Equal(await OverlayAsync(first, "first"), await OverlayAsync(second, "second"));

        async Task<byte[]> OverlayAsync(SeenClip seen, string name)
        {
            var files = await new WorkshopStage(workshop).DrawAsync(ClipMeasurer.Measure(seen, BodyLengths.Unknown, settings), new('a', 64), Path.Combine(_folder, name), TestContext.Current.CancellationToken);
            return await File.ReadAllBytesAsync(files.Single(f => f.EndsWith(".mp4", StringComparison.Ordinal)));
        }

        Task<SeenClip> SeeAsync() => new ClipMeasurer(workshop).SeeAsync(path, null, TestContext.Current.CancellationToken);
    }

    private async Task<string> DamagedAsync()
    {
        Assert.SkipUnless(Repository.HasWeights, Repository.WeightsMissing);
        var path = Path.Combine(_folder, "ride.mp4");
        await season.CodeAnewAsync(path, "", "-t", "2");
        var file = await File.ReadAllBytesAsync(path);
        var chance = new Random(3);
        // The ends hold the heads and the list of frames.
        for (var flip = 0; flip < 50; flip++) file[chance.Next(file.Length / 20, file.Length * 9 / 10)] ^= (byte)(1 << chance.Next(8));
        await File.WriteAllBytesAsync(path, file);
        return path;
    }
}
