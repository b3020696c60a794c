using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>
/// MAE and bias of each measure with true inputs swapped in, one column a swap. All columns are of the same strides, those matched in every run:
/// a true input finds or drops strides too, and errors of other strides would say nothing of the input.
/// </summary>
public static class BudgetTable
{
    /// <param name="errors">By stage, in the order of <see cref="ErrorBudget.Stages"/>, the errors of all clips.</param>
    public static string Markdown(IReadOnlyList<IReadOnlyList<MeasureError>> errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        ArgumentOutOfRangeException.ThrowIfNotEqual(errors.Count, ErrorBudget.Stages.Count);
        var shared = Shared(errors);
        var table = new MarkdownTable(["MAE (bias)", .. ErrorBudget.Stages.Select(s => s.Name)]);
        foreach (var measure in TrueMeasures.Known)
        {
            MeasureError[][] stages = [.. errors.Select(stage => stage.Where(e => e.Measure == measure && shared.Contains(Key(e))).ToArray())];
            if (stages.All(s => s.Length == 0)) continue;
            table.Row([$"{MeasureCatalogue.Get(measure).Column}, {MeasureCatalogue.Get(measure).Unit}", .. stages.Select(s => Cell(s, measure))]);
        }

        table.Row(["strides matched", .. errors.Select(stage => MarkdownTable.Count(stage.Select(Key).Distinct().Count()))]);
        return $"Of the {shared.Count} strides that every run matched. With the true yaw, strides beyond the limit of the view are set aside as they should be.\n\n{table}";
    }

    private static HashSet<(string, double)> Shared(IReadOnlyList<IReadOnlyList<MeasureError>> errors)
    {
        var shared = errors[0].Select(Key).ToHashSet();
        foreach (var stage in errors) shared.IntersectWith(stage.Select(Key));
        return shared;
    }

    private static (string, double) Key(MeasureError error) => (error.Clip, error.TrueStartSeconds);

    private static string Cell(MeasureError[] errors, StrideMeasure measure)
    {
        var sum = ErrorSummary.Of(errors);
        var digits = MeasureTable.Digits(measure);
        return sum.Count == 0 ? "–" : $"{MarkdownTable.Number(sum.Mae, digits)} ({MarkdownTable.Signed(sum.Bias, digits)})";
    }
}
