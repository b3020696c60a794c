using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GaitSeat.Faults.Verdicts;
using GaitSeat.Model;
using Microsoft.Extensions.Time.Testing;

namespace GaitSeat.Review.Tests;

/// <summary>An answer is in the dataset before it is acknowledged, and undoing adds a row.</summary>
public sealed class AnswerTests
{
    [Fact]
    public async Task Answer_IsInTheDatasetWithWhatTheToolHadSaid()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var id = await coach.FirstIdAsync();
        Assert.Equal(HttpStatusCode.OK, (await coach.PostAsync("/api/answer", new { id, answer = "does_not", note = MadeSeason.HostileNote })).StatusCode);
        var verdict = Assert.Single(season.Verdicts);
        Assert.Equal((VerdictAnswer.DoesNot, "coach-1", MadeSeason.HostileNote, Drawn.Ranked, true), (verdict.Answer, verdict.Judge, verdict.Note, verdict.Drawn, verdict.ToldFlagged!.Value));
        Assert.InRange(verdict.ToldProbability!.Value, 0.5, 1);
    }

    [Fact]
    public async Task Undo_AddsARow_AndTheEarlierAnswerHoldsAgain()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        // A clock that stands still: acts must be told apart all the same.
        await using var site = await season.StartAsync(new FakeTimeProvider(new(2026, 5, 31, 6, 0, 0, TimeSpan.Zero)));
        using var coach = await Visitor.InsideAsync(site);
        var id = await coach.FirstIdAsync();
        await coach.PostAsync("/api/answer", new { id, answer = "agrees" });
        await coach.PostAsync("/api/answer", new { id, answer = "does_not" });
        Assert.Equal(id, await UndoAsync(coach));
        Assert.Equal("agrees", await AnswerOfAsync(coach, id));
        Assert.Equal(id, await UndoAsync(coach));
        Assert.Null(await AnswerOfAsync(coach, id));
        Assert.Null(await UndoAsync(coach));
        Assert.Equal([VerdictAnswer.Agrees, VerdictAnswer.DoesNot, VerdictAnswer.Withdrawn, VerdictAnswer.Withdrawn], season.Verdicts.Select(v => v.Answer));
        Assert.Empty(StandingVerdicts.Of(season.Verdicts));
        await coach.PostAsync("/api/answer", new { id, answer = "cannot_tell" });
        Assert.Equal(VerdictAnswer.CannotTell, Assert.Single(StandingVerdicts.Of(season.Verdicts)).Answer);
    }

    [Fact]
    public async Task Restart_AsksOnlyWhatIsOpen_AndUndoReachesBack()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        string id;
        int asked;
        await using (var site = await season.StartAsync())
        {
            using var coach = await Visitor.InsideAsync(site);
            (id, asked) = (await coach.FirstIdAsync(), (await coach.QuestionsAsync()).Count);
            await coach.PostAsync("/api/answer", new { id, answer = "agrees" });
        }

        await using var again = await season.StartAsync();
        using var later = await Visitor.InsideAsync(again);
        var open = await later.QuestionsAsync();
        Assert.DoesNotContain(open, q => q.GetProperty("id").GetString() == id);
        Assert.Equal(asked - 1, open.Count);
        Assert.Equal(id, await UndoAsync(later));
        Assert.Equal(id, await later.FirstIdAsync());
        Assert.Null(await AnswerOfAsync(later, id));
    }

    [Theory]
    [InlineData("maybe", null, HttpStatusCode.BadRequest)]
    [InlineData("withdrawn", null, HttpStatusCode.BadRequest)]
    [InlineData("agrees", 2001, HttpStatusCode.BadRequest)]
    [InlineData("agrees", 2000, HttpStatusCode.OK)]
    public async Task WhatThePageDoesNotSend_IsRefused(string answer, int? noteLength, HttpStatusCode status)
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var note = noteLength is { } n ? new string('x', n) : null;
        Assert.Equal(status, (await coach.PostAsync("/api/answer", new { id = await coach.FirstIdAsync(), answer, note })).StatusCode);
        Assert.Equal(status == HttpStatusCode.OK ? 1 : 0, season.Verdicts.Count);
        Assert.Equal(HttpStatusCode.NotFound, (await coach.PostAsync("/api/answer", new { id = "no-such", answer = "agrees" })).StatusCode);
    }

    [Fact]
    public async Task HugeBody_IsRefused()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var response = await coach.PostAsync("/api/answer", new { id = await coach.FirstIdAsync(), answer = "agrees", note = new string('x', 100_000) });
        Assert.InRange((int)response.StatusCode, 400, 499);
        foreach (var path in new[] { "/api/marks", "/api/retry" }) Assert.InRange((int)(await coach.PostAsync(path, new { id = new string('x', 100_000), clipKey = new string('x', 100_000) })).StatusCode, 400, 499);
        Assert.Empty(season.Verdicts);
    }

    [Fact]
    public async Task Strip_HoldsEveryStride_AndEscapesNames()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var id = await coach.FirstIdAsync();
        var svg = System.Xml.Linq.XDocument.Parse(await (await coach.GetAsync($"/api/questions/{id}/strip?width=700")).Content.ReadAsStringAsync());
        var looks = svg.Descendants().Select(e => (string?)e.Attribute("class")).ToArray();
        Assert.Equal(5, looks.Count(l => l == "strip-top"));
        // Five strides, each with its thigh angle and its drift.
        Assert.True(looks.Count(l => l == "strip-interval") >= 10);
        Assert.Contains(svg.Descendants(), e => e.Value.StartsWith("Stirrup drift swing, % of leg", StringComparison.Ordinal));
        Assert.Equal("700", (string?)svg.Root!.Attribute("width"));
        var tracks = await coach.JsonAsync($"/api/questions/{id}/tracks");
        Assert.Equal(tracks.GetProperty("timeSeconds").GetArrayLength(), tracks.GetProperty("points").GetArrayLength());
        Assert.All(tracks.GetProperty("points")[0].EnumerateArray(), v => Assert.InRange(v.GetDouble(), 0, 1));
    }

    private static async Task<string?> UndoAsync(Visitor coach) =>
        (await (await coach.PostAsync("/api/undo", new { })).Content.ReadFromJsonAsync<JsonElement>()).GetProperty("id").GetString();

    private static async Task<string?> AnswerOfAsync(Visitor coach, string id) =>
        (await coach.JsonAsync($"/api/questions/{id}")).GetProperty("answer") is { ValueKind: JsonValueKind.Object } a ? a.GetProperty("answer").GetString() : null;
}
