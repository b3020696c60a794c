using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using GaitSeat.Review.Web;

namespace GaitSeat.Review.Tests;

/// <summary>Speaks to the page as a browser would, or as one who should not.</summary>
internal sealed partial class Visitor : IDisposable
{
    private readonly HttpClient _client;

    internal Visitor(ReviewSite site)
    {
        Address = new(site.Address);
        _client = new(new HttpClientHandler { CookieContainer = new(), AllowAutoRedirect = false }) { BaseAddress = Address };
    }

    internal Uri Address { get; }

    internal string Csrf { get; private set; } = "";

    /// <summary>Comes in by the link and reads the page's second secret.</summary>
    internal static async Task<Visitor> InsideAsync(ReviewSite site)
    {
        var visitor = new Visitor(site);
        var entered = await visitor.GetAsync(site.Link!);
        Assert.Equal(HttpStatusCode.OK, entered.StatusCode);
        visitor.Csrf = CsrfOf().Match(await (await visitor.GetAsync("/")).Content.ReadAsStringAsync()).Groups[1].Value;
        Assert.NotEmpty(visitor.Csrf);
        return visitor;
    }

    internal Task<HttpResponseMessage> GetAsync(string path) => _client.GetAsync(path);

    internal async Task<JsonElement> JsonAsync(string path)
    {
        var response = await GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return await response.Content.ReadFromJsonAsync<JsonElement>();
    }

    internal Task<HttpResponseMessage> SendAsync(HttpRequestMessage request) => _client.SendAsync(request);

    /// <param name="change">Makes the request what it should not be.</param>
    internal Task<HttpResponseMessage> PostAsync(string path, object body, Action<HttpRequestMessage>? change = null)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = JsonContent.Create(body) };
        request.Headers.Add("X-GaitSeat-Csrf", Csrf);
        request.Headers.Add("Origin", Address.GetLeftPart(UriPartial.Authority));
        change?.Invoke(request);
        return _client.SendAsync(request);
    }

    internal async Task<IReadOnlyList<JsonElement>> QuestionsAsync() => [.. (await JsonAsync("/api/queue")).GetProperty("lines").EnumerateArray()];

    internal async Task<string> FirstIdAsync() => (await QuestionsAsync())[0].GetProperty("id").GetString()!;

    public void Dispose() => _client.Dispose();

    [GeneratedRegex("name=\"csrf\" content=\"([^\"]+)\"")]
    private static partial Regex CsrfOf();
}
