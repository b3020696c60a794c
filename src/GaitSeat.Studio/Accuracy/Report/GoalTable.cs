using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>The goals of the project beside what was reached.</summary>
public static class GoalTable
{
    private const double Percent = 100, Milliseconds = 1000;

    /// <summary>The measures that have a goal of their own.</summary>
    public static IReadOnlyList<StrideMeasure> Measures { get; } =
        [StrideMeasure.StrideDuration, StrideMeasure.RiseHeightCm, StrideMeasure.ThighAngleSit, StrideMeasure.StirrupDriftSwingCm, StrideMeasure.StirrupDriftOffsetCm];

    private static readonly Goal[] All =
    [
        new("stride precision", "0.000", AtLeast(0.99), AtLeast(0.95), s => [s.Precision]),
        new("stride recall", "0.000", AtLeast(0.99), AtLeast(0.95), s => [s.Recall]),
        new("stride duration, MAE, ms", "0.0", AtMost(10), AtMost(20), s => [Milliseconds * Of(s, StrideMeasure.StrideDuration).Mae]),
        new("thigh angle at sit, MAE, deg", "0.00", AtMost(2.0), AtMost(3.5), s => [Of(s, StrideMeasure.ThighAngleSit).Mae]),
        new("thigh angle at sit, bias, deg", "0.00", Within(1.0), null, s => [Of(s, StrideMeasure.ThighAngleSit).Bias]),
        new("rise height, MAE, cm", "0.00", AtMost(1.0), AtMost(1.8), s => [Of(s, StrideMeasure.RiseHeightCm).Mae]),
        new("rise height, bias, cm", "0.00", Within(0.5), null, s => [Of(s, StrideMeasure.RiseHeightCm).Bias]),
        new("drift swing, MAE, cm", "0.00", AtMost(1.5), AtMost(2.5), s => [Of(s, StrideMeasure.StirrupDriftSwingCm).Mae]),
        new("drift offset, MAE, cm", "0.00", AtMost(2.0), AtMost(3.5), s => [Of(s, StrideMeasure.StirrupDriftOffsetCm).Mae]),
        new("95 % intervals hold, these five measures, %", "0.0", new(90, 98), new(88, 99), s => Held(s, Measures)),
        new("95 % intervals hold, every measure, %", "0.0", new(90, 98), new(88, 99), s => Held(s, TrueMeasures.Known)),
        new("gait of spells, share right", "0.000", AtLeast(0.97), AtLeast(0.92), s => [s.GaitRight]),
        new("false trot strides a minute without rising trot", "0.00", AtMost(0), AtMost(1), s => [s.FalseTrotStridesPerMinute]),
    ];

    public static string Markdown(IReadOnlyList<ClipErrors> clips)
    {
        var table = new MarkdownTable("", "side-on ≤ 15 deg, rider ≥ 200 px: goal", "reached", "met", "everything not set aside: goal", "reached", "met");
        var (sideOn, all) = (Selection.SideOn(clips), Selection.All(clips));
        foreach (var goal in All)
        {
            var (a, b) = (goal.Value(sideOn), goal.Value(all));
            table.Row(goal.Name, goal.SideOn.Text, goal.Text(a), Met(goal.SideOn, a), goal.Everything?.Text ?? "–", goal.Text(b), goal.Everything is { } limit ? Met(limit, b) : "–");
        }

        return table.ToString();
    }

    private static ErrorSummary Of(Selection selection, StrideMeasure measure) => ErrorSummary.Of(selection.Errors(measure));

    private static double[] Held(Selection selection, IEnumerable<StrideMeasure> measures) =>
        [.. measures.Select(m => Of(selection, m)).Where(s => s.Count > 0).Select(s => s.HeldPct)];

    private static string Met(Range range, double[] values) =>
        values.Length == 0 || values.Any(double.IsNaN) ? "no data" : values.All(range.Holds) ? "yes" : "**no**";

    private static Range AtLeast(double low) => new(low, double.PositiveInfinity);

    private static Range AtMost(double high) => new(double.NegativeInfinity, high);

    private static Range Within(double size) => new(-size, size);

    private readonly record struct Range(double Low, double High)
    {
        public string Text => double.IsInfinity(High) ? FormattableString.Invariant($"≥ {Low}")
            : double.IsInfinity(Low) ? FormattableString.Invariant($"≤ {High}")
            : FormattableString.Invariant($"{Low} to {High}");

        public bool Holds(double value) => value >= Low && value <= High;
    }

    /// <param name="Everything">Null where only the stricter column has a goal.</param>
    private sealed record Goal(string Name, string Format, Range SideOn, Range? Everything, Func<Selection, double[]> Value)
    {
        public string Text(double[] values) => values.Length == 0 ? "–"
            : values.Length == 1 ? MarkdownTable.Number(values[0], Format)
            : $"{MarkdownTable.Number(values.Min(), Format)} to {MarkdownTable.Number(values.Max(), Format)}";
    }
}
