using System.Globalization;
using GaitSeat.Study.Definition;
using GaitSeat.Study.Multiplicity;
using GaitSeat.Study.Planning;
using MathNet.Numerics;

namespace GaitSeat.Study.Answers;

/// <summary>From a study and its rows to the answers.</summary>
public static class StudyRun
{
    /// <summary>A question that needs no rows.</summary>
    /// <exception cref="ArgumentException">Of another kind, or with mistakes.</exception>
    public static StudyResult Plan(StudySettings study)
    {
        if (study.Kind != StudyKind.Planning) throw new ArgumentException($"a study of kind {study.Kind} needs rows");
        Refuse(StudyCheck.Of(study));
        int[] riders = Counts(study.RiderCounts), strides = study.StrideCounts.Length > 0 ? Counts(study.StrideCounts) : [study.Plan.StridesPerLength];
        return new(study, [], [.. strides.SelectMany(s => PowerSimulation.ByRiders(study.Plan with { StridesPerLength = s }, riders, study.Power))]);
    }

    /// <summary>One question with its rows.</summary>
    /// <inheritdoc cref="Of(IReadOnlyList{StudySettings}, Func{StudySettings, StudyTable})"/>
    public static StudyResult Of(StudySettings study, StudyTable table) => Of([study], _ => table)[0];

    /// <summary>Every outcome of every question gets an answer; one that cannot be had says why and does not stop the others. p values are adjusted over all questions together.</summary>
    /// <param name="rowsOf">The rows of a question; asked once for each that needs rows, and not kept.</param>
    /// <exception cref="ArgumentException">A question has mistakes; all of it are listed.</exception>
    public static IReadOnlyList<StudyResult> Of(IReadOnlyList<StudySettings> questions, Func<StudySettings, StudyTable> rowsOf)
    {
        var results = questions.Select(q => q.Kind == StudyKind.Planning ? Plan(q) : Answers(q, rowsOf(q))).ToArray();
        var adjusted = Adjusted([.. results.SelectMany(r => r.Answers)]);
        return [.. results.Select(r => r with { Answers = [.. r.Answers.Select(a => a with { AdjustedPValue = adjusted.GetValueOrDefault(a, double.NaN) })] })];
    }

    private static StudyResult Answers(StudySettings study, StudyTable table)
    {
        Refuse(StudyCheck.Of(study, table.Columns));
        return new(study, [.. study.Outcomes.Select(o => Answer(study, table, o, false)), .. study.Exploratory.Select(o => Answer(study, table, o, true))], []);
    }

    private static StudyAnswer Answer(StudySettings study, StudyTable table, string outcome, bool exploratory)
    {
        var rows = Select(study, table, outcome);
        try
        {
            return AnswerFactory.Of(study, table, outcome, exploratory, rows.OrThrow());
        }
        catch (StudyException e)
        {
            return new NoAnswer(outcome, exploratory, rows.Flow, e.Problem, e.Message);
        }
        catch (NonConvergenceException e)
        {
            return new NoAnswer(outcome, exploratory, rows.Flow, StudyProblem.NoConvergence, $"a search for an interval's end did not converge ({e.Message}); simplify the model, or choose another kind of interval");
        }
    }

    private static RowSelection Select(StudySettings study, StudyTable table, string outcome)
    {
        var rows = study.Filters.Aggregate(RowSelection.All(table), (r, f) => r.Keep(RowFilter.Parse(f), table));
        IEnumerable<string> needed = [outcome, .. NeededColumns.Labels(study).Select(l => l.Column), .. NeededColumns.Numbers(study).Where(n => IsShared(n.Key)).Select(n => n.Column)];
        if (study.Kind == StudyKind.DoseResponse && study.MeasurementError != CarriedError.None) needed = needed.Append(outcome + "_se");
        if (study.Kind != StudyKind.BeforeAfter) return Present(rows, needed, table);
        var rule = ChangeRule.Parse(study.After);
        rows = Present(rows, needed.Append(rule.Column), table);
        var sides = rows.Rows.Zip(rule.Sides(table, rows.Rows, rows.Take(table.Labels(study.Rider)), rows.Take(table.Labels(study.Session)))).ToDictionary(s => s.First, s => s.Second);
        return sides.ContainsValue(null) ? rows.Keep($"neither before nor after: {rule.Column} does not change in the session, or lies between its ends", r => sides[r] is not null) : rows;
    }

    private static RowSelection Present(RowSelection rows, IEnumerable<string> columns, StudyTable table) => columns.Distinct().Aggregate(rows, (r, column) => r.Present(column, table));

    private static bool IsShared(string key) => key is "exposure" or "adjustment" or "comparator";

    /// <summary>Outcomes the study was written for among themselves, and exploratory ones among themselves.</summary>
    private static Dictionary<StudyAnswer, double> Adjusted(StudyAnswer[] answers)
    {
        var adjusted = new Dictionary<StudyAnswer, double>(ReferenceEqualityComparer.Instance);
        foreach (var family in answers.Where(a => !double.IsNaN(a.PValue)).GroupBy(a => a.IsExploratory).Select(g => g.ToArray()))
            foreach (var (answer, p) in family.Zip(BenjaminiHochberg.Adjust([.. family.Select(a => a.PValue)]))) adjusted[answer] = p;
        return adjusted;
    }

    private static int[] Counts(string[] texts) => [.. texts.Select(t => int.Parse(t, CultureInfo.InvariantCulture))];

    private static void Refuse(IReadOnlyList<StudyMistake> mistakes)
    {
        if (mistakes.Count > 0) throw new ArgumentException(string.Join(Environment.NewLine, mistakes));
    }
}
