using System.Net;
using GaitSeat.Faults;
using GaitSeat.Faults.Features;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Training;
using GaitSeat.Model;
using GaitSeat.Review.Questions;
using Microsoft.Playwright;

namespace GaitSeat.Review.Tests;

/// <summary>Two clips beside each other: which are offered, which strides are laid on which, and that the sits fall together in the browser.</summary>
public sealed class BesideTests(Browser browser) : IClassFixture<Browser>
{
    [Fact]
    public void Offered_AreTheRidersOwnSpellsByDay_ThenOthersWithTheFewestFlags()
    {
        // R0 rides clips 0, 200 and 400, on days 0, 20 and 40 of the season; the last clip of R1 sits with a thigh that is not short.
        RiddenSpell[] spells = [MadeSeason.Spell(0), MadeSeason.Spell(200), MadeSeason.Spell(400), MadeSeason.Spell(1), MadeSeason.WithThigh(MadeSeason.Spell(201), _ => 42)];
        var flagger = new Flagger(new Dictionary<Fault, FaultModel>(), new RuleSettings(), new FlagSettings());
        var scores = flagger.Score(FeatureTable.Of(spells, new()));
        var flags = flagger.Flag(scores);
        var choices = new BesideChoices(spells, scores, flags);
        var score = scores.First(s => s.Row.Key == spells[1].Key && s.Fault == Fault.StirrupShort);
        var question = new Question(spells[1], Drawn.Ranked, score, flags.First(f => f.Score == score));
        var offered = choices.Of(question, StrideMeasure.ThighAngleSit, _ => true);
        Assert.Equal(
            [(BesideKind.Earlier, spells[0].Key), (BesideKind.Later, spells[2].Key), (BesideKind.Best, spells[4].Key)],
            offered.Select(b => (b.Kind, b.Spell.Key)));
        Assert.Equal(42, offered[^1].Mean.Value, 6);
        Assert.Equal([BesideKind.Best], choices.Of(question, StrideMeasure.ThighAngleSit, key => key == spells[3].Provenance.ClipKey).Select(b => b.Kind));
        Assert.Empty(choices.Of(question, StrideMeasure.HandTravelCm, _ => true));
    }

    [Fact]
    public void Strides_AreLaidSitOnSit_WithoutTheHole()
    {
        var spell = MadeSeason.Spell(0);
        // The third stride was dropped: the runs are of two strides each.
        var other = MadeSeason.Spell(1) with { Strides = [.. spell.Strides.Where(s => s.Number != 3).Select(s => s with { StartSeconds = s.StartSeconds * 2, EndSeconds = s.EndSeconds * 2 })] };
        var pairs = StridePairs.Of(new(spell, Drawn.Ranked, null, null), other);
        Assert.Equal(2, pairs.Count);
        Assert.All(pairs.Zip(spell.Strides), p => Assert.Equal((p.Second.StartSeconds, p.Second.StartSeconds * 2), (p.First.OwnStartSeconds, p.First.OtherStartSeconds)));
        Assert.Empty(StridePairs.Of(new(spell, Drawn.Ranked, null, null), other with { Strides = [] }));
    }

    [Fact]
    public async Task SpellOfAClipWithoutConsent_IsNeitherOfferedNorShown()
    {
        using var season = await MadeSeason.MakeAsync(withClips: false);
        await using var site = await season.StartAsync();
        using var coach = await Visitor.InsideAsync(site);
        var id = await coach.FirstIdAsync();
        var lines = (await coach.JsonAsync($"/api/questions/{id}/beside")).GetProperty("lines").EnumerateArray().ToArray();
        Assert.Equal(2, lines.Length);
        Assert.DoesNotContain(lines, l => l.GetProperty("rider").GetString() == MadeSeason.WithoutConsent);
        Assert.Equal(HttpStatusCode.OK, (await coach.GetAsync($"/api/questions/{id}/beside/{lines[0].GetProperty("id").GetString()}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await coach.GetAsync($"/api/questions/{id}/beside/{season.Keys[MadeSeason.WithoutConsent]}-1")).StatusCode);
    }

    [Fact]
    public async Task Sits_FallTogether()
    {
        using var season = await MadeSeason.MakeAsync();
        await using var site = await season.StartAsync();
        await using var tab = await browser.OpenAsync(site.Link!);
        await tab.ShownAsync();
        await tab.Page.Keyboard.PressAsync("b");
        await Assertions.Expect(tab.Page.Locator("#beside-name")).ToContainTextAsync("thigh angle at the sit 63");
        await tab.Page.WaitForFunctionAsync("() => document.getElementById('beside-video').currentTime > 0.4 && document.getElementById('beside-overlay').dataset.drawn === 'true'");
        await tab.KeepAsync("beside");
        // From frame to frame the second clip stands at the same part of its stride; the strides of the two are alike here.
        await tab.Page.Keyboard.PressAsync(".");
        await tab.Page.Keyboard.PressAsync(".");
        await tab.Page.WaitForFunctionAsync("() => { const [a, b] = ['video', 'beside-video'].map((i) => document.getElementById(i)); return a.paused && b.paused && !a.seeking && !b.seeking && Math.abs(a.currentTime - b.currentTime) < 0.03; }");
        var first = await tab.Page.Locator("#beside-name").InnerTextAsync();
        await tab.Page.Keyboard.PressAsync("v");
        await Assertions.Expect(tab.Page.Locator("#beside-name")).Not.ToHaveTextAsync(first);
        await tab.Page.Keyboard.PressAsync("b");
        await Assertions.Expect(tab.Page.Locator("#beside-half")).ToBeHiddenAsync();
        Assert.Empty(tab.Errors);
    }
}
