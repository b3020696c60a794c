using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// Verdicts as a CSV: <c>clip_file, spell, fault, verdict, judge, judged_at</c> and, where wanted, <c>note</c>, <c>drawn</c> and what the tool had said (<c>told, told_probability, classifier_hash</c>, as a queue's sheet has them). Fault
/// <see cref="AllFaults"/> gives the same answer to every fault ("looked, nothing there"). Where the sheet does not tell what the tool had said, the dataset's flags do, or its findings where no flags were made yet.
/// </summary>
public static class VerdictSheet
{
    public const string AllFaults = "all";

    /// <summary>Writes a sheet for a coach to fill in: verdict, judge and judged_at are left empty.</summary>
    /// <exception cref="IOException">The file is there already, or cannot be written.</exception>
    public static void WriteToFill(string path, IEnumerable<AskedVerdict> asked)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(asked);
        using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
        using var writer = new StreamWriter(stream);
        writer.Write(string.Join(',', VerdictRow.All) + "\n");
        foreach (var a in asked) writer.Write(string.Join(',', Fields(a).Select(f => SheetWriter.Quoted(f, ','))) + "\n");
    }

    private static string[] Fields(AskedVerdict a) =>
    [
        a.ClipFile, a.SpellNumber.ToString(CultureInfo.InvariantCulture), a.Fault?.ToTerm() ?? AllFaults, "", "", "", a.Note ?? "", a.Drawn.ToTerm(),
        a.Flagged ? VerdictsTable.Flagged : VerdictsTable.NotFlagged, a.Probability?.ToString("0.0000", CultureInfo.InvariantCulture) ?? "", a.ClassifierHash ?? "",
    ];

    /// <summary>Reads and checks the whole sheet against the dataset; every error is reported. Nothing is stored: give the verdicts to <see cref="VerdictStore"/>.</summary>
    /// <param name="pipelineHash">The run that was judged; null where the dataset has one only.</param>
    /// <param name="now">A verdict later than this is refused.</param>
    /// <exception cref="DatasetException">The dataset cannot be read, or holds several runs and none was named.</exception>
    public static VerdictSheetResult Read(string path, Dataset dataset, string? pipelineHash, DateTimeOffset now)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(dataset);
        var (text, problem) = SheetText.Read(path, "verdict sheet");
        if (problem is not null) return Failed([problem]);
        if (SheetGrid.Cut(text!) is not { } grid) return Failed([new(null, null, $"'{path}' is empty; the first line must name the columns.")]);
        var header = HeaderCheck.Problems(grid, VerdictRow.Required);
        if (header.Count > 0) return Failed([.. header, .. grid.Problems]);
        return Read(grid, JudgedRun.Read(dataset, pipelineHash), now);
    }

    private static VerdictSheetResult Read(SheetGrid grid, JudgedRun run, DateTimeOffset now)
    {
        var problems = new List<SheetProblem>(grid.Problems);
        var read = new List<(int Line, Verdict Verdict)>();
        var blank = 0;
        foreach (var line in grid.Lines)
        {
            var before = problems.Count;
            var row = new VerdictRow(grid, line, problems, run, now);
            if (row.IsBlank)
            {
                blank++;
                continue;
            }

            var verdicts = row.Verdicts();
            if (problems.Count == before) read.AddRange(verdicts.Select(v => (line.Line, v)));
        }

        problems.AddRange(Contradictions(read));
        return new([.. read.Select(r => r.Verdict)], [.. problems.OrderBy(p => p.Line)], [.. Disagreements(read)], blank);
    }

    /// <summary>One judge cannot say two things at one instant; at two instants it is a change of mind.</summary>
    private static IEnumerable<SheetProblem> Contradictions(IEnumerable<(int Line, Verdict Verdict)> read) =>
        from same in read.GroupBy(r => (r.Verdict.ClipKey, r.Verdict.SpellNumber, r.Verdict.Fault, r.Verdict.Judge, r.Verdict.JudgedAt))
        let first = same.First()
        from other in same
        where other.Verdict.Answer != first.Verdict.Answer
        select new SheetProblem(other.Line, VerdictRow.Answer,
            $"found '{other.Verdict.Answer.ToTerm()}'; line {first.Line} says '{first.Verdict.Answer.ToTerm()}' of the same fault by the same judge at the same time. Give a change of mind its own, later judged_at.");

    private static IEnumerable<SheetProblem> Disagreements(IEnumerable<(int Line, Verdict Verdict)> read) =>
        from same in read.GroupBy(r => (r.Verdict.ClipFile, r.Verdict.SpellNumber, r.Verdict.Fault))
        let last = same.GroupBy(r => r.Verdict.Judge).Select(j => j.MaxBy(r => r.Verdict.JudgedAt)).Where(r => r.Verdict.Answer is VerdictAnswer.Agrees or VerdictAnswer.DoesNot).ToArray()
        where last.Select(r => r.Verdict.Answer).Distinct().Count() > 1
        select new SheetProblem(last[^1].Line, VerdictRow.Answer,
            $"{last.Length} judges differ on {same.Key.Fault.ToTerm()} in spell {same.Key.SpellNumber} of '{same.Key.ClipFile}'; all are kept, and a tie is not learnt from.");

    private static VerdictSheetResult Failed(IReadOnlyList<SheetProblem> errors) => new([], errors, [], 0);
}

/// <summary>What reading a verdict sheet gave.</summary>
/// <param name="Verdicts">Those of the lines without error, in the order of the sheet.</param>
/// <param name="Errors">All errors; nothing should be stored while there is one.</param>
/// <param name="Warnings">What is allowed and worth a look: judges who differ.</param>
/// <param name="NotJudged">Lines without verdict, judge and time: of a queue's sheet, not filled in yet.</param>
public sealed record VerdictSheetResult(IReadOnlyList<Verdict> Verdicts, IReadOnlyList<SheetProblem> Errors, IReadOnlyList<SheetProblem> Warnings, int NotJudged);

/// <summary>A line of a queue's sheet.</summary>
/// <param name="Fault">Null asks for all faults at once.</param>
public sealed record AskedVerdict(string ClipFile, int SpellNumber, Fault? Fault, string? Note, Drawn Drawn, bool Flagged, double? Probability, string? ClassifierHash);
