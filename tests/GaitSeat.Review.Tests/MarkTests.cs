using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GaitSeat.Store;
using Microsoft.Playwright;

namespace GaitSeat.Review.Tests;

/// <summary>Marking by hand: what is kept, what is refused, and dragging in the browser.</summary>
public sealed class MarkTests(Browser browser) : IClassFixture<Browser>
{
    [Fact]
    public async Task Marks_AreInTheDatasetBesideTheToolsPoints_AndShownAgainAfterARestart()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        string id;
        await using (var site = await season.StartAsync())
        {
            using var coach = await Visitor.InsideAsync(site);
            id = await coach.FirstIdAsync();
            // Between two frames, 0.04 s apart: the nearer one is meant.
            var saved = await PostAsync(coach, new { id, timeSeconds = 0.93, began = "blind", points = new[] { new { point = "hip", x = 0.5, y = 0.4 }, new { point = "knee", x = 0.6, y = 0.4 + 0.1 * 320 / 180 } } });
            Assert.Equal(0.92, saved.GetProperty("timeSeconds").GetDouble(), 6);
            Assert.Contains(saved.GetProperty("angles").EnumerateArray(), a => a.GetString()!.StartsWith("Thigh angle by hand 45.0 deg, by the tool", StringComparison.Ordinal));
        }

        var marks = new MarkStore(Dataset.Open(season.DatasetFolder)).All();
        Assert.Equal([(HandPoint.Hip, 160.0, 72.0, false, "coach-1", 0.92), (HandPoint.Knee, 192, 104, false, "coach-1", 0.92)], marks.OrderBy(m => m.Point).Select(m => (m.Point, m.XPx, Math.Round(m.YPx, 6), m.SawTool, m.Judge, m.TimeSeconds)));
        // The made tracks are in a picture of the same size, with the hip at 160 + 4 · 5, 30 + 10 · 5.
        Assert.Equal((180, 80), (marks.Single(m => m.Point == HandPoint.Hip).ToolXPx, marks.Single(m => m.Point == HandPoint.Hip).ToolYPx));

        await using var again = await season.StartAsync();
        using var later = await Visitor.InsideAsync(again);
        var hip = (await later.JsonAsync($"/api/questions/{id}/marks?time=0.92")).GetProperty("points").EnumerateArray().Single(p => p.GetProperty("point").GetString() == "hip");
        Assert.Equal(0.5, hip.GetProperty("own").GetProperty("x").GetDouble(), 4);
        await PostAsync(later, new { id, timeSeconds = 0.92, began = "blind", points = new[] { new { point = "hip", x = (double?)null, y = (double?)null } } });
        Assert.Equal(HandPoint.Knee, Assert.Single(HandMark.Standing(new MarkStore(Dataset.Open(season.DatasetFolder)).All())).Point);
    }

    [Fact]
    public async Task WhatThePageDoesNotSend_IsRefused_AndNothingIsKept()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var id = await coach.FirstIdAsync();
        object Given(object point, double time = 1, string began = "tool") => new { id, timeSeconds = time, began, points = new[] { point } };
        object[] wrong =
        [
            Given(new { point = "ear", x = 0.5, y = 0.5 }), Given(new { point = "hip", x = 1.5, y = 0.5 }), Given(new { point = "hip", x = (double?)null, y = 0.5 }), Given(new { point = "hip", x = 0.5, y = 0.5 }, 60),
            Given(new { point = "hip", x = 0.5, y = 0.5 }, began: "guess"), new { id, timeSeconds = 1, began = "tool", points = Array.Empty<object>() }, new { id, timeSeconds = 1, began = "tool" },
            new { id, timeSeconds = 1, began = "tool", points = new[] { new { point = "hip", x = 0.1, y = 0.1 }, new { point = "hip", x = 0.2, y = 0.1 } } }, new { id, timeSeconds = "soon" },
        ];
        foreach (var given in wrong) Assert.Equal(HttpStatusCode.BadRequest, (await coach.PostAsync("/api/marks", given)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await coach.PostAsync("/api/marks", Given(new { point = "hip", x = 0.5, y = 0.5 }), r => r.Headers.Remove("Origin"))).StatusCode);
        season.WriteSheet(_ => false);
        Assert.Equal(HttpStatusCode.Gone, (await coach.PostAsync("/api/marks", Given(new { point = "hip", x = 0.5, y = 0.5 }))).StatusCode);
        Assert.Equal(HttpStatusCode.Gone, (await coach.GetAsync($"/api/questions/{id}/marks?time=1")).StatusCode);
        Assert.Empty(new MarkStore(Dataset.Open(season.DatasetFolder)).All());
    }

    [Fact]
    public async Task Handles_AreDragged_MovedByKeys_AndSaved_WhileAnswersRest()
    {
        using var season = await MadeSeason.MakeAsync();
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!);
        await tab.ShownAsync();
        await tab.Page.WaitForFunctionAsync("() => document.getElementById('video').currentTime > 0.3");
        await tab.Page.Keyboard.PressAsync("k");
        var hip = tab.Page.Locator(".handle").Nth(1);
        await hip.WaitForAsync();
        await tab.KeepAsync("mark");
        Assert.Empty(await tab.SeriousAsync());
        await tab.Page.Keyboard.PressAsync("a");
        Assert.Empty(season.Verdicts);
        var before = (await hip.BoundingBoxAsync())!;
        await tab.Page.Mouse.MoveAsync(before.X + before.Width / 2, before.Y + before.Height / 2);
        await tab.Page.Mouse.DownAsync();
        await tab.Page.Mouse.MoveAsync(before.X + before.Width / 2 + 40, before.Y + before.Height / 2 + 20, new() { Steps = 4 });
        await tab.Page.Mouse.UpAsync();
        await Assertions.Expect(hip).ToHaveClassAsync(new System.Text.RegularExpressions.Regex("moved"));
        await tab.Page.Keyboard.PressAsync("Shift+ArrowRight");
        await tab.Page.Keyboard.PressAsync("s");
        await Assertions.Expect(tab.Page.Locator("#mark-text")).ToContainTextAsync("Saved: 1 point marked");
        var mark = Assert.Single(new MarkStore(Dataset.Open(season.DatasetFolder)).All());
        Assert.Equal((HandPoint.Hip, true), (mark.Point, mark.SawTool));
        // 40 px of the screen to the right, and ten of the picture by the key.
        Assert.InRange(mark.XPx, mark.ToolXPx + 11, mark.ToolXPx + 30);
        Assert.InRange(mark.YPx, mark.ToolYPx + 1, mark.ToolYPx + 15);
        await tab.Page.Locator("#mark-back").ClickAsync();
        await Assertions.Expect(tab.Page.Locator("#mark-text")).ToContainTextAsync("taken back");
        Assert.Empty(HandMark.Standing(new MarkStore(Dataset.Open(season.DatasetFolder)).All()));
        await tab.Page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(tab.Page.Locator("#handles")).ToBeHiddenAsync();
        await tab.PressAsync("a", "agreed");
        Assert.Empty(tab.Errors);
    }

    /// <summary>From the page's marks through the file of values to the study's answer, by the program's own commands: the hand reads two degrees less than the tool.</summary>
    [Fact]
    public async Task BlindMarks_FeedAStudyOfAgreement()
    {
        const double HipX = 0.5, HipY = 0.3, ThighPx = 60, WidthPx = 320, HeightPx = 180, LessDeg = 2;
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        foreach (var question in (await coach.QuestionsAsync()).DistinctBy(q => q.GetProperty("rider").GetString()))
        {
            var id = question.GetProperty("id").GetString();
            for (var stride = 0; stride < 5; stride++)
            {
                // As the strides of the season have it: 62 degrees at the first sit, half a degree more at each.
                var (sin, cos) = Math.SinCos((62 + 0.5 * stride - LessDeg) * Math.PI / 180);
                var points = new[] { new { point = "hip", x = HipX, y = HipY }, new { point = "knee", x = HipX + ThighPx * sin / WidthPx, y = HipY + ThighPx * cos / HeightPx } };
                // One frame is marked with the tool's points in sight, which does not count as blind.
                await PostAsync(coach, new { id, timeSeconds = 0.2 + 0.7 * stride, began = stride == 4 ? "tool" : "blind", points });
            }
        }

        var (values, study, report) = (Path.Combine(season.Clips, "hand.csv"), Path.Combine(season.Clips, "agree.yaml"), Path.Combine(season.Clips, "report"));
        var taken = await Gaitseat.RunAsync("marks", "--dataset", season.DatasetFolder, "--values", values, "--blind");
        Assert.Contains("12 strides with values by hand", taken.Said, StringComparison.Ordinal);
        await File.WriteAllTextAsync(study, "{ question: Does it agree?, kind: agreement, outcomes: [thigh_angle_sit_deg], comparator: hand_thigh_angle_sit_deg, values_file: hand.csv }\n");
        var (_, said) = await Gaitseat.RunAsync("study", study, "--dataset", season.DatasetFolder, "--out", report);
        Assert.Contains("less hand_thigh_angle_sit_deg 2.0", said, StringComparison.Ordinal);
        Assert.Contains("12 pairs, 3 riders", said, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(report, "report.html")));
    }

    private static async Task<JsonElement> PostAsync(Visitor coach, object body)
    {
        var response = await coach.PostAsync("/api/marks", body);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return await response.Content.ReadFromJsonAsync<JsonElement>();
    }
}
