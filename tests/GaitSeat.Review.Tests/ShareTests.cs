using System.Net;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using GaitSeat.Review.Web;
using Microsoft.Extensions.Time.Testing;
using Microsoft.Playwright;

namespace GaitSeat.Review.Tests;

/// <summary>The page shared on a network: encrypted, with a password, a few tries at a time.</summary>
public sealed class ShareTests(Browser browser) : IClassFixture<Browser>
{
    private const string Password = "a word for the yard 26", PfxPassword = "pfx";
    private static readonly DateTimeOffset Now = new(2026, 5, 31, 6, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task WithoutPassword_OnlyTheQuestionForItIsShown()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await StartAsync(season);
        Assert.StartsWith("https://localhost:", site.Address, StringComparison.Ordinal);
        Assert.Null(site.Link);
        using var client = Client(site);
        var page = await client.GetAsync("/");
        Assert.Equal(HttpStatusCode.Unauthorized, page.StatusCode);
        var text = await page.Content.ReadAsStringAsync();
        Assert.Contains("id=\"password\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain("csrf", text, StringComparison.Ordinal);
        foreach (var path in new[] { "/api/queue", $"/clip/{season.Keys["Alder"]}", "/app/review.js", "/api/season", "/enter?token=x" }) Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync(path)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/app/login.js")).StatusCode);
    }

    [Fact]
    public async Task Password_LetsIn_WithACookieForHttpsAlone_UntilItsTimeIsOver()
    {
        var time = new FakeTimeProvider(Now);
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await StartAsync(season, time);
        using var client = Client(site);
        Assert.Equal(HttpStatusCode.Unauthorized, (await LogInAsync(client, site, "not the password")).StatusCode);
        var answer = await LogInAsync(client, site, Password);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie")).ToLowerInvariant();
        foreach (var word in new[] { "__host-", "secure", "httponly", "samesite=strict" }) Assert.Contains(word, cookie, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/api/queue")).StatusCode);
        time.Advance(TimeSpan.FromHours(12));
        Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync("/api/queue")).StatusCode);
    }

    /// <summary>The session ends in the program: the cookie, wherever it was copied to, is worth nothing.</summary>
    [Fact]
    public async Task LoggingOut_EndsTheSession()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await StartAsync(season);
        using var client = Client(site);
        var cookie = (await LogInAsync(client, site, Password)).Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        var page = await client.GetStringAsync("/");
        Assert.Contains("id=\"log-out\"", page, StringComparison.Ordinal);
        var csrf = System.Text.RegularExpressions.Regex.Match(page, "name=\"csrf\" content=\"([^\"]+)\"").Groups[1].Value;
        Assert.Equal(HttpStatusCode.Forbidden, (await LogOutAsync(client, site, "guess")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/api/queue")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await LogOutAsync(client, site, csrf)).StatusCode);

        using var thief = new HttpClient(new HttpClientHandler { UseCookies = false, ServerCertificateCustomValidationCallback = HttpClientHandler.DangerousAcceptAnyServerCertificateValidator }) { BaseAddress = new(site.Address) };
        var with = new HttpRequestMessage(HttpMethod.Get, "/api/queue");
        with.Headers.Add("Cookie", cookie);
        Assert.Equal(HttpStatusCode.Unauthorized, (await thief.SendAsync(with)).StatusCode);
    }

    [Fact]
    public async Task Guessing_IsStopped_AlsoForTheRightPassword()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await StartAsync(season);
        using var client = Client(site);
        for (var i = 0; i < LogIn.TriesOfOne; i++) Assert.Equal(HttpStatusCode.Unauthorized, (await LogInAsync(client, site, $"guess {i}")).StatusCode);
        var late = await LogInAsync(client, site, Password);
        Assert.Equal(HttpStatusCode.TooManyRequests, late.StatusCode);
        Assert.NotNull(late.Headers.RetryAfter);
        Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync("/api/queue")).StatusCode);
    }

    [Fact]
    public async Task PlainHttp_OtherNames_AndPagesFromElsewhere_GetNothing()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await StartAsync(season);
        using var client = Client(site);
        await Assert.ThrowsAnyAsync<HttpRequestException>(() => client.GetAsync(site.Address.Replace("https://", "http://", StringComparison.Ordinal)));
        var foreign = new HttpRequestMessage(HttpMethod.Get, "/");
        foreign.Headers.Host = $"evil.example:{new Uri(site.Address).Port}";
        Assert.Equal(HttpStatusCode.Forbidden, (await client.SendAsync(foreign)).StatusCode);
        foreach (var origin in new[] { "https://evil.example", "null", null })
            Assert.Equal(HttpStatusCode.Forbidden, (await LogInAsync(client, Password, origin)).StatusCode);
        var form = new HttpRequestMessage(HttpMethod.Post, "/login") { Content = new FormUrlEncodedContent([new("password", Password)]) };
        form.Headers.Add("Origin", site.Address);
        Assert.Equal(HttpStatusCode.Forbidden, (await client.SendAsync(form)).StatusCode);
    }

    [Fact]
    public void CertificateOrPasswordThatWillNotDo_IsNamed()
    {
        var folder = Directory.CreateTempSubdirectory("gaitseat-share-");
        try
        {
            var good = Pfx(folder.FullName, Now.AddDays(-1), Now.AddDays(1));
            Assert.Equal("localhost", Share.Of("127.0.0.1", good, PfxPassword, Password, Now).HostName);
            string Problem(Action act) => Assert.Throws<ReviewException>(act).Message;
            Assert.Contains("15 to", Problem(() => Share.Of("0.0.0.0", good, PfxPassword, "short", Now)), StringComparison.Ordinal);
            Assert.Contains("cannot be read", Problem(() => Share.Of("0.0.0.0", good, "wrong", Password, Now)), StringComparison.Ordinal);
            Assert.Contains("cannot be read", Problem(() => Share.Of("0.0.0.0", good + ".gone", PfxPassword, Password, Now)), StringComparison.Ordinal);
            Assert.Contains("ran out on 2026-06-01", Problem(() => Share.Of("0.0.0.0", good, PfxPassword, Password, Now.AddDays(2))), StringComparison.Ordinal);
            Assert.Contains("no address", Problem(() => Share.Of("stable", good, PfxPassword, Password, Now)), StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task Coach_LogsInByTheBrowser_AndAnswers()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await StartAsync(season);
        await using var tab = await browser.OpenAsync(site.Address);
        Assert.Empty(await tab.SeriousAsync());
        await tab.KeepAsync("login");
        await tab.Page.Locator("#password").FillAsync("wrong");
        await tab.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(tab.State).ToHaveTextAsync("That is not the password.");
        await tab.Page.Locator("#password").FillAsync(Password);
        await tab.Page.Keyboard.PressAsync("Enter");
        await tab.ShownAsync();
        await tab.PressAsync("a", "agreed");
        Assert.Single(season.Verdicts);
        await tab.Page.Locator("#log-out").ClickAsync();
        await tab.Page.Locator("#password").WaitForAsync();
        // The browser itself tells of the two answers that refuse; nothing else went wrong.
        Assert.All(tab.Errors, e => Assert.Contains("401", e, StringComparison.Ordinal));
    }

    private static async Task<ReviewSite> StartAsync(MadeSeason season, TimeProvider? time = null)
    {
        var folder = Directory.CreateTempSubdirectory("gaitseat-share-");
        try
        {
            var share = Share.Of("127.0.0.1", Pfx(folder.FullName, Now.AddYears(-1), Now.AddYears(20)), PfxPassword, Password, Now);
            return await ReviewSite.StartAsync(season.Open(), season.Clips, "coach-1", 0, time ?? TimeProvider.System, share);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>A certificate of its own making for localhost.</summary>
    private static string Pfx(string folder, DateTimeOffset from, DateTimeOffset until)
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest("CN=localhost", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName("localhost");
        request.CertificateExtensions.Add(names.Build());
        using var certificate = request.CreateSelfSigned(from, until);
        var path = Path.Combine(folder, "made.pfx");
        File.WriteAllBytes(path, certificate.Export(X509ContentType.Pfx, PfxPassword));
        return path;
    }

    private static HttpClient Client(ReviewSite site) =>
        new(new HttpClientHandler { CookieContainer = new(), AllowAutoRedirect = false, ServerCertificateCustomValidationCallback = HttpClientHandler.DangerousAcceptAnyServerCertificateValidator }) { BaseAddress = new(site.Address) };

    private static Task<HttpResponseMessage> LogOutAsync(HttpClient client, ReviewSite site, string csrf)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, "/logout") { Content = JsonContent.Create(new { }) };
        request.Headers.Add("Origin", site.Address);
        request.Headers.Add("X-GaitSeat-Csrf", csrf);
        return client.SendAsync(request);
    }

    private static Task<HttpResponseMessage> LogInAsync(HttpClient client, ReviewSite site, string password) => LogInAsync(client, password, site.Address);

    private static Task<HttpResponseMessage> LogInAsync(HttpClient client, string password, string? origin)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, "/login") { Content = JsonContent.Create(new { password }) };
        if (origin is not null) request.Headers.Add("Origin", origin);
        return client.SendAsync(request);
    }
}
