using System.Net;
using System.Net.Http.Headers;

namespace GaitSeat.Review.Tests;

/// <summary>Clips go out by their keys alone, in parts, and only while there is consent.</summary>
public sealed class ClipTests
{
    [Fact]
    public async Task Range_GivesThatPart()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var request = new HttpRequestMessage(HttpMethod.Get, $"/clip/{season.Keys["Alder"]}");
        request.Headers.Range = new(2, 7);
        var response = await coach.SendAsync(request);
        Assert.Equal(HttpStatusCode.PartialContent, response.StatusCode);
        var whole = await File.ReadAllBytesAsync(Path.Combine(season.Clips, MadeSeason.FileOf(0)));
        Assert.Equal(whole[2..8], await response.Content.ReadAsByteArrayAsync());
        Assert.Equal(new ContentRangeHeaderValue(2, 7, whole.Length), response.Content.Headers.ContentRange);
        var beyond = new HttpRequestMessage(HttpMethod.Get, $"/clip/{season.Keys["Alder"]}");
        beyond.Headers.Range = new(1_000_000, 1_000_001);
        Assert.Equal(HttpStatusCode.RequestedRangeNotSatisfiable, (await coach.SendAsync(beyond)).StatusCode);
    }

    [Theory]
    [InlineData("/clip/clip-0.mp4")]
    [InlineData("/clip/..%2Fsession-sheet.csv")]
    [InlineData("/clip/..%5Csession-sheet.csv")]
    [InlineData("/clip/%2e%2e%2f%2e%2e%2fetc%2fpasswd")]
    [InlineData("/clip/session-sheet.csv")]
    [InlineData("/clip/0000000000000000000000000000000000000000000000000000000000000000")]
    [InlineData("/app/..%2Findex.html")]
    [InlineData("/app/index.html")]
    [InlineData("/api/questions/..%2F..%2Fclip/strip")]
    [InlineData("/api/questions/..%2Fx/beside/..%2Fsession-sheet.csv")]
    [InlineData("/api/season/..%2Fsession-sheet.csv")]
    [InlineData("/run/..%2Fsession-sheet.csv")]
    public async Task PathTrick_FindsNothing(string path)
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var response = await coach.GetAsync(path);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.DoesNotContain("clip_file", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task WithoutConsent_NeitherClipNorQuestionIsShown()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        Assert.Equal(HttpStatusCode.NotFound, (await coach.GetAsync($"/clip/{season.Keys[MadeSeason.WithoutConsent]}")).StatusCode);
        var page = await coach.JsonAsync("/api/queue");
        Assert.True(page.GetProperty("hidden").GetInt32() > 0);
        Assert.DoesNotContain(page.GetProperty("lines").EnumerateArray(), l => l.GetProperty("rider").GetString() == MadeSeason.WithoutConsent);
    }

    [Fact]
    public async Task ConsentTakenBack_HoldsAtOnce()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var id = await coach.FirstIdAsync();
        var clip = (await coach.JsonAsync($"/api/questions/{id}")).GetProperty("clip").GetProperty("url").GetString()!;
        Assert.Equal(HttpStatusCode.OK, (await coach.GetAsync(clip)).StatusCode);
        season.WriteSheet(_ => false);
        Assert.Equal(HttpStatusCode.NotFound, (await coach.GetAsync(clip)).StatusCode);
        foreach (var part in new[] { "", "/strip", "/history", "/tracks" }) Assert.Equal(HttpStatusCode.Gone, (await coach.GetAsync($"/api/questions/{id}{part}")).StatusCode);
        Assert.Equal(HttpStatusCode.Gone, (await coach.PostAsync("/api/answer", new { id, answer = "agrees" })).StatusCode);
        File.Delete(Path.Combine(season.Clips, Store.SessionSheet.FileName));
        Assert.Equal(HttpStatusCode.NotFound, (await coach.GetAsync(clip)).StatusCode);
        Assert.Empty(season.Verdicts);
    }

    /// <summary>Who saw what is written down once a clip, however many parts of the film are asked for; what was refused was not seen.</summary>
    [Fact]
    public async Task WhatIsShown_IsLogged()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        for (var i = 0; i < 3; i++) await coach.GetAsync($"/clip/{season.Keys["Alder"]}");
        await coach.GetAsync($"/clip/{season.Keys[MadeSeason.WithoutConsent]}");
        await coach.JsonAsync($"/api/questions/{await coach.FirstIdAsync()}");
        var log = new Store.AuditLog(season.DatasetFolder).Read();
        Assert.Equal(["clip", "question"], log.Select(e => e.What).Order());
        Assert.All(log, e => Assert.Equal(("coach-1", "shown"), (e.Who, e.Act)));
        Assert.Equal(season.Keys["Alder"][..16], Assert.Single(log.Single(e => e.What == "clip").Clips));
        for (var i = 0; i < 2; i++) await coach.JsonAsync("/api/season/0");
        var figures = Assert.Single(new Store.AuditLog(season.DatasetFolder).Read(), e => e.What == "season");
        Assert.Equal("Alder", Assert.Single(figures.Riders));
    }

    [Fact]
    public async Task ConsentThatEndsOrIsNotToShow_HoldsAtOnce()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        var consent = Path.Combine(season.Clips, Store.ConsentFile.FileName);
        void Write(string scope, string until) => File.WriteAllLines(consent, ["rider,scope,until", .. MadeSeason.Riders.Select((_, i) => $"R{i},{scope},{until}")]);
        Write("all", "2999-12-31");
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var clip = $"/clip/{season.Keys["Alder"]}";
        Assert.Equal(HttpStatusCode.OK, (await coach.GetAsync(clip)).StatusCode);
        Write("measure export", "2999-12-31");
        Assert.Equal(HttpStatusCode.NotFound, (await coach.GetAsync(clip)).StatusCode);
        Write("all", "2020-01-01");
        Assert.Equal(HttpStatusCode.NotFound, (await coach.GetAsync(clip)).StatusCode);
        Write("measure show", "");
        Assert.Equal(HttpStatusCode.OK, (await coach.GetAsync(clip)).StatusCode);
        File.Delete(consent);
        Assert.Equal(HttpStatusCode.NotFound, (await coach.GetAsync(clip)).StatusCode);
    }

    [Fact]
    public async Task FileOfOtherContent_IsNotShownForTheOneMeasured()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await File.WriteAllTextAsync(Path.Combine(season.Clips, MadeSeason.FileOf(0)), "another clip of the same name");
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        Assert.Equal(HttpStatusCode.NotFound, (await coach.GetAsync($"/clip/{season.Keys["Alder"]}")).StatusCode);
    }
}
