using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace GaitSeat.Review.Tests;

/// <summary>The review page in a browser.</summary>
internal sealed class Tab : IAsyncDisposable
{
    /// <summary>How long a test waits for what must come: machines that build and test at once are slow.</summary>
    private const int PatienceMilliseconds = 60_000;

    internal Tab(IPage page, Uri link)
    {
        Page = page;
        page.SetDefaultTimeout(PatienceMilliseconds);
        Assertions.SetDefaultExpectTimeout(PatienceMilliseconds);
        page.PageError += (_, error) => Errors.Add(error);
        page.Console += (_, message) =>
        {
            if (message.Type == "error") Errors.Add($"{message.Text} ({message.Location})");
        };
        page.Request += (_, request) =>
        {
            if (new Uri(request.Url).Authority != link.Authority) Errors.Add($"asked of another host: {request.Url}");
        };
    }

    internal IPage Page { get; }

    /// <summary>Errors of scripts, breaches of the content policy, requests to others.</summary>
    internal List<string> Errors { get; } = [];

    internal ILocator State => Page.Locator("#state");

    internal Task<string> TitleAsync() => Page.Locator("#title").InnerTextAsync();

    internal Task<string> ProgressAsync() => Page.Locator("#progress").InnerTextAsync();

    /// <summary>Goes to another screen, once the link has led in.</summary>
    internal async Task GoAsync(string path)
    {
        await Page.Locator(".screens").WaitForAsync();
        await Page.Locator($".screens a[href='{path}']").ClickAsync();
        await Page.Locator($".screens a[href='{path}'][aria-current]").WaitForAsync();
    }

    /// <summary>Until the question is there with its strip.</summary>
    internal async Task ShownAsync()
    {
        try
        {
            await Page.Locator("#strip svg .strip-value").First.WaitForAsync();
        }
        catch (TimeoutException e)
        {
            throw new TimeoutException($"No question came. The page says '{await Page.Locator("body").InnerTextAsync()}' and has the errors: {string.Join("; ", Errors)}", e);
        }
    }

    /// <summary>Until no act of the page is under way.</summary>
    internal Task RestsAsync() => Page.Locator("#screen[aria-busy=false]").WaitForAsync();

    /// <summary>Presses a key and waits for the words the page says to it.</summary>
    internal async Task PressAsync(string key, string said)
    {
        await Page.Keyboard.PressAsync(key);
        await Assertions.Expect(State).ToContainTextAsync(said);
    }

    /// <summary>What axe finds that is serious or critical.</summary>
    internal async Task<IReadOnlyList<string>> SeriousAsync() =>
        [.. (await Page.RunAxe()).Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Select(n => n.Html))}")];

    internal Task<bool> FitsAcrossAsync() => Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= window.innerWidth");

    /// <summary>Where what the tests saw is kept: <c>out/screenshots</c>, or the folder GAITSEAT_SCREENSHOTS names.</summary>
    internal static string Pictures { get; } =
        Environment.GetEnvironmentVariable("GAITSEAT_SCREENSHOTS") is { Length: > 0 } folder ? folder : Path.Combine(MadeSeason.Root, "out", "screenshots");

    internal Task KeepAsync(string name) => Page.ScreenshotAsync(new() { Path = Path.Combine(Pictures, name + ".png") });

    public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();
}
