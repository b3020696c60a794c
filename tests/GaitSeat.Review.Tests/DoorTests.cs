using System.Net;
using System.Net.Http.Headers;

namespace GaitSeat.Review.Tests;

/// <summary>Who may come in, and what of a request is refused.</summary>
public sealed class DoorTests
{
    [Fact]
    public async Task WithoutCookie_NothingIsShown()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var visitor = new Visitor(site);
        foreach (var path in new[] { "/", "/api/queue", $"/clip/{season.Keys["Alder"]}", "/app/review.js", "/nowhere" })
            Assert.Equal(HttpStatusCode.Unauthorized, (await visitor.GetAsync(path)).StatusCode);
    }

    [Fact]
    public async Task Token_WorksOnce_AndNoOtherDoes()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var stranger = new Visitor(site);
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.GetAsync("/enter?token=" + new string('A', 43))).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.GetAsync("/enter")).StatusCode);
        var link = site.Link!;
        using var coach = await Visitor.InsideAsync(site);
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.GetAsync(link)).StatusCode);
        Assert.Null(site.Link);
    }

    [Fact]
    public async Task Refused_WhoOpensAPageReadsASentence_AndAScriptGetsJson()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var visitor = new Visitor(site);
        var opened = new HttpRequestMessage(HttpMethod.Get, "/");
        opened.Headers.Add("Sec-Fetch-Mode", "navigate");
        var (page, answer) = (await visitor.SendAsync(opened), await visitor.GetAsync("/api/queue"));
        Assert.Equal("text/plain", page.Content.Headers.ContentType?.MediaType);
        Assert.StartsWith("Open the link", await page.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Unauthorized, page.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public async Task Cookie_IsOutOfReachOfScriptsAndOtherSites()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var visitor = new Visitor(site);
        var cookie = Assert.Single((await visitor.GetAsync(site.Link!)).Headers.GetValues("Set-Cookie")).ToLowerInvariant();
        Assert.Contains("httponly", cookie, StringComparison.Ordinal);
        Assert.Contains("samesite=strict", cookie, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("evil.example")]
    [InlineData("localhost:1")]
    [InlineData("127.0.0.1")]
    public async Task ForeignHost_IsRefused(string host)
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var request = new HttpRequestMessage(HttpMethod.Get, "/api/queue");
        request.Headers.Host = host;
        Assert.Equal(HttpStatusCode.Forbidden, (await coach.SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("cross-site")]
    [InlineData("same-site")]
    public async Task RequestOfAnotherPage_IsRefused(string from)
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var request = new HttpRequestMessage(HttpMethod.Get, $"/clip/{season.Keys["Alder"]}");
        request.Headers.Add("Sec-Fetch-Site", from);
        Assert.Equal(HttpStatusCode.Forbidden, (await coach.SendAsync(request)).StatusCode);
    }

    [Fact]
    public async Task Write_NeedsSecretOriginAndKind()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var answer = new { id = await coach.FirstIdAsync(), answer = "agrees" };
        Action<HttpRequestMessage>[] tricks =
        [
            r => r.Headers.Remove("X-GaitSeat-Csrf"),
            r => { r.Headers.Remove("X-GaitSeat-Csrf"); r.Headers.Add("X-GaitSeat-Csrf", "guess"); },
            r => r.Headers.Remove("Origin"),
            r => { r.Headers.Remove("Origin"); r.Headers.Add("Origin", "https://evil.example"); },
            r => { r.Headers.Remove("Origin"); r.Headers.Add("Origin", "null"); },
            r => r.Content!.Headers.ContentType = new MediaTypeHeaderValue("text/plain"),
        ];
        foreach (var trick in tricks) Assert.Equal(HttpStatusCode.Forbidden, (await coach.PostAsync("/api/answer", answer, trick)).StatusCode);
        Assert.Empty(season.Verdicts);
        Assert.Equal(HttpStatusCode.OK, (await coach.PostAsync("/api/answer", answer)).StatusCode);
        Assert.Single(season.Verdicts);
    }

    [Fact]
    public async Task EveryAnswer_BindsTheBrowser()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        foreach (var path in new[] { "/", "/app/review.js", "/api/queue", $"/clip/{season.Keys["Alder"]}", "/nowhere", "/enter?token=x" })
        {
            var response = await coach.GetAsync(path);
            var policy = Assert.Single(response.Headers.GetValues("Content-Security-Policy"));
            Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", Assert.Single(response.Headers.GetValues("X-Content-Type-Options")));
            Assert.True(response.Headers.CacheControl!.NoStore);
        }
    }

    [Fact]
    public async Task Page_NamesNothingOutside()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        foreach (var path in new[] { "/", "/app/review.css", "/app/tokens.css", "/app/api.js", "/app/player.js", "/app/overlay.js", "/app/panel.js", "/app/review.js", "/app/beside.js", "/season", "/app/season.js", "/app/season.css" })
            Assert.DoesNotContain("://", await (await coach.GetAsync(path)).Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("style=", await (await coach.GetAsync("/")).Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }
}
