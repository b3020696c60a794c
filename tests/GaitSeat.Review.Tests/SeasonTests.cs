using System.Net;
using System.Text.Json;
using System.Xml.Linq;
using GaitSeat.Faults;
using GaitSeat.Faults.Features;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Training;
using GaitSeat.Model;
using GaitSeat.Review.Seasons;
using Microsoft.Playwright;

namespace GaitSeat.Review.Tests;

/// <summary>The season screen: weeks, intervals, changes of stirrup length, what was left out, and consent.</summary>
public sealed class SeasonTests(Browser browser) : IClassFixture<Browser>
{
    [Theory]
    [InlineData("2026-05-04", "2026-05-04")]
    [InlineData("2026-05-10", "2026-05-04")]
    [InlineData("2026-05-11", "2026-05-11")]
    public void Week_BeginsOnMonday(string day, string monday) => Assert.Equal(Day(monday), SeasonWeek.Of(Day(day)));

    [Fact]
    public void Week_WithSeveralSpells_HasTheErrorFromSpellToSpell()
    {
        // Spells of one rider, two in the week of 4 May and one four weeks later; within a spell strides go from 62 to 64 degrees.
        RiddenSpell[] spells = [On(MadeSeason.Spell(0), "2026-05-05", 0), On(MadeSeason.Spell(200), "2026-05-07", 6), On(MadeSeason.Spell(400), "2026-06-02", 0)];
        var points = Rider(spells, new([], [], []), _ => true).Of(StrideMeasure.ThighAngleSit);
        Assert.Equal([(Day("2026-05-04"), 2), (Day("2026-06-01"), 1)], points.Select(p => (p.Week, p.Spells)));
        Assert.Equal(66, points[0].Mean.Value, 9);
        // Means 63 and 69: their standard deviation is 3 √2, that of the mean of both 3.
        Assert.Equal(3, points[0].Mean.StandardError, 9);
        // 62, 62.5, 63, 63.5, 64: standard deviation 0.790569, over √5.
        Assert.Equal(0.790569 / Math.Sqrt(5), points[1].Mean.StandardError, 6);
        Assert.Equal(5, SeasonWeek.Span(points.Select(p => p.Week)).Count);
    }

    [Fact]
    public void Faults_AreCountedByWeek_AgainstTheSpellsRidden()
    {
        RiddenSpell[] spells = [On(MadeSeason.Spell(0), "2026-05-05", 0), On(MadeSeason.Spell(200), "2026-05-07", -25), On(MadeSeason.Spell(400), "2026-06-02", -25)];
        var faults = Rider(spells, new([], [], []), _ => true).Faults().Where(f => f.Fault == Fault.StirrupShort);
        Assert.Equal([(Day("2026-05-04"), 1, 2), (Day("2026-06-01"), 0, 1)], faults.Select(f => (f.Week, f.Flagged, f.Spells)));
    }

    [Fact]
    public void Changes_AreTheSheetsAndThoseFound_OnTheSameHorseOnly()
    {
        ClipLine Clip(int n, string horse, string day, double? leather) => new(n.ToString("x64", null), $"clip-{n}.mp4", "R0", horse, Day(day), leather, null, false, null, null, 0);
        var facts = new SeasonFacts(
            [Clip(1, "H1", "2026-05-04", 50), Clip(2, "H2", "2026-05-11", 47), Clip(3, "H1", "2026-05-18", 50), Clip(4, "H1", "2026-05-25", 52.5), Clip(5, "H1", "2026-06-01", null)],
            [],
            [new([4.ToString("x64", null)], "R0", Day("2026-05-25"), "longer", 0.002), new([4.ToString("x64", null), 2.ToString("x64", null)], "R0", Day("2026-05-11"), "shorter", 0.01)]);
        Assert.Equal(
            ["2026-05-25 leather 50 to 52.5 cm on H1", "2026-05-25 stirrup longer, found in the strides (by chance 0.002)"],
            Rider([], facts, key => key != 2.ToString("x64", null)).Changes().Select(c => $"{c.Day:yyyy-MM-dd} {c.Text}"));
    }

    [Fact]
    public async Task Rider_IsShownWithPicturesAndWhatWasLeftOut_AndNotWithoutConsent()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var page = await coach.JsonAsync("/api/season");
        var riders = page.GetProperty("riders").EnumerateArray().ToArray();
        Assert.Equal(["Alder", "Birch <b>", "Cedar"], riders.Select(r => r.GetProperty("name").GetString()));
        Assert.Equal(1, page.GetProperty("hidden").GetInt32());
        var rider = await coach.JsonAsync($"/api/season/{riders[1].GetProperty("number").GetInt32()}?width=240");
        var panels = rider.GetProperty("panels").EnumerateArray().ToArray();
        Assert.Equal(SeasonBook.Measures.Count + 1, panels.Length);
        var thigh = XDocument.Parse(panels[0].GetProperty("svg").GetString()!);
        Assert.Single(thigh.Descendants(), e => (string?)e.Attribute("class") == "strip-value");
        Assert.Single(thigh.Descendants(), e => (string?)e.Attribute("class") == "strip-interval");
        Assert.Contains("27 Apr 63 ± 0.7", panels[0].GetProperty("words").GetString(), StringComparison.Ordinal);
        Assert.Contains("2 strides, hole in points", Assert.Single(rider.GetProperty("leftOut").EnumerateArray()).GetString(), StringComparison.Ordinal);
        Assert.Contains(rider.GetProperty("findings").EnumerateArray(), f => f.GetProperty("label").GetString() == "Stirrup short" && f.GetProperty("id").ValueKind == JsonValueKind.String);
        season.WriteSheet(_ => false);
        Assert.Equal(HttpStatusCode.NotFound, (await coach.GetAsync($"/api/season/{riders[1].GetProperty("number").GetInt32()}")).StatusCode);
        Assert.Empty((await coach.JsonAsync("/api/season")).GetProperty("riders").EnumerateArray());
        foreach (var number in new[] { "-1", "99999", "x" }) Assert.Equal(HttpStatusCode.NotFound, (await coach.GetAsync($"/api/season/{number}")).StatusCode);
    }

    [Theory]
    [InlineData(1440, 900, ColorScheme.Light)]
    [InlineData(390, 844, ColorScheme.Dark)]
    public async Task Screen_ShowsEveryRider_AndLeadsToTheQuestion(int width, int height, ColorScheme colours)
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!, width, height, colours);
        await tab.GoAsync("/season");
        await Assertions.Expect(tab.Page.Locator(".rider-row")).ToHaveCountAsync(3);
        await tab.Page.Locator(".rider-row .strip-value").First.WaitForAsync();
        await Assertions.Expect(tab.Page.Locator(".rider-name").Nth(1)).ToHaveTextAsync("Birch <b>");
        await tab.KeepAsync($"season-{width}");
        Assert.Empty(await tab.SeriousAsync());
        Assert.True(await tab.FitsAcrossAsync(), "The page is wider than the screen.");
        await tab.Page.Locator(".rider-words summary").First.ClickAsync();
        await tab.Page.Locator(".plain a").First.ClickAsync();
        await tab.ShownAsync();
        Assert.Contains("Alder", await tab.Page.Locator("#who").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(tab.Errors);
    }

    private static RiderSeason Rider(RiddenSpell[] spells, SeasonFacts facts, Func<string, bool> mayShow)
    {
        var flagger = new Flagger(new Dictionary<Fault, FaultModel>(), new RuleSettings(), new FlagSettings());
        return new("R0", spells, flagger.Flag(flagger.Score(FeatureTable.Of(spells, new()))), facts, mayShow);
    }

    private static RiddenSpell On(RiddenSpell spell, string day, double moreThighDeg) => MadeSeason.WithThigh(spell with { SessionDate = Day(day) }, value => value + moreThighDeg);

    private static DateOnly Day(string day) => DateOnly.ParseExact(day, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
