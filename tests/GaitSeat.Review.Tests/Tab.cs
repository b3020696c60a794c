using Microsoft.Playwright;

namespace GaitSeat.Review.Tests;

/// <summary>The review page in a browser.</summary>
internal sealed class Tab : IAsyncDisposable
{
    internal Tab(IPage page, Uri link)
    {
        Page = page;
        page.SetDefaultTimeout(20_000);
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

    /// <summary>Until the question is there with its strip.</summary>
    internal Task ShownAsync() => Page.Locator("#strip svg .strip-value").First.WaitForAsync();

    /// <summary>Presses a key and waits for the words the page says to it.</summary>
    internal async Task PressAsync(string key, string said)
    {
        await Page.Keyboard.PressAsync(key);
        await Assertions.Expect(State).ToContainTextAsync(said);
    }

    /// <summary>Keeps a picture where GAITSEAT_SCREENSHOTS names a folder.</summary>
    internal async Task KeepAsync(string name)
    {
        if (Environment.GetEnvironmentVariable("GAITSEAT_SCREENSHOTS") is { Length: > 0 } folder)
            await Page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png") });
    }

    public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();
}
