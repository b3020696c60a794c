using GaitSeat.Study.DoseResponse;

namespace GaitSeat.Study.Definition;

/// <summary>Which columns a question reads.</summary>
public static class NeededColumns
{
    /// <returns>Each column once, in the order of their first use.</returns>
    public static IReadOnlyList<string> Of(StudySettings study)
    {
        if (study.Kind == StudyKind.Planning) return [];
        var filters = study.Filters.Select(f => RowFilter.Parse(f).Column);
        IEnumerable<string> after = study.Kind == StudyKind.BeforeAfter ? [ChangeRule.Parse(study.After).Column] : [];
        return [.. Numbers(study).Select(n => n.Column).Concat(Labels(study).Select(l => l.Column)).Concat(filters).Concat(after).Distinct()];
    }

    internal static IEnumerable<(string Key, string Column)> Numbers(StudySettings study)
    {
        foreach (var outcome in study.Outcomes) yield return ("outcomes", outcome);
        foreach (var outcome in study.Exploratory) yield return ("exploratory", outcome);
        if (study.Kind == StudyKind.Agreement) yield return ("comparator", study.Comparator);
        if (study.Kind != StudyKind.DoseResponse) yield break;
        yield return ("exposure", study.Exposure);
        foreach (var column in study.Adjustment) yield return ("adjustment", column);
        if (study.MeasurementError == CarriedError.None) yield break;
        foreach (var outcome in study.Outcomes.Concat(study.Exploratory)) yield return ("measurement_error", outcome + "_se");
    }

    internal static IEnumerable<(string Key, string Column)> Labels(StudySettings study)
    {
        yield return ("rider", study.Rider);
        if (UsesSessions(study)) yield return ("session", study.Session);
        if (study.Kind == StudyKind.DoseResponse && study.Dose.Horse != HorseRole.None) yield return ("horse", study.Horse);
        if (study.Kind == StudyKind.Agreement && study.AverageOver.Length > 0) yield return ("average_over", study.AverageOver);
    }

    private static bool UsesSessions(StudySettings study) => study.Kind switch
    {
        StudyKind.Reliability or StudyKind.BeforeAfter => true,
        StudyKind.DoseResponse => study.Dose.Session || (study.ExposureErrorSd > 0 && study.ExposureMeasuredOncePerSession),
        _ => false,
    };
}
