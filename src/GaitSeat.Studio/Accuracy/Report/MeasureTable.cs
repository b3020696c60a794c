using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>Errors of each measure, one row a measure or a group.</summary>
internal static class MeasureTable
{
    public static string AllMeasures(Selection selection)
    {
        var table = New("measure");
        foreach (var measure in TrueMeasures.Known)
        {
            var definition = MeasureCatalogue.Get(measure);
            Row(table, $"{definition.Column}, {definition.Unit}", selection, measure);
        }

        return table.ToString();
    }

    public static MarkdownTable New(string rows) => new(
        rows, "n", "clips", "bias", "MAE", "95th pct", "limits of agreement", "MAE, % of truth", "95 % interval holds", "median half width", "width over need", "not trusted: n", "their MAE");

    /// <summary>Adds a row; none where nothing was measured.</summary>
    public static void Row(MarkdownTable table, string name, Selection selection, StrideMeasure measure)
    {
        var (sum, untrusted) = (ErrorSummary.Of(selection.Errors(measure)), ErrorSummary.Of(selection.Untrusted(measure)));
        if (sum.Count + untrusted.Count == 0) return;
        var digits = Digits(measure);
        string Value(double value) => MarkdownTable.Number(value, digits);
        string Signed(double value) => MarkdownTable.Signed(value, digits);
        table.Row(
            name,
            MarkdownTable.Count(sum.Count),
            MarkdownTable.Count(sum.Clips),
            Signed(sum.Bias),
            Value(sum.Mae),
            Value(sum.P95),
            $"{Signed(sum.Limits.Lower)} to {Signed(sum.Limits.Upper)}",
            MarkdownTable.Number(sum.MaePct, "0.0"),
            MarkdownTable.Number(sum.HeldPct, "0.0") + " %",
            Value(sum.MedianHalfWidth),
            MarkdownTable.Number(sum.Sharpness, "0.00"),
            MarkdownTable.Count(untrusted.Count),
            Value(untrusted.Mae));
    }

    /// <summary>Three figures after the point for what is small (s, cm/px), two for the rest.</summary>
    public static string Digits(StrideMeasure measure) => MeasureCatalogue.Get(measure).Unit is "s" or "cm/px" ? "0.000" : "0.00";
}
