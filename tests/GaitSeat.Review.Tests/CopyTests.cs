using System.Diagnostics;
using GaitSeat.Cli;
using GaitSeat.Footage;
using GaitSeat.Store;
using Microsoft.Playwright;

namespace GaitSeat.Review.Tests;

/// <summary>A clip that no browser plays is played from a copy, picture for picture at its own time; the copy goes with the rider.</summary>
public sealed class CopyTests(Browser browser) : IClassFixture<Browser>
{
    [Fact]
    public async Task ClipNoBrowserPlays_IsPlayedFromACopy_ThatIsForgottenToo()
    {
        using var season = await MadeSeason.MakeAsync(FilmAsync);
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!);
        await tab.ShownAsync();
        await tab.Page.WaitForFunctionAsync("() => { const v = document.getElementById('video'); return v.videoWidth === 320 && v.src.endsWith('/copy') && v.currentTime > 0.3; }");
        await Assertions.Expect(tab.Page.Locator("#no-clip")).ToBeHiddenAsync();
        Assert.InRange(await tab.Page.Locator("#video").EvaluateAsync<double>("v => v.duration"), 3.95, 4.05);
        var copy = Assert.Single(Directory.EnumerateFiles(ReviewCopies.FolderOf(season.DatasetFolder)));
        var key = season.Keys.Values.Single(k => Path.GetFileName(copy) == ReviewCopies.NameOf(k));
        var rider = season.Keys.Single(k => k.Value == key).Key;
        Assert.Contains("nothing is left", (await Gaitseat.RunAsync("forget", rider, "--dataset", season.DatasetFolder, "--yes")).Said, StringComparison.Ordinal);
        Assert.False(File.Exists(copy));
    }

    [Fact]
    public async Task ClipThatCannotBeDecoded_IsSaid()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!);
        await Assertions.Expect(tab.Page.Locator("#no-clip")).ToContainTextAsync("No copy that a browser plays could be made");
        Assert.Empty(Directory.EnumerateFiles(ReviewCopies.FolderOf(season.DatasetFolder)));
    }

    /// <summary>MPEG-4 part 2 in AVI, as older cameras write it.</summary>
    private static async Task FilmAsync(string path, int rider)
    {
        string[] arguments = ["-v", "error", "-f", "lavfi", "-i", $"testsrc2=size=320x180:rate=25:duration=4,hue=h={40 * rider}", "-c:v", "mpeg4", "-q:v", "4", "-f", "avi", path];
        using var ffmpeg = Process.Start(FfmpegTools.Locate().FfmpegPath, arguments);
        await ffmpeg.WaitForExitAsync();
        Assert.Equal(0, ffmpeg.ExitCode);
    }
}
