using System.Diagnostics;
using System.Globalization;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Pipeline.Tests.Season;

/// <summary>A clip of 16 s with a rider from 6 to 10 s and nobody else, a key frame a second: glanced at, the first pass finds what looking through all of it finds.</summary>
[Collection(nameof(SeasonFolder))]
public sealed class FirstPassTests(SeasonFolder season) : IDisposable
{
    private const double Before = 6, After = 6;
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-first-pass-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Glanced_IsWhatLookingThroughFinds_ForLessThanTwoThirdsOfTheDetections()
    {
        var clip = await RideAsync("-g 30");
        var (glanced, through) = (await PassAsync(clip), await PassAsync(clip, glance: false));

        Assert.Equal(through.Path.Spans, glanced.Path.Spans);
        Assert.InRange(Assert.Single(glanced.Path.Spans).StartSeconds, Before - 0.5, Before + 0.5);
        Assert.Equal(through.Path.TimeSeconds.Length, glanced.Path.TimeSeconds.Length);
        Assert.Equal(through.Path.Rider, glanced.Path.Rider);
        Assert.Equal(through.Path.Horse, glanced.Path.Horse);
        Assert.Equal(through.Path.RiderSeenShare, glanced.Path.RiderSeenShare);
        Assert.Equal(80, through.Detections);
        Assert.InRange(glanced.Detections, 16, 52);
    }

    [Fact]
    public async Task DamageAboutTheRider_IsToldAsLookingThroughTellsIt()
    {
        var clip = await SpoiltAsync(Before + 1.5);
        var (glanced, through) = (await PassAsync(clip), await PassAsync(clip, glance: false));
        Assert.Equal("damaged", Assert.Single(through.Unread).Reason);
        Assert.Equal(through.Unread, glanced.Unread);
        Assert.Equal(through.Path.Rider, glanced.Path.Rider);
    }

    /// <summary>Nothing is measured where nobody is, so a fault there is not looked for.</summary>
    [Fact]
    public async Task DamageWhereNobodyIs_IsNotHeard_AndChangesNothing()
    {
        var clip = await SpoiltAsync(2.5);
        var (glanced, whole) = (await PassAsync(clip), await PassAsync(await RideAsync("-g 30")));
        Assert.NotEmpty((await PassAsync(clip, glance: false)).Unread);
        Assert.Empty(glanced.Unread);
        Assert.Equal(whole.Path.Rider, glanced.Path.Rider);
    }

    /// <summary>The index says 16 s, the pictures end before: told as ever.</summary>
    [Fact]
    public async Task PicturesCutOff_IsToldAsLookingThroughTellsIt()
    {
        var whole = await File.ReadAllBytesAsync((await RideAsync("-g 30 -movflags +faststart")).Path);
        var path = Path.Combine(_folder, "cut.mp4");
        await File.WriteAllBytesAsync(path, whole[..(whole.Length - 6000)]);
        var clip = await ProbeAsync(path);
        var (glanced, through) = (await PassAsync(clip), await PassAsync(clip, glance: false));
        Assert.Contains(Assert.Single(through.Unread).Reason, new[] { "truncated", "damaged" });
        Assert.Equal(through.Unread, glanced.Unread);
        Assert.Equal(through.Path.Spans, glanced.Path.Spans);
    }

    private static async Task<FirstPassResult> PassAsync(ClipInfo clip, bool glance = true)
    {
        var settings = new PipelineSettings { Scout = new ScoutSettings { GlanceFromSeconds = glance ? 15 : 1e6 } };
        using var workshop = Workshop.Open(FfmpegTools.Locate(), Cli.Places.Models(), settings);
        return await new FirstPass(workshop.Ffmpeg, workshop.Detector, settings).RunAsync(clip, TestContext.Current.CancellationToken);
    }

    private async Task<ClipInfo> RideAsync(string coding)
    {
        Assert.SkipUnless(Repository.HasWeights, Repository.WeightsMissing);
        var path = Path.Combine(_folder, "ride.mp4");
        await season.CodeAnewAsync(path, FormattableString.Invariant($"tpad=start_duration={Before}:stop_duration={After}:color=gray,"), ["-sc_threshold", "0", .. coding.Split(' ')]);
        return await ProbeAsync(path);
    }

    /// <summary>The bytes of a frame overwritten that is no key frame.</summary>
    private async Task<ClipInfo> SpoiltAsync(double timeSeconds)
    {
        var clip = await RideAsync("-g 30");
        using var probe = Process.Start(new ProcessStartInfo(FfmpegTools.Locate().FfprobePath,
            ["-v", "error", "-select_streams", "v", "-show_entries", "packet=pts_time,pos,size,flags", "-of", "csv=p=0", clip.Path]) { RedirectStandardOutput = true })!;
        var packets = (await probe.StandardOutput.ReadToEndAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(','));
        var packet = packets.First(p => double.Parse(p[0], CultureInfo.InvariantCulture) >= timeSeconds && !p[3].Contains('K', StringComparison.Ordinal));
        var (size, at) = (int.Parse(packet[1], CultureInfo.InvariantCulture), int.Parse(packet[2], CultureInfo.InvariantCulture));
        var file = await File.ReadAllBytesAsync(clip.Path);
        // After the heads of unit and slice, which are read even of frames that are not decoded.
        file.AsSpan(at + 40, size - 40).Fill(0x11);
        var path = Path.Combine(_folder, "spoilt.mp4");
        await File.WriteAllBytesAsync(path, file);
        return await ProbeAsync(path);
    }

    private static Task<ClipInfo> ProbeAsync(string path) => new ClipProbe(FfmpegTools.Locate(), new ProbeSettings()).ProbeAsync(path, CancellationToken.None);
}
