using System.Collections.Concurrent;
using System.Globalization;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Review.Clips;
using GaitSeat.Review.Pictures;
using GaitSeat.Review.Questions;
using GaitSeat.Review.Verdicts;
using GaitSeat.Store;
using Microsoft.AspNetCore.Http;

namespace GaitSeat.Review.Web;

/// <summary>Puts together what the screen shows from book, desk, shelf and tracks.</summary>
internal sealed class Desk
{
    private const int TracksKept = 8;
    private readonly ReviewSeason _season;
    private readonly MeasureChoice _measures;
    private readonly RiderHistory _history;
    private readonly BesideChoices _beside;
    private readonly ConcurrentDictionary<string, Lazy<MotionTrace?>> _tracks = new(StringComparer.Ordinal);

    internal Desk(ReviewSeason season, ClipShelf shelf, VerdictDesk verdicts)
    {
        (_season, Shelf, Verdicts) = (season, shelf, verdicts);
        Book = new(season.Scores, season.Flags, season.Queue);
        _measures = new(season.Scores);
        _history = new(season.Spells);
        _beside = new(season.Spells, season.Scores, season.Flags);
    }

    internal QuestionBook Book { get; }

    internal ClipShelf Shelf { get; }

    internal VerdictDesk Verdicts { get; }

    internal ReviewSeason Season => _season;

    internal QueuePage Page(int from, int count)
    {
        var all = Book.All;
        var shown = Shown(all);
        var open = shown.FirstOrDefault(q => Verdicts.AnswerTo(q) is null);
        return new(
            shown.Count, shown.Count(q => Verdicts.AnswerTo(q) is not null), all.Count(q => !Shelf.IsErased(q.Spell.Provenance.ClipKey)) - shown.Count, open?.Id,
            [.. shown.Skip(from).Take(count).Select((q, i) => new QueueLine(q.Id, from + i + 1, q.Spell.Rider, TitleOf(q), q.Drawn.ToTerm(), Verdicts.AnswerTo(q)?.Answer.ToTerm()))]);
    }

    /// <returns>The question, where nothing stands against showing it; else null.</returns>
    internal Question? Find(string id) => Book.Find(id) is { } question && Shelf.Refusal(question.Spell.Provenance.ClipKey) is null ? question : null;

    /// <summary>Says why <see cref="Find"/> gives nothing. Gone is what may not be shown any more: the page then leaves what it shows.</summary>
    internal Task RefuseAsync(HttpContext context, string id) => Book.Find(id) is { } question && Shelf.Refusal(question.Spell.Provenance.ClipKey) is { } refusal
        ? Guard.RefuseAsync(context, StatusCodes.Status410Gone, refusal)
        : Guard.RefuseAsync(context, StatusCodes.Status404NotFound, "There is no such question.");

    internal async Task<ShownQuestion> ShowAsync(Question question, CancellationToken cancellationToken)
    {
        var shown = Shown(Book.All);
        var at = shown.FindIndex(q => q.Id == question.Id);
        var clip = await ClipOfAsync(question.Spell, cancellationToken);
        // The next clip's file is checked while this one is watched, so that it is there at the key.
        if (at >= 0 && at + 1 < shown.Count) _ = Shelf.FindAsync(shown[at + 1].Spell.Provenance.ClipKey, CancellationToken.None);
        var measure = _measures.Of(question);
        return new(
            question.Id, at + 1, shown.Count, shown.Count(q => Verdicts.AnswerTo(q) is not null),
            at > 0 ? shown[at - 1].Id : null, at + 1 < shown.Count ? shown[at + 1].Id : null,
            clip, SpellOf(question), question.Fault?.ToTerm(), TitleOf(question),
            question.Fault is null ? "Is there any fault?" : "Is it there?",
            question.Fault is null ? [.. Enum.GetValues<Fault>().Select(f => new FaultChoice(f.ToTerm(), Labels.Of(f)))] : [],
            new(Reasons.Why(question), Reasons.Rule(question), Reasons.Model(question)),
            HistoryText(question, measure), OthersOf(question), CardOf(question), AnswerOf(question));
    }

    internal string Strip(Question question, int widthPx) => StripPicture.Draw(question, TraceOf(question.Spell), _measures.Of(question), LimitOf(question), widthPx);

    internal string History(Question question, int widthPx) =>
        HistoryPicture.Draw(Past(question, _measures.Of(question)), question.Spell.Key, LimitOf(question), widthPx);

    /// <summary>Tracks of the spell for the overlay; null where the run kept none.</summary>
    internal OverlayTrack? Overlay(RiddenSpell spell)
    {
        var facts = Shelf.Facts(spell.Provenance.ClipKey);
        if (facts is null or { WidthPx: <= 0 } or { HeightPx: <= 0 } || TraceOf(spell) is not { } trace) return null;
        var (width, height) = FrameReader.AnalysisSize(facts.WidthPx, facts.HeightPx, _season.Read);
        return OverlayTrack.Of(trace, spell.Spell, width, height);
    }

    /// <summary>What the spell may be looked at beside of.</summary>
    internal BesideList Beside(Question question)
    {
        var measure = _measures.Of(question);
        var own = SpellMean.Of(question.Spell, measure.Measure);
        return new(Labels.Of(measure), Labels.Unit(measure), Labels.Value(own), [.. BesideOf(question, measure).Select(b => new BesideLine(
            b.Id, b.Kind switch { BesideKind.Earlier => "earlier", BesideKind.Later => "later", _ => "best" }, b.Spell.Rider, Day(b.Spell), Labels.Value(b.Mean)))]);
    }

    /// <returns>Null where there is no such spell to look at beside, or it may not be shown.</returns>
    internal async Task<ShownBeside?> BesideAsync(Question question, string id, CancellationToken cancellationToken)
    {
        if (BesideOf(question, _measures.Of(question)).FirstOrDefault(b => b.Id == id) is not { } beside) return null;
        var isMirrored = (question.Spell.Spell.Facing, beside.Spell.Spell.Facing) is (Facing.Left, Facing.Right) or (Facing.Right, Facing.Left);
        return new(await ClipOfAsync(beside.Spell, cancellationToken), StridePairs.Of(question, beside.Spell), isMirrored, Overlay(beside.Spell));
    }

    private IReadOnlyList<BesideSpell> BesideOf(Question question, MeasureDefinition measure) => _beside.Of(question, measure.Measure, key => Shelf.Refusal(key) is null);

    /// <summary>Signals and points of the spell's clip; null where the run kept none.</summary>
    internal MotionTrace? TraceOf(RiddenSpell spell)
    {
        var key = spell.Provenance.ClipKey;
        if (_tracks.Count > TracksKept) _tracks.Clear();
        return _tracks.GetOrAdd(key, k => new(() => TrackReader.Read(_season.Dataset, _season.Run, k))).Value;
    }

    private List<Question> Shown(IReadOnlyList<Question> all)
    {
        var refused = new Dictionary<string, bool>(StringComparer.Ordinal);
        bool IsShown(string key) => refused.TryGetValue(key, out var known) ? known : refused[key] = Shelf.Refusal(key) is null;
        return [.. all.Where(q => IsShown(q.Spell.Provenance.ClipKey))];
    }

    private async Task<ShownClip> ClipOfAsync(RiddenSpell spell, CancellationToken cancellationToken)
    {
        var key = spell.Provenance.ClipKey;
        var file = await Shelf.FindAsync(key, cancellationToken);
        var facts = Shelf.Facts(key)!;
        return new($"/clip/{key}", file.Refusal, facts.WidthPx, facts.HeightPx, double.IsFinite(facts.FrameRateHz) ? facts.FrameRateHz : null, TraceOf(spell) is not null);
    }

    private static ShownSpell SpellOf(Question question)
    {
        var s = question.Spell;
        return new(
            s.Rider, s.Horse, Day(s), s.Rein, s.Spell.Number, s.Spell.StartSeconds, s.Spell.EndSeconds,
            question.StartSeconds, question.EndSeconds, [.. s.Strides.SelectMany(x => new[] { x.StartSeconds, x.EndSeconds }).Distinct().Order()]);
    }

    private static string? Day(RiddenSpell spell) => spell.SessionDate?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string TitleOf(Question question) => question.Fault is { } fault ? Labels.Of(fault) : "Not flagged";

    private static double? LimitOf(Question question) => question.Score?.Rule is { Threshold: var limit } && double.IsFinite(limit) ? limit : null;

    private IReadOnlyList<HistoryPoint> Past(Question question, MeasureDefinition measure) =>
        [.. _history.Of(question.Spell, measure.Measure).Where(p => Shelf.Refusal(p.Spell.ClipKey) is null)];

    private string HistoryText(Question question, MeasureDefinition measure)
    {
        var past = Past(question, measure);
        var others = past.Where(p => p.Spell != question.Spell.Key).Select(p => p.Mean.Value).Order().ToArray();
        if (past.Count == 0) return $"{Labels.Of(measure)}: no history; the session sheet names no rider or day, or it was not measured.";
        return others.Length == 0
            ? $"{Labels.Of(measure)}, {Labels.Unit(measure)}: this is the rider's only spell so far."
            : string.Create(CultureInfo.InvariantCulture, $"{Labels.Of(measure)}, {Labels.Unit(measure)}: {others.Length} other spells of this rider, median {(others[(others.Length - 1) / 2] + others[others.Length / 2]) / 2:0.#}, from {others[0]:0.#} to {others[^1]:0.#}. Filled: this spell; bars: 95 % from stride to stride alone, what all share is not in them.");
    }

    private IReadOnlyList<OtherFinding> OthersOf(Question question) =>
        [.. Book.FlagsOf(question.Spell.Key).Where(f => f.Score.Fault != question.Fault).OrderByDescending(f => f.Score.Probability)
            .Select(f => new OtherFinding(Labels.Of(f.Score.Fault), Reasons.Of(f), Book.Find(new Question(question.Spell, question.Drawn, f.Score, f).Id)?.Id))];

    private ShownCard? CardOf(Question question) =>
        question.Fault is { } fault && _season.Cards.TryGetValue(fault, out var card) ? new(card.Title, [.. card.Sections.Select(s => new CardSection(s.Key, s.Value))]) : null;

    private ShownAnswer? AnswerOf(Question question) => Verdicts.AnswerTo(question) is { } a
        ? new(a.Answer.ToTerm(), question.Fault is null && a.Answer == VerdictAnswer.Agrees ? string.Join(", ", a.Faults.Select(Labels.Of)) : "", a.Note, a.JudgedAt.ToString("yyyy-MM-dd HH:mm:ss 'UTC'", CultureInfo.InvariantCulture))
        : null;
}
