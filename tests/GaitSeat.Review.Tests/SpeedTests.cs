using System.Globalization;

namespace GaitSeat.Review.Tests;

/// <summary>
/// How soon the page answers a key, measured within the browser from the key to the picture. Written to the output and to <c>speed.txt</c> beside the screenshots; only that it
/// answers is asserted: times say more of the machine's load than of the page.
/// </summary>
public sealed class SpeedTests(Browser browser, ITestOutputHelper output) : IClassFixture<Browser>
{
    private const int Samples = 7;

    /// <summary>From the key to the first picture of the video that is presented after it; of the next question's where it changes.</summary>
    private const string UntilPicture =
        """
        ([key, changes]) => new Promise((done, fail) => {
          setTimeout(() => fail(new Error(`no picture 20 s after ${key}`)), 20000);
          const video = document.getElementById('video'), before = location.hash, from = performance.now();
          const look = () => video.requestVideoFrameCallback(() => (changes && location.hash === before ? look() : done(performance.now() - from)));
          look();
          document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
        })
        """;

    /// <summary>From the key to the lines of the queue.</summary>
    private const string UntilQueue =
        """
        () => new Promise((done, fail) => {
          setTimeout(() => fail(new Error('no queue after 20 s')), 20000);
          const lines = document.getElementById('queue-lines'), from = performance.now();
          lines.replaceChildren();
          new MutationObserver((_, seen) => { if (lines.children.length) { seen.disconnect(); done(performance.now() - from); } }).observe(lines, { childList: true });
          document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'q', bubbles: true }));
        })
        """;

    [Fact]
    public async Task Clip_IsSeenAfterTheKey()
    {
        using var season = await MadeSeason.MakeAsync();
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!);
        await tab.ShownAsync();
        await tab.Page.WaitForFunctionAsync("() => document.getElementById('video').currentTime > 0.3");
        var (play, next, answer) = (new List<double>(), new List<double>(), new List<double>());
        for (var i = 0; i < Samples; i++)
        {
            await tab.Page.EvaluateAsync("() => { const v = document.getElementById('video'); if (!v.paused) document.getElementById('play').click(); }");
            await tab.RestsAsync();
            play.Add(await tab.Page.EvaluateAsync<double>(UntilPicture, new object[] { " ", false }));
            next.Add(await NextAsync(tab, i % 2 == 0 ? "n" : "p"));
        }

        for (var i = 0; i < 2; i++) answer.Add(await NextAsync(tab, "c"));
        Report("Space to the first picture", play);
        Report("N or P to the first picture of the other clip", next);
        Report("C to the first picture of the next clip, the answer saved before", answer);
        Assert.All(play.Concat(next).Concat(answer), ms => Assert.True(ms > 0));
        Assert.Empty(tab.Errors);
    }

    [Fact]
    public async Task QueueOfTenThousand_IsSeenAfterTheKey()
    {
        using var many = new ManyFlags();
        await using var site = await many.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!);
        await tab.ShownAsync();
        var times = new List<double>();
        for (var i = 0; i < Samples; i++)
        {
            await tab.RestsAsync();
            times.Add(await tab.Page.EvaluateAsync<double>(UntilQueue));
            await tab.Page.Locator("#close-queue").ClickAsync();
        }

        Report("Q to the queue of 10,000", times);
        Assert.Equal(50, await tab.Page.Locator("#queue-lines button").CountAsync());
        await tab.GoAsync("/season");
        await Microsoft.Playwright.Assertions.Expect(tab.Page.Locator(".rider-row")).ToHaveCountAsync(200);
        Assert.Empty(tab.Errors);
    }

    /// <summary>A step is passed over while another is under way, so it is taken once the page rests.</summary>
    private static async Task<double> NextAsync(Tab tab, string key)
    {
        await tab.RestsAsync();
        return await tab.Page.EvaluateAsync<double>(UntilPicture, new object[] { key, true });
    }

    private void Report(string what, List<double> times)
    {
        times.Sort();
        var line = string.Create(CultureInfo.InvariantCulture, $"{what}: median {times[times.Count / 2]:0} ms, {times[0]:0} to {times[^1]:0}, {times.Count} times");
        output.WriteLine(line);
        Directory.CreateDirectory(Tab.Pictures);
        File.AppendAllText(Path.Combine(Tab.Pictures, "speed.txt"), line + "\n");
    }
}
