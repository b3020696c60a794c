using System.Globalization;
using GaitSeat.Study.Definition;
using GaitSeat.Study.Multiplicity;
using GaitSeat.Study.Planning;

namespace GaitSeat.Study.Answers;

/// <summary>From a study and its rows to the answers.</summary>
public static class StudyRun
{
    /// <summary>A study that needs no rows.</summary>
    /// <exception cref="ArgumentException">Of another kind, or with mistakes.</exception>
    public static StudyResult Plan(StudySettings study)
    {
        if (study.Kind != StudyKind.Planning) throw new ArgumentException($"a study of kind {study.Kind} needs rows");
        Refuse(StudyCheck.Of(study));
        int[] riders = [.. study.RiderCounts.Select(c => int.Parse(c, CultureInfo.InvariantCulture))];
        return new(study, [], PowerSimulation.ByRiders(study.Plan, riders, study.Power));
    }

    /// <summary>Every outcome gets an answer; one that cannot be had says why and does not stop the others.</summary>
    /// <exception cref="ArgumentException">The study has mistakes; all are listed.</exception>
    public static StudyResult Of(StudySettings study, StudyTable table)
    {
        if (study.Kind == StudyKind.Planning) return Plan(study);
        Refuse(StudyCheck.Of(study, table));
        var answers = study.Outcomes.Select(o => (Outcome: o, Exploratory: false)).Concat(study.Exploratory.Select(o => (Outcome: o, Exploratory: true)))
            .Select(q => Answer(study, table, q.Outcome, q.Exploratory)).ToArray();
        return new(study, [.. Adjust(answers.Where(a => !a.IsExploratory)), .. Adjust(answers.Where(a => a.IsExploratory))], []);
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
    }

    private static RowSelection Select(StudySettings study, StudyTable table, string outcome)
    {
        var rows = study.Filters.Aggregate(RowSelection.All(table), (r, f) => r.Keep(RowFilter.Parse(f), table));
        IEnumerable<string> needed = [outcome, .. StudyCheck.Labels(study).Select(l => l.Column), .. StudyCheck.Numbers(study).Where(n => IsShared(n.Key)).Select(n => n.Column)];
        if (study.Kind == StudyKind.DoseResponse && study.CarryMeasurementError) needed = needed.Append(outcome + "_se");
        if (study.Kind == StudyKind.BeforeAfter) needed = needed.Append(RowFilter.Parse(study.After).Column);
        return needed.Distinct().Aggregate(rows, (r, column) => r.Present(column, table));
    }

    private static bool IsShared(string key) => key is "exposure" or "adjustment" or "comparator";

    private static StudyAnswer[] Adjust(IEnumerable<StudyAnswer> answers)
    {
        var all = answers.ToArray();
        int[] tested = [.. Enumerable.Range(0, all.Length).Where(i => !double.IsNaN(all[i].PValue))];
        var adjusted = BenjaminiHochberg.Adjust([.. tested.Select(i => all[i].PValue)]);
        for (var k = 0; k < tested.Length; k++) all[tested[k]] = all[tested[k]] with { AdjustedPValue = adjusted[k] };
        return all;
    }

    private static void Refuse(IReadOnlyList<StudyMistake> mistakes)
    {
        if (mistakes.Count > 0) throw new ArgumentException(string.Join(Environment.NewLine, mistakes));
    }
}
