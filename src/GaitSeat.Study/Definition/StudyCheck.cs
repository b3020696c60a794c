using System.Globalization;
using GaitSeat.Study.DoseResponse;

namespace GaitSeat.Study.Definition;

/// <summary>One thing wrong in a study file.</summary>
/// <param name="Key">Key of the file, such as <c>exposure</c>.</param>
/// <param name="Problem">What was found and what is allowed.</param>
public sealed record StudyMistake(string Key, string Problem)
{
    public override string ToString() => $"{Key}: {Problem}";
}

/// <summary>What a study file must hold for its kind. All mistakes are found at once.</summary>
public static class StudyCheck
{
    /// <summary>Mistakes that show without data.</summary>
    public static IReadOnlyList<StudyMistake> Of(StudySettings study)
    {
        var mistakes = new List<StudyMistake>();
        if (string.IsNullOrWhiteSpace(study.Question)) mistakes.Add(new("question", "is empty; write the question in a sentence, before looking at the data"));
        if (study.Kind == StudyKind.Planning)
        {
            foreach (var count in study.RiderCounts)
                if (!int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out var riders) || riders < 2) mistakes.Add(new("rider_counts", $"'{count}' is no number of riders; whole numbers from 2 are allowed"));
            if (study.RiderCounts.Length == 0) mistakes.Add(new("rider_counts", "is empty; give one number of riders or more"));
            return mistakes;
        }

        if (study.Outcomes.Length == 0) mistakes.Add(new("outcomes", "is empty; name one column or more"));
        foreach (var twice in study.Outcomes.Concat(study.Exploratory).GroupBy(o => o).Where(g => g.Count() > 1))
            mistakes.Add(new("outcomes", $"'{twice.Key}' stands there {twice.Count()} times; once is enough"));
        foreach (var filter in study.Filters) Parse(mistakes, "filters", filter);
        if (study.Kind == StudyKind.BeforeAfter) Parse(mistakes, "after", study.After);
        if (study.Kind == StudyKind.Agreement && study.Comparator.Length == 0) mistakes.Add(new("comparator", "is empty; name the column of the second way of measuring"));
        return mistakes;
    }

    /// <summary>Mistakes against the columns there are, besides those of <see cref="Of(StudySettings)"/>.</summary>
    public static IReadOnlyList<StudyMistake> Of(StudySettings study, StudyTable table)
    {
        var mistakes = new List<StudyMistake>(Of(study));
        if (study.Kind == StudyKind.Planning || mistakes.Count > 0) return mistakes;
        foreach (var (key, column) in Numbers(study)) Number(mistakes, table, key, column);
        foreach (var (key, column) in Labels(study)) Known(mistakes, table, key, column);
        foreach (var text in study.Filters) Filter(mistakes, table, "filters", text);
        if (study.Kind == StudyKind.BeforeAfter) Filter(mistakes, table, "after", study.After);
        return mistakes;
    }

    internal static IEnumerable<(string Key, string Column)> Numbers(StudySettings study)
    {
        foreach (var outcome in study.Outcomes) yield return ("outcomes", outcome);
        foreach (var outcome in study.Exploratory) yield return ("exploratory", outcome);
        if (study.Kind == StudyKind.Agreement) yield return ("comparator", study.Comparator);
        if (study.Kind != StudyKind.DoseResponse) yield break;
        yield return ("exposure", study.Exposure);
        foreach (var column in study.Adjustment) yield return ("adjustment", column);
        if (!study.CarryMeasurementError) yield break;
        foreach (var outcome in study.Outcomes.Concat(study.Exploratory)) yield return ("carry_measurement_error", outcome + "_se");
    }

    internal static IEnumerable<(string Key, string Column)> Labels(StudySettings study)
    {
        yield return ("rider", study.Rider);
        if (study.Kind == StudyKind.Reliability || UsesSessions(study)) yield return ("session", study.Session);
        if (study.Kind == StudyKind.DoseResponse && study.Dose.Horse != HorseRole.None) yield return ("horse", study.Horse);
    }

    internal static bool UsesSessions(StudySettings study) =>
        study.Kind == StudyKind.DoseResponse && (study.Dose.Session || (study.ExposureErrorSd > 0 && study.ExposureMeasuredOncePerSession));

    private static void Parse(List<StudyMistake> mistakes, string key, string filter)
    {
        try
        {
            _ = RowFilter.Parse(filter);
        }
        catch (FormatException e)
        {
            mistakes.Add(new(key, e.Message));
        }
    }

    private static void Filter(List<StudyMistake> mistakes, StudyTable table, string key, string text)
    {
        var filter = RowFilter.Parse(text);
        Known(mistakes, table, key, filter.Column);
        if (table.Has(filter.Column) && !table.IsNumber(filter.Column) && filter.Operator[0] is '<' or '>')
            mistakes.Add(new(key, $"'{text}' asks for the size of '{filter.Column}', a column of texts"));
    }

    private static void Number(List<StudyMistake> mistakes, StudyTable table, string key, string column)
    {
        Known(mistakes, table, key, column);
        if (table.Has(column) && !table.IsNumber(column)) mistakes.Add(new(key, $"column '{column}' holds texts; a column of numbers is needed"));
    }

    private static void Known(List<StudyMistake> mistakes, StudyTable table, string key, string column)
    {
        if (!table.Has(column)) mistakes.Add(new(key, $"unknown column '{column}'; there are {string.Join(", ", table.Columns)}"));
    }
}
