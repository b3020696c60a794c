using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Queue;
using GaitSeat.Model;

namespace GaitSeat.Review.Questions;

/// <summary>The questions in the order of the queue. The order stands while the program runs: nothing moves under the judge.</summary>
public sealed class QuestionBook
{
    private readonly Lock _guard = new();
    private readonly List<Question> _questions;
    private readonly Dictionary<string, Question> _byId;
    private readonly Dictionary<(SpellKey, Fault), SpellScore> _scores;
    private readonly Dictionary<(SpellKey, Fault), Flag> _flags;
    private readonly ILookup<SpellKey, Flag> _flagsOfSpell;

    public QuestionBook(IReadOnlyList<SpellScore> scores, IReadOnlyList<Flag> flags, IReadOnlyList<QueueItem> queue)
    {
        ArgumentNullException.ThrowIfNull(scores);
        ArgumentNullException.ThrowIfNull(flags);
        ArgumentNullException.ThrowIfNull(queue);
        _scores = scores.ToDictionary(s => (s.Row.Key, s.Fault));
        _flags = flags.ToDictionary(f => (f.Score.Row.Key, f.Score.Fault));
        _flagsOfSpell = flags.ToLookup(f => f.Score.Row.Key);
        _questions = [.. queue.SelectMany(Of)];
        _byId = _questions.ToDictionary(q => q.Id, StringComparer.Ordinal);
    }

    public IReadOnlyList<Question> All
    {
        get
        {
            lock (_guard) return [.. _questions];
        }
    }

    public Question? Find(string id)
    {
        lock (_guard) return _byId.GetValueOrDefault(id);
    }

    /// <summary>Every flag of the spell, in the queue or not.</summary>
    public IEnumerable<Flag> FlagsOf(SpellKey spell) => _flagsOfSpell[spell];

    /// <summary>The question a verdict answers; one that is not in the queue any more, since it was judged before the program was started, is put at its head.</summary>
    /// <returns>Null where the run has no such spell.</returns>
    public Question? Reopen(SpellKey spell, Fault fault, Drawn drawn, bool any)
    {
        if (!_scores.TryGetValue((spell, fault), out var score)) return null;
        var question = any ? new Question(score.Row.Spell, drawn, null, null) : new(score.Row.Spell, drawn, score, _flags.GetValueOrDefault((spell, fault)));
        lock (_guard)
        {
            if (_byId.TryGetValue(question.Id, out var there)) return there;
            _questions.Insert(0, question);
            return _byId[question.Id] = question;
        }
    }

    private IEnumerable<Question> Of(QueueItem item) => item.Faults.Count == 0
        ? [new(item.Spell, item.Drawn, null, null)]
        : item.Faults.Select(f => new Question(item.Spell, item.Drawn, f, _flags.GetValueOrDefault((item.Row.Key, f.Fault))));
}
