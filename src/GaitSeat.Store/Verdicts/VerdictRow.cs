using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>One line of a verdict sheet as verdicts; what is wrong is added to the problems.</summary>
internal sealed class VerdictRow(SheetGrid grid, SheetLine line, List<SheetProblem> problems, JudgedRun run, DateTimeOffset now)
{
    internal const string Clip = "clip_file";
    internal const string Spell = "spell";
    internal const string FaultColumn = "fault";
    internal const string Answer = "verdict";
    internal const string Judge = "judge";
    internal const string JudgedAt = "judged_at";
    internal const string DrawnColumn = "drawn";
    internal const string Note = "note";
    internal const string Told = "told";
    internal const string ToldProbability = "told_probability";
    internal const string Classifier = "classifier_hash";

    private readonly SheetRow _row = new(grid, line, problems);
    private string? _told;
    private double? _probability;

    internal static IReadOnlyList<string> Required { get; } = [Clip, Spell, FaultColumn, Answer, Judge, JudgedAt];

    /// <summary>A line of a queue's sheet that nobody has filled in yet.</summary>
    internal bool IsBlank => _row.Text(Answer) is null && _row.Text(Judge) is null && _row.Text(JudgedAt) is null;

    /// <summary>All columns, in the order a queue's sheet has them.</summary>
    internal static IReadOnlyList<string> All { get; } = [Clip, Spell, FaultColumn, Answer, Judge, JudgedAt, Note, DrawnColumn, Told, ToldProbability, Classifier];

    /// <returns>One verdict, or one for each fault; what it holds counts only where no problem was added.</returns>
    internal IReadOnlyList<Verdict> Verdicts()
    {
        var clip = ClipOf();
        var spell = SpellOf(clip);
        var faults = Faults();
        var answer = Word<VerdictAnswer>(Answer, required: true) ?? VerdictAnswer.CannotTell;
        var judge = _row.Text(Judge);
        if (judge is null) _row.Problem(Judge, "", "a pseudonym of who judged is required");
        var time = TimeOf();
        var drawn = Word<Drawn>(DrawnColumn, required: false) ?? Drawn.Chosen;
        _told = _row.OneOf(Told, [VerdictsTable.Flagged, VerdictsTable.NotFlagged], required: false);
        _probability = ProbabilityOf();
        return clip is null ? [] : [.. faults.Select(f => Make(clip, spell, f, answer, judge ?? "", time, drawn))];
    }

    private Verdict Make(JudgedClip clip, int spell, Fault fault, VerdictAnswer answer, string judge, DateTimeOffset time, Drawn drawn)
    {
        var (flagged, probability, classifier) = ToldOf() ?? run.Told(clip.ClipKey, spell, fault);
        return new(clip.ClipKey, clip.ClipFile, spell, fault, answer, judge, time, _row.Text(Note), drawn, flagged, probability, clip.PipelineHash, clip.ModelHash, classifier);
    }

    /// <summary>What the queue wrote into the sheet; null where it has nothing of it.</summary>
    private (bool Flagged, double? Probability, string? Classifier)? ToldOf() => _told is null ? null : (_told == VerdictsTable.Flagged, _probability, _row.Text(Classifier));

    private double? ProbabilityOf()
    {
        if (_row.Text(ToldProbability) is not { } text) return null;
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value <= 1) return value;
        _row.Problem(ToldProbability, text, "a number from 0 to 1 with a decimal point is allowed, or nothing");
        return null;
    }

    private JudgedClip? ClipOf()
    {
        var name = _row.ClipFile(Clip);
        if (name.Length == 0) return null;
        var clip = run.Clip(name);
        if (clip is null) _row.Problem(Clip, name, $"a clip of the dataset is allowed; it has {run.Count} of this run. Measure the clip first, or correct the name");
        return clip;
    }

    private int SpellOf(JudgedClip? clip)
    {
        var text = _row.Text(Spell);
        if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var spell))
            _row.Problem(Spell, text ?? "", "the number of a spell of the clip is required");
        else if (clip is not null && !clip.Spells.Contains(spell))
            _row.Problem(Spell, text!, clip.Spells.Count == 0 ? "the clip has no spell, so there is nothing to judge" : $"the clip has spells {string.Join(", ", clip.Spells)}");
        return spell;
    }

    private Fault[] Faults() =>
        string.Equals(_row.Text(FaultColumn), VerdictSheet.AllFaults, StringComparison.OrdinalIgnoreCase) ? Enum.GetValues<Fault>()
        : _row.OneOf(FaultColumn, [VerdictSheet.AllFaults, .. VerdictWords.All<Fault>()], required: true) is { } word ? [VerdictWords.Of<Fault>(word)!.Value]
        : [];

    private T? Word<T>(string column, bool required)
        where T : struct, Enum =>
        _row.OneOf(column, VerdictWords.All<T>(), required) is { } word ? VerdictWords.Of<T>(word) : null;

    private DateTimeOffset TimeOf()
    {
        var text = _row.Text(JudgedAt);
        if (text is null || VerdictWords.Time(text) is not { } time)
        {
            _row.Problem(JudgedAt, text ?? "", "a time with its offset such as 2026-05-31T14:05:00+02:00, or a day, is required");
            return default;
        }

        if (time > now) _row.Problem(JudgedAt, text, "a time that is past is allowed");
        return time;
    }
}
