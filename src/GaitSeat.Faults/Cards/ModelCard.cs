using System.Globalization;
using GaitSeat.Faults.Evaluation;
using GaitSeat.Faults.Training;
using GaitSeat.Model;

namespace GaitSeat.Faults.Cards;

/// <summary>What a sceptic wants to know of a fault model, beside the model.</summary>
public static class ModelCard
{
    /// <summary>Least loss of average precision that is listed; below it the order is chance.</summary>
    private const double LeastImportance = 0.005;

    /// <param name="stillOf">Path of a clip's picture from the card's folder, by clip key; null where there is none. Pictures are shown where they lie and not copied, so that they go when the clip is erased.</param>
    /// <returns>File names and texts: the card as Markdown and HTML, and the plots the Markdown shows.</returns>
    /// <exception cref="ArgumentException">The outcome has no model.</exception>
    public static IReadOnlyList<(string Name, string Text)> Files(TrainingOutcome outcome, Func<string, string?> stillOf)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        ArgumentNullException.ThrowIfNull(stillOf);
        if (outcome.Model is not { } model || outcome.Report is not { } report) throw new ArgumentException("Nothing was trained, so there is no card.", nameof(outcome));
        CardPart[] parts = [.. Head(outcome, model, report), .. Figures(report), .. Limits(outcome, report, stillOf), .. Data(outcome.Data, model)];
        return [("card.md", CardPage.ToMarkdown(parts)), ("card.html", CardPage.ToHtml(Title(outcome.Fault), parts)), .. parts.OfType<CardPicture>().Select(p => (p.File, p.Svg))];
    }

    private static string Title(Fault fault) => $"Fault model: {fault.ToTerm().Replace('_', ' ')}";

    private static IEnumerable<CardPart> Head(TrainingOutcome outcome, FaultModel model, EvaluationReport report) =>
    [
        new CardHeading(1, Title(outcome.Fault)),
        new CardText(outcome.Reason),
        new CardText($"Says how probable it is that a coach would see the fault in a spell of rising trot. For putting clips before a coach, not for judging riders or horses. Learnt from {report.Spells} judged spells of {report.Riders} riders, {report.Positives} with the fault ({Pct(report.Prevalence)})."),
        new CardText("Every figure below is of riders the models had neither learnt from nor been chosen by (nested cross-validation, cut by rider). Intervals are 95 %, by drawing riders. Verdicts were not drawn at random from all riding, so the figures hold for spells such as were judged."),
    ];

    private static IEnumerable<CardPart> Figures(EvaluationReport report) =>
    [
        new CardHeading(2, "Compared"),
        Table(["", "average precision", "area under ROC", $"precision in the first {report.Budget}", "Brier", "calibration error"],
            report.Compared.Select(c => new[] { c.Name, Range(c.AveragePrecision), Range(c.RocArea), N(c.PrecisionAtBudget), N(c.Brier), N(c.ExpectedCalibrationError) })),
        new CardText($"Trainer chosen in each fold: {string.Join(", ", report.ChosenInFolds.Select(k => k.ToTerm()))}. Gain in average precision over what was in use ({report.InUse}): {Range(report.GainOverInUse)}."),
        new CardPicture("precision-recall.svg", "Precision against recall", UnitPlot.Svg("recall", "precision", [.. report.Curve.Select(p => (p.Recall, p.Precision))], diagonal: false, marks: false)),
        new CardPicture("roc.svg", "True against false positives", UnitPlot.Svg("false positive rate", "true positive rate", [(0, 0), .. report.Curve.Select(p => (p.FalsePositiveRate, p.Recall))], diagonal: true, marks: false)),
        new CardPicture("calibration.svg", "What was so against what was said", UnitPlot.Svg("probability said", "share with the fault", [.. report.Calibration.Select(b => (b.Said, b.Was))], diagonal: true, marks: true)),
        Table(["spells", "said", "was"], report.Calibration.Select(b => new[] { N0(b.Count), N(b.Said), N(b.Was) })),
    ];

    private static IEnumerable<CardPart> Limits(TrainingOutcome outcome, EvaluationReport report, Func<string, string?> stillOf) =>
    [
        new CardHeading(2, "More riders"),
        Table(["riders", "spells", "average precision on one held-out group"], report.Learning.Select(l => new[] { N0(l.Riders), N0(l.Spells), N(l.AveragePrecision) })),
        new CardHeading(2, "What it leans on"),
        new CardText("Loss of average precision when a measure's features are dealt anew among held-out spells. Measures that say the same can stand in for each other."),
        Table(["measure", "loss"], report.Importances.Where(i => i.AveragePrecisionLost >= LeastImportance).Select(i => new[] { i.Family, N(i.AveragePrecisionLost) })),
        new CardHeading(2, "Parts"),
        Table(["by", "part", "spells", "with the fault", "average precision", "Brier"], report.Slices.Select(s => new[] { s.By, s.Value, N0(s.Spells), N0(s.Positives), N(s.AveragePrecision), N(s.Brier) })),
        new CardHeading(2, "Worst mistakes"),
        Table(["clip", "spell", "seconds", "said", "coach"], report.Worst.Select(m => new[]
        {
            m.ClipFile, N0(m.Spell.SpellNumber), Text($"{m.StartSeconds:0.0} to {m.EndSeconds:0.0}"), N(m.Said), m.WasThere ? "sees it" : "does not",
        })),
        .. report.Worst.Select(m => (Mistake: m, Still: stillOf(m.Spell.ClipKey))).Where(m => m.Still is not null)
            .Select(m => new CardImage(m.Still!, Text($"{m.Mistake.ClipFile}, spell {m.Mistake.Spell.SpellNumber}: said {m.Mistake.Said:0.00}, coach {(m.Mistake.WasThere ? "sees it" : "does not")}"))),
        new CardText($"Left out of the training: {outcome.Data.WithoutRider} judged spells without a known rider, {outcome.Data.WithoutFeatures} without features, {outcome.Data.Verdicts.Ties} on which judges are tied, {outcome.Data.Verdicts.CannotTell} nobody could tell, {outcome.Data.Verdicts.OtherRun} verdicts on other runs."),
        new CardHeading(2, "Missing values"),
        Table(["measure", "spells without, %"], report.MissingPct.Select(m => new[] { m.Key, m.Value.ToString("0.0", CultureInfo.InvariantCulture) })),
    ];

    private static IEnumerable<CardPart> Data(TrainingSet data, FaultModel model)
    {
        var i = model.Info;
        return
        [
            new CardHeading(2, "Made from"),
            Table(["", ""],
            [
                ["model", model.Hash], ["trainer", i.Trainer.ToTerm()], ["data (spells, features, verdicts)", i.DataHash], ["weights", i.ScorerHash], ["features", i.FeatureSchema],
                ["pipeline", i.PipelineHash], ["body-point models", i.ModelHash], ["software", i.SoftwareVersion], ["seed", i.Training.Seed.ToString(CultureInfo.InvariantCulture)],
                ["training", Settings(i.Training)], ["feature settings", Settings(i.Features)],
                ["verdicts superseded by the same judge", N0(data.Verdicts.Superseded)],
            ]),
            new CardText(Cautions.Text.ReplaceLineEndings(" ").Trim()),
        ];
    }

    /// <summary>As a record says itself, without its name: every setting and its value.</summary>
    private static string Settings(object record) => record.ToString() is { } text ? text[(text.IndexOf('{', StringComparison.Ordinal) + 1)..^1].Trim() : "";

    private static CardTable Table(string[] header, IEnumerable<string[]> rows) => new(header, [.. rows]);

    private static string Range(Interval i) => Text($"{i.Value:0.000} ({i.Lower:0.000} to {i.Upper:0.000})");

    private static string N(double value) => double.IsNaN(value) ? "none" : value.ToString("0.000", CultureInfo.InvariantCulture);

    private static string N0(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Pct(double share) => Text($"{100 * share:0} %");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
