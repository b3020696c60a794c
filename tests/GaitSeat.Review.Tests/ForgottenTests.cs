using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GaitSeat.Cli;
using GaitSeat.Store;

namespace GaitSeat.Review.Tests;

/// <summary>A rider who is forgotten while the page is open: the next request gets a clear word, nothing more is shown, and nothing is written of them again.</summary>
public sealed class ForgottenTests
{
    private const string Rider = "Alder";

    [Fact]
    public async Task OpenPage_LetsGoOfTheRider()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var key = season.Keys[Rider];
        var id = (await coach.QuestionsAsync()).First(q => q.GetProperty("rider").GetString() == Rider).GetProperty("id").GetString()!;
        await coach.PostAsync("/api/answer", new { id, answer = "agrees" });
        var (code, said) = await Gaitseat.RunAsync("forget", Rider, "--dataset", season.DatasetFolder, "--yes");
        Assert.True(code == ExitCodes.Done, said);

        var gone = await coach.GetAsync($"/api/questions/{id}");
        Assert.Equal(HttpStatusCode.Gone, gone.StatusCode);
        Assert.Contains("erased from the dataset since the page was opened", (await gone.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await coach.GetAsync($"/clip/{key}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await coach.PostAsync("/api/copy", new { clipKey = key })).StatusCode);
        Assert.Equal(HttpStatusCode.Gone, (await coach.PostAsync("/api/answer", new { id, answer = "does_not" })).StatusCode);
        Assert.Equal(HttpStatusCode.Gone, (await coach.PostAsync("/api/marks", new { id, timeSeconds = 1, began = "tool", points = new[] { new { point = "hip", x = 0.5, y = 0.5 } } })).StatusCode);
        foreach (var path in new[] { "/api/queue", "/api/season", "/api/run" }) Assert.DoesNotContain(Rider, (await coach.JsonAsync(path)).GetRawText(), StringComparison.Ordinal);
        // Not even that an answer is taken back becomes a row of them again.
        var undone = await (await coach.PostAsync("/api/undo", new { })).Content.ReadFromJsonAsync<JsonElement>();
        Assert.Equal("There is nothing to undo.", undone.GetProperty("text").GetString());
        Assert.Empty(season.Verdicts);
        Assert.Contains("the rider was forgotten", (await Gaitseat.RunAsync("forget", Rider, "--dataset", season.DatasetFolder)).Said, StringComparison.Ordinal);
    }
}
