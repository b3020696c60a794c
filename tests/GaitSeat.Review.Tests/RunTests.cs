using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GaitSeat.Model;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Night;
using GaitSeat.Pipeline.Watch.Policies;
using GaitSeat.Store;
using Microsoft.Extensions.Time.Testing;
using Microsoft.Playwright;

namespace GaitSeat.Review.Tests;

/// <summary>The run screen: what the worker left, what was set aside, and a clip tried again.</summary>
public sealed class RunTests(Browser browser) : IClassFixture<Browser>
{
    private static readonly DateTimeOffset Now = new(2026, 5, 31, 6, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task Worker_IsShownByItsLogAndJournal_WithoutNamesWithoutConsent()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        WriteLog(season, "stable-1", ["begins {Clip}|Clip|clip-0.mp4", "begins {Clip}|Clip|clip-3.mp4", "ends {Clip}: {End}|Clip|clip-0.mp4"]);
        WriteLog(season, "stable-2", ["begins {Clip}|Clip|clip-1.mp4", "pauses: {Why}. Goes on by itself when that is over|Why|the disk is full", "{ torn"]);
        using (var desk = WorkerDesk.Claim(season.DatasetFolder, "stable"))
        {
            var journal = new NightJournal(desk);
            journal.Add(new(2026, 5, 30), Entry("clip-0.mp4", NightEnd.Measured, null));
            journal.Add(new(2026, 5, 30), Entry("clip-1.mp4", NightEnd.PutOff, "not_read"));
            journal.Add(new(2026, 5, 30), Entry("clip-3.mp4", NightEnd.PutOff, "not_read"));
        }

        await using var site = await season.StartAsync(new FakeTimeProvider(Now));
        using var coach = await Visitor.InsideAsync(site);
        var page = await coach.JsonAsync("/api/run");
        var workers = page.GetProperty("workers").EnumerateArray().ToDictionary(w => w.GetProperty("name").GetString()!);
        Assert.Equal(["a clip without consent"], workers["stable-1"].GetProperty("inHand").EnumerateArray().Select(c => c.GetProperty("clip").GetString()));
        Assert.Equal("elsewhere", workers["stable-1"].GetProperty("process").GetString());
        Assert.Equal("the disk is full", workers["stable-2"].GetProperty("paused").GetString());
        Assert.Equal("pauses", workers["stable-2"].GetProperty("does").GetString());
        var night = Assert.Single(page.GetProperty("nights").EnumerateArray());
        Assert.Equal((1, 2), (night.GetProperty("measured").GetInt32(), night.GetProperty("putOff").GetInt32()));
        Assert.Equal("clip-1.mp4", Assert.Single(page.GetProperty("putOff").EnumerateArray()).GetProperty("file").GetString());
        Assert.DoesNotContain("clip-3.mp4", page.GetRawText(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Retry_MakesTheClipUndone_AndNoOther()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        var key = await SetAsideAsync(season, "clip-0b.mp4", consent: true);
        var other = await SetAsideAsync(season, "clip-0c.mp4", consent: false);
        CrashCount count;
        using (var desk = WorkerDesk.Claim(season.DatasetFolder, "stable")) count = CrashCount.Of(desk, key, MadeSeason.Pipeline, MadeSeason.Models, TimeProvider.System);
        count.Add("signal 11");
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var page = await coach.JsonAsync("/api/run");
        Assert.Equal((4, 2, 1), (page.GetProperty("measured").GetInt32(), page.GetProperty("setAside").GetInt32(), page.GetProperty("hidden").GetInt32()));
        var group = Assert.Single(page.GetProperty("groups").EnumerateArray());
        Assert.Equal("process crashed", group.GetProperty("reason").GetString());
        Assert.Equal(key, Assert.Single(group.GetProperty("clips").EnumerateArray()).GetProperty("key").GetString());

        // Neither a clip that was measured, nor one without consent, nor none at all, nor a write that is not ours.
        foreach (var no in new[] { season.Keys["Alder"], other, "../clips", null })
            Assert.Equal(HttpStatusCode.NotFound, (await coach.PostAsync("/api/retry", new { clipKey = no })).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await coach.PostAsync("/api/retry", new { clipKey = key }, r => r.Headers.Remove("X-GaitSeat-Csrf"))).StatusCode);
        var dataset = Dataset.Open(season.DatasetFolder);
        Assert.True(dataset.IsDone(key, MadeSeason.Pipeline, MadeSeason.Models));

        var done = await (await coach.PostAsync("/api/retry", new { clipKey = key })).Content.ReadFromJsonAsync<JsonElement>();
        Assert.Contains("counts as not done again", done.GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.False(dataset.IsDone(key, MadeSeason.Pipeline, MadeSeason.Models));
        Assert.Equal(0, count.Count);
        Assert.True(dataset.IsDone(other, MadeSeason.Pipeline, MadeSeason.Models));
        Assert.All(season.Keys.Values, k => Assert.True(dataset.IsDone(k, MadeSeason.Pipeline, MadeSeason.Models)));
        Assert.Equal(HttpStatusCode.NotFound, (await coach.PostAsync("/api/retry", new { clipKey = key })).StatusCode);
    }

    [Theory]
    [InlineData(1440, 900, ColorScheme.Dark)]
    [InlineData(390, 844, ColorScheme.Light)]
    public async Task Screen_TriesAClipAgain(int width, int height, ColorScheme colours)
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await SetAsideAsync(season, "clip-0b.mp4", consent: true);
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!, width, height, colours);
        await tab.GoAsync("/run");
        await tab.Page.GetByText("clip-0b.mp4").First.WaitForAsync();
        await tab.KeepAsync($"run-{width}");
        Assert.Empty(await tab.SeriousAsync());
        Assert.True(await tab.FitsAcrossAsync(), "The page is wider than the screen.");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Try in the next run: clip-0b.mp4" }).ClickAsync();
        await Assertions.Expect(tab.State).ToContainTextAsync("counts as not done again");
        await Assertions.Expect(tab.Page.Locator("#aside")).ToContainTextAsync("No clip that may be shown is set aside.");
        Assert.Empty(tab.Errors);
    }

    private static async Task<string> SetAsideAsync(MadeSeason season, string file, bool consent)
    {
        var path = Path.Combine(season.Clips, file);
        await File.WriteAllTextAsync(path, $"stands for {file}");
        var key = await ClipKey.OfFileAsync(path, CancellationToken.None);
        await File.AppendAllTextAsync(Path.Combine(season.Clips, SessionSheet.FileName), $"{file},2026-05-02,R0,{(consent ? "yes" : "no")}\n");
        var provenance = new Provenance(key, file, MadeSeason.Pipeline, MadeSeason.Models, "0.1.0-test", Provenance.CurrentSchemaVersion);
        await Dataset.Open(season.DatasetFolder).WriteAsync(new(provenance, null, null, ClipStatus.SetAside, "process_crashed", $"{file}: brought its process down", null, null, [], [], 0), withTracks: false, CancellationToken.None);
        return key;
    }

    /// <param name="lines">Template, name and value of a property, parted by bars; or a torn line as it is.</param>
    private static void WriteLog(MadeSeason season, string worker, string[] lines)
    {
        var folder = Directory.CreateDirectory(Path.Combine(season.DatasetFolder, WorkerDesk.FolderName, "logs")).FullName;
        var path = Path.Combine(folder, $"{worker}-20260531.jsonl");
        File.WriteAllLines(path, lines.Select((l, i) => l.Split('|') is [var template, var name, var value]
            ? JsonSerializer.Serialize(new Dictionary<string, string> { ["@t"] = Now.AddMinutes(i - 10).ToString("O"), ["@mt"] = template, [name] = value })
            : l));
        File.SetLastWriteTimeUtc(path, Now.AddMinutes(-5).UtcDateTime);
    }

    private static NightEntry Entry(string file, NightEnd end, string? reason) => new(Now.AddHours(-3), "stable-1", file, end, reason, null, 100, 5, [], 60, 0);
}
