using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>MAE and bias of each measure with true inputs swapped in, one column a swap.</summary>
public static class BudgetTable
{
    /// <param name="errors">By stage, in the order of <see cref="ErrorBudget.Stages"/>, the errors of all clips.</param>
    public static string Markdown(IReadOnlyList<IReadOnlyList<MeasureError>> errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var table = new MarkdownTable(["MAE (bias)", .. ErrorBudget.Stages.Select(s => s.Name)]);
        foreach (var measure in TrueMeasures.Known)
        {
            if (!errors.Any(stage => stage.Any(e => e.Measure == measure))) continue;
            table.Row([$"{MeasureCatalogue.Get(measure).Column}, {MeasureCatalogue.Get(measure).Unit}", .. errors.Select(stage => Cell(stage, measure))]);
        }

        table.Row(["strides matched", .. errors.Select(stage => MarkdownTable.Count(stage.Count(e => e.Measure == StrideMeasure.StrideDuration)))]);
        return table.ToString();
    }

    private static string Cell(IReadOnlyList<MeasureError> stage, StrideMeasure measure)
    {
        var sum = ErrorSummary.Of(stage.Where(e => e.Measure == measure));
        var digits = MeasureTable.Digits(measure);
        return sum.Count == 0 ? "–" : $"{MarkdownTable.Number(sum.Mae, digits)} ({MarkdownTable.Signed(sum.Bias, digits)})";
    }
}
