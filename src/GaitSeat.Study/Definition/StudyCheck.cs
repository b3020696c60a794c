using System.Globalization;

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
            foreach (var count in study.RiderCounts) Count(mistakes, "rider_counts", count, "riders", 2);
            foreach (var count in study.StrideCounts) Count(mistakes, "stride_counts", count, "strides", 1);
            if (study.RiderCounts.Length == 0) mistakes.Add(new("rider_counts", "is empty; give one number of riders or more"));
            return mistakes;
        }

        if (study.Outcomes.Length + study.Exploratory.Length == 0) mistakes.Add(new("outcomes", "is empty; name one column or more"));
        foreach (var twice in study.Outcomes.Concat(study.Exploratory).GroupBy(o => o).Where(g => g.Count() > 1))
            mistakes.Add(new("outcomes", $"'{twice.Key}' stands there {twice.Count()} times; once is enough"));
        foreach (var filter in study.Filters) Parse(mistakes, "filters", filter, RowFilter.Parse);
        if (study.Kind == StudyKind.BeforeAfter) Parse(mistakes, "after", study.After, ChangeRule.Parse);
        foreach (var step in study.OtherSteps)
            if (!double.TryParse(step, NumberStyles.Float, CultureInfo.InvariantCulture, out var size) || !double.IsFinite(size) || size == 0) mistakes.Add(new("other_steps", $"'{step}' is no step; numbers other than 0 are allowed"));
        if (study.Kind == StudyKind.Agreement && study.Comparator.Length == 0) mistakes.Add(new("comparator", "is empty; name the column of the second way of measuring"));
        return mistakes;
    }

    /// <summary>Mistakes against the columns there are, besides those of <see cref="Of(StudySettings)"/>.</summary>
    public static IReadOnlyList<StudyMistake> Of(StudySettings study, ColumnList columns)
    {
        var mistakes = new List<StudyMistake>(Of(study));
        if (study.Kind == StudyKind.Planning || mistakes.Count > 0) return mistakes;
        foreach (var (key, column) in NeededColumns.Numbers(study)) Number(mistakes, columns, key, column);
        foreach (var (key, column) in NeededColumns.Labels(study)) Known(mistakes, columns, key, column);
        foreach (var text in study.Filters) Sized(mistakes, columns, "filters", text, RowFilter.Parse(text).Column, RowFilter.Parse(text).Operator[0] is '<' or '>');
        if (study.Kind == StudyKind.BeforeAfter) Sized(mistakes, columns, "after", study.After, ChangeRule.Parse(study.After).Column, ChangeRule.Parse(study.After).NeedsNumbers);
        return mistakes;
    }

    private static void Parse<T>(List<StudyMistake> mistakes, string key, string text, Func<string, T> parse)
    {
        try
        {
            _ = parse(text);
        }
        catch (FormatException e)
        {
            mistakes.Add(new(key, e.Message));
        }
    }

    private static void Count(List<StudyMistake> mistakes, string key, string text, string of, int least)
    {
        if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count < least)
            mistakes.Add(new(key, $"'{text}' is no number of {of}; whole numbers from {least} are allowed"));
    }

    private static void Sized(List<StudyMistake> mistakes, ColumnList columns, string key, string text, string column, bool asksForSize)
    {
        Known(mistakes, columns, key, column);
        if (asksForSize && columns.Texts.Contains(column)) mistakes.Add(new(key, $"'{text}' asks for the size of '{column}', a column of texts"));
    }

    private static void Number(List<StudyMistake> mistakes, ColumnList columns, string key, string column)
    {
        Known(mistakes, columns, key, column);
        if (columns.Texts.Contains(column)) mistakes.Add(new(key, $"column '{column}' holds texts; a column of numbers is needed"));
    }

    private static void Known(List<StudyMistake> mistakes, ColumnList columns, string key, string column)
    {
        if (!columns.Has(column)) mistakes.Add(new(key, $"unknown column '{column}'; there are {string.Join(", ", columns.Near(column))}"));
    }
}
