using Microsoft.Playwright;

namespace GaitSeat.Review.Tests;

/// <summary>Debian's Chromium, driven by Playwright; one for all tests of the class.</summary>
public sealed class Browser : IAsyncLifetime
{
    private const string Chromium = "/usr/bin/chromium";
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async ValueTask InitializeAsync()
    {
        if (!File.Exists(Chromium)) return;
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Chromium, Args = ["--no-sandbox", "--disable-gpu"] });
    }

    /// <summary>A page of a size, px, that gathers what goes wrong on it and what it asks of others.</summary>
    internal async Task<Tab> OpenAsync(string link, int width = 1280, int height = 800, ColorScheme colours = ColorScheme.Light)
    {
        if (_browser is null) Assert.Skip($"{Chromium} is not installed (apt-get install chromium), so the page was not tried in a browser.");
        var context = await _browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, ColorScheme = colours, HasTouch = width < 600, IgnoreHTTPSErrors = true });
        var tab = new Tab(await context.NewPageAsync(), new Uri(link));
        await tab.Page.GotoAsync(link);
        return tab;
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
    }
}
