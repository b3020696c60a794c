using GaitSeat.Faults.Flags;
using GaitSeat.Model;
using GaitSeat.Review.Questions;

namespace GaitSeat.Review.Seasons;

/// <summary>A measure in one week of a rider.</summary>
/// <param name="Mean">
/// Mean of the spells' means. Its error is from spell to spell or, where that is larger or there is but one spell, from stride to stride; what all spells share is not in it.
/// </param>
internal sealed record WeekPoint(DateOnly Week, Measured Mean, int Spells);

/// <summary>How often a fault was flagged in one week of a rider.</summary>
/// <param name="Spells">Spells of rising trot in that week.</param>
internal sealed record WeekFault(DateOnly Week, Fault Fault, int Flagged, int Spells);

/// <summary>A change of stirrup length.</summary>
/// <param name="IsFound">Found in the strides; else told by the session sheet.</param>
internal sealed record LengthMark(DateOnly Day, bool IsFound, string Text);

/// <summary>One rider's season, of the clips that may be shown.</summary>
internal sealed class RiderSeason(string? rider, IReadOnlyList<RiddenSpell> spells, IReadOnlyList<Flag> flags, SeasonFacts facts, Func<string, bool> mayShow)
{
    private readonly RiddenSpell[] _spells = [.. spells.Where(s => s.SessionDate is not null && mayShow(s.Provenance.ClipKey))];
    private readonly ClipLine[] _clips = [.. facts.Clips.Where(c => c.Rider == rider && mayShow(c.ClipKey))];

    /// <summary>Null for clips whose sheet names no rider.</summary>
    public string? Rider => rider;

    public int Spells => _spells.Length;

    public int Strides => _spells.Sum(s => s.Strides.Count(x => x.IsTrusted));

    public int Clips => _clips.Length;

    public IEnumerable<string> ClipKeys => _clips.Select(c => c.ClipKey);

    public IEnumerable<DateOnly> Days => _spells.Select(s => s.SessionDate!.Value);

    public IReadOnlyList<WeekPoint> Of(StrideMeasure measure) =>
    [
        .. _spells.Select(s => (Week: SeasonWeek.Of(s.SessionDate!.Value), Mean: SpellMean.Of(s, measure))).Where(s => !s.Mean.IsMissing)
            .GroupBy(s => s.Week).OrderBy(g => g.Key).Select(g => new WeekPoint(g.Key, Pooled([.. g.Select(s => s.Mean)]), g.Count())),
    ];

    public IReadOnlyList<WeekFault> Faults()
    {
        var flagged = flags.Where(f => f.Spell.Rider == rider && f.Spell.SessionDate is not null && mayShow(f.Spell.Provenance.ClipKey)).ToLookup(f => (SeasonWeek.Of(f.Spell.SessionDate!.Value), f.Score.Fault));
        var ridden = _spells.GroupBy(s => SeasonWeek.Of(s.SessionDate!.Value)).OrderBy(g => g.Key).Select(g => (Week: g.Key, Spells: g.Count())).ToArray();
        return [.. flagged.Select(g => g.Key.Fault).Distinct().Order().SelectMany(f => ridden.Select(w => new WeekFault(w.Week, f, flagged[(w.Week, f)].Count(), w.Spells)))];
    }

    /// <summary>Flags of the rider that may be shown, by day.</summary>
    public IReadOnlyList<Flag> Flags => [.. flags.Where(f => f.Spell.Rider == rider && mayShow(f.Spell.Provenance.ClipKey)).OrderBy(f => f.Spell.SessionDate).ThenByDescending(f => f.Score.Probability)];

    /// <summary>The sheet's changes from one clip to the next on the same horse, and those found in the strides.</summary>
    public IReadOnlyList<LengthMark> Changes()
    {
        var told = _clips.Where(c => c.Day is not null).GroupBy(c => c.Horse)
            .SelectMany(horse => horse.Zip(horse.Skip(1)).Select(p => (p.Second.Day!.Value, p.Second.Horse, Text: Told(p.First, p.Second))).Where(c => c.Text is not null)
                .Select(c => new LengthMark(c.Value, false, $"{c.Text}{(c.Horse is null ? "" : $" on {c.Horse}")}")));
        var found = facts.Changes.Where(c => c.Rider == rider && c.Day is not null && c.ClipKeys.All(mayShow))
            .Select(c => new LengthMark(c.Day!.Value, true, FormattableString.Invariant($"stirrup {c.Direction}, found in the strides (by chance {c.ChanceProbability:0.###})")));
        return [.. told.Concat(found).OrderBy(c => c.Day).ThenBy(c => c.IsFound)];
    }

    /// <summary>By scope and reason, the most frequent first.</summary>
    public IReadOnlyList<LeftOutLine> LeftOut()
    {
        var own = _clips.Select(c => c.ClipKey).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. facts.LeftOut.Where(l => own.Contains(l.ClipKey)).GroupBy(l => (l.Scope, l.Reason)).Select(g => new LeftOutLine("", g.Key.Scope, g.Key.Reason, g.Sum(l => l.Count), g.First().Detail))
                .OrderBy(l => l.Scope, StringComparer.Ordinal).ThenByDescending(l => l.Count),
            .. _clips.Sum(c => c.OtherGaits) is > 0 and var n ? [new LeftOutLine("", "spell", "other_gait", n, "Walk, canter, sitting trot, halt or unknown: told apart, not measured.")] : Array.Empty<LeftOutLine>(),
            .. _clips.Count(c => c.Day is null) is > 0 and var without ? [new LeftOutLine("", "clip", "no_day", without, "The session sheet gives no day, so the clip is in no week.")] : Array.Empty<LeftOutLine>(),
        ];
    }

    private static string? Told(ClipLine before, ClipLine after) =>
        (before.LeatherCm, after.LeatherCm) is ({ } a, { } b) && a != b ? FormattableString.Invariant($"leather {a:0.#} to {b:0.#} cm")
        : (before.StirrupHole, after.StirrupHole) is ({ } c, { } d) && c != d ? FormattableString.Invariant($"hole {c:0.#} to {d:0.#}")
        : null;

    private static Measured Pooled(Measured[] means)
    {
        var within = Math.Sqrt(means.Sum(m => m.StandardError * m.StandardError)) / means.Length;
        if (means.Length == 1) return means[0];
        var between = SpellMean.Of([.. means.Select(m => m.Value)]);
        return between with { StandardError = double.IsFinite(within) ? Math.Max(within, between.StandardError) : between.StandardError };
    }
}
