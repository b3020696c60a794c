using GaitSeat.Model;
using Microsoft.Playwright;

namespace GaitSeat.Review.Tests;

/// <summary>The review page as a coach meets it, in a real browser.</summary>
public sealed class ScreenTests(Browser browser) : IClassFixture<Browser>
{
    private const int PhoneWidth = 390, PhoneHeight = 844;

    [Fact]
    public async Task Morning_ByKeyboard_WithARestartAndAnUndo()
    {
        using var season = await MadeSeason.MakeAsync();
        await using (var site = await season.StartAsync())
        {
            await using var tab = await browser.OpenAsync(site.Link!);
            await tab.ShownAsync();
            await tab.PressAsync("a", "agreed");
            await tab.Page.Keyboard.PressAsync("m");
            await tab.Page.Keyboard.TypeAsync(MadeSeason.HostileNote);
            await tab.Page.Keyboard.PressAsync("Escape");
            await tab.PressAsync("d", "does not");
            Assert.Equal([VerdictAnswer.Agrees, VerdictAnswer.DoesNot], season.Verdicts.Select(v => v.Answer));
            Assert.Equal(MadeSeason.HostileNote, season.Verdicts[1].Note);
            Assert.Empty(tab.Errors);
        }

        await using var again = await season.StartAsync();
        await using var later = await browser.OpenAsync(again.Link!);
        await later.ShownAsync();
        await later.PressAsync("c", "cannot tell");
        await later.PressAsync("u", "Taken back");
        await later.PressAsync("u", "Taken back");
        Assert.Equal(5, season.Verdicts.Count);
        Assert.Equal(VerdictAnswer.Agrees, Assert.Single(Faults.Verdicts.StandingVerdicts.Of(season.Verdicts)).Answer);
        Assert.Empty(later.Errors);
    }

    [Fact]
    public async Task Clip_PlaysInItsLoop_StepsAndJumps_WithTheOverlayOver()
    {
        using var season = await MadeSeason.MakeAsync();
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!);
        await tab.ShownAsync();
        var video = tab.Page.Locator("#video");
        await tab.Page.WaitForFunctionAsync("() => document.getElementById('video').currentTime > 0.3");
        Assert.Equal(0.5, await video.EvaluateAsync<double>("v => v.playbackRate"));
        await tab.Page.WaitForFunctionAsync("() => document.getElementById('overlay').dataset.drawn === 'true'");
        await tab.Page.Keyboard.PressAsync("1");
        Assert.Equal(0.25, await video.EvaluateAsync<double>("v => v.playbackRate"));
        await tab.Page.Keyboard.PressAsync(".");
        var before = await video.EvaluateAsync<double>("v => v.currentTime");
        await tab.Page.Keyboard.PressAsync(".");
        Assert.InRange(await video.EvaluateAsync<double>("v => v.currentTime") - before, 0.03, 0.05);
        await tab.Page.Keyboard.PressAsync("o");
        Assert.Equal("false", await tab.Page.Locator("#overlay-switch").GetAttributeAsync("aria-pressed"));
        Assert.Equal("false", await tab.Page.Locator("#overlay").GetAttributeAsync("data-drawn"));
        var strip = (await tab.Page.Locator("#strip svg").BoundingBoxAsync())!;
        await tab.Page.Mouse.ClickAsync(strip.X + strip.Width - 12, strip.Y + 40);
        Assert.InRange(await video.EvaluateAsync<double>("v => v.currentTime"), 3.5, 3.75);
        Assert.Empty(tab.Errors);
    }

    [Fact]
    public async Task NothingMoves_WhenTheNextQuestionComes()
    {
        using var season = await MadeSeason.MakeAsync();
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!);
        await tab.ShownAsync();
        string[] places = ["#play", "#strip", "[data-answer=agrees]", "[data-answer=cannot_tell]", "#next", "#undo", "#note"];
        var before = await PlacesAsync(tab, places);
        await tab.PressAsync("a", "Saved");
        await tab.ShownAsync();
        Assert.Equal(before, await PlacesAsync(tab, places));
    }

    [Theory]
    [InlineData(1280, 800, ColorScheme.Light)]
    [InlineData(1280, 800, ColorScheme.Dark)]
    [InlineData(PhoneWidth, PhoneHeight, ColorScheme.Light)]
    public async Task Axe_FindsNothingSerious(int width, int height, ColorScheme colours)
    {
        using var season = await MadeSeason.MakeAsync();
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!, width, height, colours);
        await tab.ShownAsync();
        await tab.KeepAsync($"review-{width}-{colours}");
        Assert.Empty(await tab.SeriousAsync());
        await tab.Page.Locator("#open-queue").ClickAsync();
        await tab.Page.Locator("#queue-lines button").First.WaitForAsync();
        Assert.Empty(await tab.SeriousAsync());
    }

    /// <summary>A window of 1440 by 900 px at a zoom of 200 % has room for half as many pixels of the page.</summary>
    [Fact]
    public async Task Zoom200_ShowsEveryScreenWhole()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!, 720, 450);
        await tab.ShownAsync();
        foreach (var screen in new[] { "/", "/season", "/run" })
        {
            if (screen != "/") await tab.GoAsync(screen);
            Assert.True(await tab.FitsAcrossAsync(), $"{screen} is wider than the window.");
            Assert.Empty(await tab.SeriousAsync());
            await tab.KeepAsync($"zoom-200{screen.Replace('/', '-')}");
        }

        Assert.Empty(tab.Errors);
    }

    [Fact]
    public async Task Phone_ShowsAllAcross_AndAnswersByTouch()
    {
        using var season = await MadeSeason.MakeAsync();
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!, PhoneWidth, PhoneHeight);
        await tab.ShownAsync();
        Assert.True(await tab.FitsAcrossAsync(), "The page is wider than the phone.");
        // The question and its answers are in sight without scrolling.
        foreach (var wanted in new[] { "#title", "#video", "[data-answer=agrees]" })
            Assert.InRange((await tab.Page.Locator(wanted).BoundingBoxAsync())!.Y, 0, PhoneHeight - 40);
        await tab.Page.Locator("[data-answer=agrees]").TapAsync();
        await Assertions.Expect(tab.State).ToContainTextAsync("Saved");
        Assert.Single(season.Verdicts);
    }

    [Fact]
    public async Task NothingToReview_IsSaid()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        season.WriteSheet(_ => false);
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!);
        await Assertions.Expect(tab.Page.Locator("#empty-title")).ToHaveTextAsync("Nothing to review.");
        await Assertions.Expect(tab.Page.Locator("#empty-text")).ToContainTextAsync("lack consent");
        Assert.Empty(tab.Errors);
    }

    private static async Task<string> PlacesAsync(Tab tab, string[] places)
    {
        var boxes = new List<string>();
        foreach (var place in places)
        {
            var box = (await tab.Page.Locator(place).BoundingBoxAsync())!;
            boxes.Add(FormattableString.Invariant($"{place} {box.X:0} {box.Y:0} {box.Width:0} {box.Height:0}"));
        }

        return string.Join("; ", boxes);
    }
}
