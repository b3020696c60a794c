using GaitSeat.Cli;
using GaitSeat.Faults.Verdicts;
using GaitSeat.Model;
using GaitSeat.Store;
using Microsoft.Playwright;

namespace GaitSeat.Review.Tests;

/// <summary>
/// The whole of a coach's morning by the program's own commands, in a real browser with films that play: open, judge twenty by keyboard with a restart in the middle, undo, compare, mark, look at season and run, a report,
/// and a rider who is forgotten while the page is open. What was seen is kept as <c>morning-*.png</c>.
/// </summary>
public sealed class MorningTests(Browser browser) : IClassFixture<Browser>
{
    private const int Wanted = 20, BeforeRestart = 10, Width = 1440, Height = 900;
    private const string Judge = "coach-1", Pupil = "J02";

    [Fact]
    public async Task WholeMorning()
    {
        using var morning = await DemoMorning.MakeAsync(CancellationToken.None);
        string[] review = [morning.Clips, "--dataset", morning.Dataset, "--judge", Judge];
        await using (var first = await RunningReview.StartAsync(review))
        {
            await using var tab = await browser.OpenAsync(first.Link, Width, Height);
            await tab.ShownAsync();
            await PlaysAsync(tab, "#video");
            await tab.KeepAsync("morning-1-open");
            await tab.Page.Keyboard.PressAsync("q");
            await tab.Page.Locator("#queue-lines button").Nth(Wanted - 1).WaitForAsync();
            await tab.KeepAsync("morning-2-queue");
            await tab.Page.Locator("#close-queue").ClickAsync();
            await JudgeAsync(tab, BeforeRestart);
            Assert.Empty(tab.Errors);
        }

        Assert.Equal(BeforeRestart, Acts(morning));
        await using var again = await RunningReview.StartAsync(review);
        await using var later = await browser.OpenAsync(again.Link, Width, Height);
        await later.ShownAsync();
        await JudgeAsync(later, Wanted - BeforeRestart);
        Assert.Equal(Wanted, Acts(morning));

        // The latest answer, and one that was given before the restart's last.
        await later.PressAsync("u", "Taken back");
        Assert.Equal(Wanted - 1, Acts(morning));
        await later.KeepAsync("morning-3-undone");
        await CompareAsync(later);
        await MarkAsync(later, morning);
        await SeasonAndRunAsync(later);
        await ReportAsync(morning);
        await ForgetAsync(later, morning);
        // The browser itself tells that question and film of the forgotten rider were refused; nothing else went wrong.
        Assert.DoesNotContain(later.Errors, e => !e.Contains("410", StringComparison.Ordinal) && !e.Contains("/clip/", StringComparison.Ordinal));
    }

    /// <summary>By keys alone; what was drawn at random is said to be without fault.</summary>
    private static async Task JudgeAsync(Tab tab, int questions)
    {
        string[] keys = ["a", "d", "a", "c"];
        for (var i = 0; i < questions; i++)
        {
            await tab.RestsAsync();
            var key = await tab.Page.Locator("#choice").IsVisibleAsync() ? "d" : keys[i % keys.Length];
            await tab.PressAsync(key, "Saved");
        }

        await tab.RestsAsync();
    }

    /// <summary>Beside an earlier clip of the same rider, both playing.</summary>
    private static async Task CompareAsync(Tab tab)
    {
        var earlier = tab.Page.Locator("#beside-choice option").Filter(new() { HasText = "earlier" });
        await tab.Page.Keyboard.PressAsync("b");
        for (var looked = 0; await OffersNoneAsync(tab, earlier) && looked < Wanted; looked++)
        {
            await tab.Page.Keyboard.PressAsync("p");
            await tab.RestsAsync();
            await tab.Page.Keyboard.PressAsync("b");
        }

        await Assertions.Expect(tab.Page.Locator("#beside-name")).ToContainTextAsync("deg");
        await PlaysAsync(tab, "#video");
        await PlaysAsync(tab, "#beside-video");
        await tab.KeepAsync("morning-4-compare");
        await tab.Page.Keyboard.PressAsync("b");
        await Assertions.Expect(tab.Page.Locator("#beside-half")).ToBeHiddenAsync();
    }

    private static async Task<bool> OffersNoneAsync(Tab tab, ILocator earlier)
    {
        await tab.RestsAsync();
        return await earlier.CountAsync() == 0;
    }

    /// <summary>The hip dragged on a still, and taken as a mark; two more said to be right as they are.</summary>
    private static async Task MarkAsync(Tab tab, DemoMorning morning)
    {
        await tab.Page.Keyboard.PressAsync("k");
        var hip = tab.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^hip:") });
        var at = (await hip.BoundingBoxAsync())!;
        await tab.Page.Mouse.MoveAsync(at.X + at.Width / 2, at.Y + at.Height / 2);
        await tab.Page.Mouse.DownAsync();
        await tab.Page.Mouse.MoveAsync(at.X + at.Width / 2 + 6, at.Y + at.Height / 2 - 4, new() { Steps = 3 });
        await tab.Page.Mouse.UpAsync();
        foreach (var point in new[] { "knee", "ankle" }) await tab.Page.GetByRole(AriaRole.Button, new() { NameRegex = new($"^{point}:") }).PressAsync("Enter");
        await tab.Page.Keyboard.PressAsync("s");
        await Assertions.Expect(tab.Page.Locator("#mark-text")).ToContainTextAsync("Saved: 3 points marked");
        await Assertions.Expect(tab.Page.Locator("#mark-text")).ToContainTextAsync("Thigh angle by hand");
        await tab.KeepAsync("morning-5-mark");
        Assert.Equal([HandPoint.Hip, HandPoint.Knee, HandPoint.Ankle], HandMark.Standing(new MarkStore(Dataset.Open(morning.Dataset)).All()).Select(m => m.Point).Order());
        await tab.Page.Keyboard.PressAsync("Escape");
    }

    private static async Task SeasonAndRunAsync(Tab tab)
    {
        await tab.GoAsync("/season");
        await tab.Page.Locator(".rider-row .season-line").First.WaitForAsync();
        Assert.Contains($"{DemoMorning.Riders} riders", await tab.ProgressAsync(), StringComparison.Ordinal);
        await tab.KeepAsync("morning-6-season");
        await tab.GoAsync("/run");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = $"Try in the next run: {DemoMorning.SetAside}" }).WaitForAsync();
        await tab.KeepAsync("morning-7-run");
        await tab.GoAsync("/");
        await tab.ShownAsync();
    }

    /// <summary>The page for one pupil, and the same as PDF. Its pictures take the models and stand in a test of their own.</summary>
    private async Task ReportAsync(DemoMorning morning)
    {
        var page = morning.Beside("pupil.html");
        var (code, said) = await Gaitseat.RunAsync("report", Pupil, "--dataset", morning.Dataset, "--clips", morning.Clips, "--out", page, "--pdf", "--no-pictures", "--by", Judge);
        Assert.True(code == ExitCodes.Done, said);
        Assert.Equal("%PDF-"u8.ToArray(), (await File.ReadAllBytesAsync(Path.ChangeExtension(page, ".pdf")))[..5]);
        await using var tab = await browser.OpenAsync(new Uri(page).AbsoluteUri, Width, Height);
        await Assertions.Expect(tab.Page.Locator("body")).ToContainTextAsync(Pupil);
        await tab.KeepAsync("morning-8-report");
    }

    /// <summary>The rider of the question that is open is forgotten: nothing is left in the dataset, and the page lets go of it.</summary>
    private static async Task ForgetAsync(Tab tab, DemoMorning morning)
    {
        var rider = (await tab.Page.Locator("#who").InnerTextAsync()).Split(' ')[0];
        var keys = ClipKeysOf(morning, rider);
        Assert.NotEmpty(keys);
        var (code, said) = await Gaitseat.RunAsync("forget", rider, "--dataset", morning.Dataset, "--clips", morning.Clips, "--originals", "--yes", "--by", Judge);
        Assert.True(code == ExitCodes.Done, said);
        Assert.Contains("nothing is left", said, StringComparison.Ordinal);
        Assert.Empty(ClipKeysOf(morning, rider));
        Assert.Empty(Directory.EnumerateFiles(morning.Clips, $"{rider.ToLowerInvariant()}-*"));
        // Not by the search of the program itself: no name of a file and no byte of one tells of the clips.
        foreach (var file in Directory.EnumerateFiles(morning.Dataset, "*", SearchOption.AllDirectories))
        {
            var bytes = System.Text.Encoding.Latin1.GetString(await File.ReadAllBytesAsync(file));
            Assert.DoesNotContain(keys, k => file.Contains(k[..16], StringComparison.Ordinal) || bytes.Contains(k[..16], StringComparison.Ordinal));
        }

        await tab.RestsAsync();
        await tab.Page.Keyboard.PressAsync("d");
        await Assertions.Expect(tab.State).ToContainTextAsync("was erased from the dataset");
        await tab.RestsAsync();
        Assert.DoesNotContain(rider, await tab.Page.Locator("#who").InnerTextAsync(), StringComparison.Ordinal);
        await tab.KeepAsync("morning-9-forgotten");
        await tab.Page.Keyboard.PressAsync("q");
        await tab.Page.Locator("#queue-lines button").First.WaitForAsync();
        Assert.Equal(0, await tab.Page.Locator("#queue-lines").GetByText(rider, new() { Exact = true }).CountAsync());
        Assert.Empty(ClipKeysOf(morning, rider));
    }

    private static string[] ClipKeysOf(DemoMorning morning, string rider) => [.. Dataset.Open(morning.Dataset).Clips().Where(c => c.Rider == rider).Select(c => c.ClipKey).Distinct()];

    /// <summary>How many answers of the judge stand.</summary>
    private static int Acts(DemoMorning morning) => StandingVerdicts.Of(new VerdictStore(Dataset.Open(morning.Dataset)).All()).Where(v => v.Judge == Judge).Select(v => v.JudgedAt).Distinct().Count();

    private static async Task PlaysAsync(Tab tab, string video) => await tab.Page.WaitForFunctionAsync(
        "async (selector) => { const v = document.querySelector(selector), from = v.currentTime; await new Promise((r) => setTimeout(r, 60)); return !v.paused && v.videoWidth > 0 && v.currentTime !== from; }", video);
}
