using GaitSeat.Faults.Verdicts;
using GaitSeat.Model;
using GaitSeat.Review.Questions;
using GaitSeat.Store;

namespace GaitSeat.Review.Verdicts;

/// <summary>One judge's answer to a question as it stands.</summary>
public sealed record StandingAnswer(VerdictAnswer Answer, IReadOnlyList<Fault> Faults, string? Note, DateTimeOffset JudgedAt);

/// <summary>
/// Takes one judge's answers into the dataset, each written to the disk before it is acknowledged. To undo is a further row, never a change of an old one.
/// Acts of the judge are kept at least a second apart, which is what the table's times tell apart.
/// </summary>
public sealed class VerdictDesk : IDisposable
{
    private readonly SemaphoreSlim _guard = new(1);
    private readonly VerdictStore _store;
    private readonly string _judge;
    private readonly TimeProvider _time;
    private IReadOnlyList<Verdict> _own = [];
    private IReadOnlyList<Verdict> _standing = [];
    private ILookup<SpellKey, Verdict> _ofSpell = Enumerable.Empty<Verdict>().ToLookup(v => default(SpellKey));

    private readonly Func<string, bool> _isErased;

    /// <param name="judge">Pseudonym of who judges.</param>
    /// <param name="isErased">Whether a clip was erased from the dataset meanwhile, by its key: an act on it is neither written nor undone, which would be a row again.</param>
    public VerdictDesk(Dataset dataset, DatasetRun run, string judge, TimeProvider time, Func<string, bool> isErased)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(judge);
        ArgumentNullException.ThrowIfNull(run);
        (_store, _judge, _time, _isErased) = (new(dataset), judge, time, isErased);
        Keep([.. _store.All().Where(v => v.Judge == judge && v.PipelineHash == run.PipelineHash && v.ModelHash == run.ModelHash)]);
    }

    public string Judge => _judge;

    /// <returns>Null where the judge has not answered. A spell drawn at random is answered by the latest act on any of its faults.</returns>
    public StandingAnswer? AnswerTo(Question question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var mine = _ofSpell[question.Spell.Key].Where(v => question.Fault is not { } f ? v.Drawn == Drawn.Random : v.Fault == f).ToArray();
        if (mine.Length == 0) return null;
        var latest = mine.Max(v => v.JudgedAt);
        var act = mine.Where(v => v.JudgedAt == latest).ToArray();
        return new(act[0].Answer, [.. act.Select(v => v.Fault)], act[0].Note, latest);
    }

    /// <summary>Writes an answer.</summary>
    /// <param name="faults">The faults it is said of: one, or all of a spell drawn at random.</param>
    /// <exception cref="DatasetException">It could not be written; nothing is acknowledged.</exception>
    public Task AnswerAsync(Question question, IReadOnlyList<Fault> faults, VerdictAnswer answer, string? note, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(question);
        var p = question.Spell.Provenance;
        return WriteAsync(
            at => [.. faults.Select(f => new Verdict(
                p.ClipKey, p.ClipFile, question.Spell.Spell.Number, f, answer, _judge, at, note, question.Drawn,
                question.Score?.IsFlagged ?? false, question.Score?.Probability, p.PipelineHash, p.ModelHash, question.Score?.ClassifierHash))],
            cancellationToken);
    }

    /// <summary>Takes the judge's latest act back, in this run of the dataset, also one of an earlier start of the program.</summary>
    /// <returns>The verdicts taken back; empty where there is nothing to undo.</returns>
    /// <exception cref="DatasetException">It could not be written; the act stands.</exception>
    public async Task<IReadOnlyList<Verdict>> UndoAsync(CancellationToken cancellationToken)
    {
        IReadOnlyList<Verdict> act = [];
        await WriteAsync(
            at =>
            {
                Verdict[] kept = [.. _standing.Where(v => !_isErased(v.ClipKey))];
                if (kept.Length == 0) return [];
                act = [.. kept.Where(v => v.JudgedAt == kept[^1].JudgedAt && v.ClipKey == kept[^1].ClipKey && v.SpellNumber == kept[^1].SpellNumber)];
                return [.. act.Select(v => v with { Answer = VerdictAnswer.Withdrawn, JudgedAt = at, Note = null })];
            },
            cancellationToken);
        return act;
    }

    public void Dispose() => _guard.Dispose();

    private async Task WriteAsync(Func<DateTimeOffset, IReadOnlyList<Verdict>> make, CancellationToken cancellationToken)
    {
        await _guard.WaitAsync(cancellationToken);
        try
        {
            var rows = make(NextTime());
            if (rows.Count == 0 || _isErased(rows[0].ClipKey)) return;
            await _store.AppendAsync(rows, cancellationToken);
            Keep([.. _own, .. rows]);
        }
        finally
        {
            _guard.Release();
        }
    }

    private void Keep(IReadOnlyList<Verdict> own)
    {
        (_own, _standing) = (own, StandingVerdicts.Of(own));
        _ofSpell = _standing.ToLookup(v => new SpellKey(v.ClipKey, v.SpellNumber));
    }

    private DateTimeOffset NextTime()
    {
        var ticks = _time.GetUtcNow().UtcTicks / TimeSpan.TicksPerSecond * TimeSpan.TicksPerSecond;
        var now = new DateTimeOffset(ticks, TimeSpan.Zero);
        var last = _own.Count == 0 ? DateTimeOffset.MinValue : _own.Max(v => v.JudgedAt);
        return now > last ? now : last.AddSeconds(1);
    }
}
