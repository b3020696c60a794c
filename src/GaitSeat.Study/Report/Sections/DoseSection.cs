using GaitSeat.Study.Answers;
using GaitSeat.Study.Definition;
using GaitSeat.Study.DoseResponse;
using GaitSeat.Study.Mixed;
using GaitSeat.Study.Plots.Studies;

namespace GaitSeat.Study.Report.Sections;

/// <summary>A dose–response answer: what was found, the pictures, and whether to believe the model.</summary>
internal sealed class DoseSection(ReportBuilder report, StudySettings study, int question)
{
    /// <summary>Below so many a spread between riders is hardly known (no source: its standard error is a quarter of it and more).</summary>
    private const int FewRiders = 10;

    private readonly ColumnTerm _exposure = ColumnTerm.Of(study.Exposure);

    public static string Method(StudySettings study)
    {
        var dose = study.Dose;
        var comparison = dose.Comparison == DoseComparison.WithinRider
            ? "Each rider is compared with themselves: the exposure is split into the rider's mean and the departure from it, and the effect is that of the departure."
            : "Strides within and between riders are taken to tell one effect, which differences between riders can confound.";
        string[] random = [dose.RandomSlope ? "a level and a slope for each rider" : "a level for each rider", .. Horses(dose), .. dose.Session ? ["a level for each session of a rider"] : Array.Empty<string>()];
        return $"Linear mixed model by {(dose.Model.Criterion == MixedCriterion.Reml ? "REML" : "maximum likelihood")}; shape {dose.Shape.ToString().ToLowerInvariant()}; random effects: {string.Join(", ", random)}; "
            + $"adjusted for {(study.Adjustment.Length > 0 ? string.Join(", ", study.Adjustment) : "nothing")}; {Carried(study.MeasurementError)}. "
            + $"{comparison} Intervals: {(study.Interval switch { IntervalMethod.Profile => "profile likelihood", IntervalMethod.Bootstrap => "parametric bootstrap", _ => "Satterthwaite's t" })}.";
    }

    private static string Carried(CarriedError how) => how switch
    {
        CarriedError.Weights => "strides weigh by one over their stated error variance",
        CarriedError.KnownVariance => "each stride's stated error variance is added to its own",
        _ => "stated errors of single strides are not carried",
    };

    public static string[] Heads => ["outcome", "change of exposure", "strides", "riders", "effect", "95 % interval", "p", "p adjusted", ""];

    public IEnumerable<IReadOnlyList<string>> Rows(DoseAnswer answer)
    {
        var outcome = ColumnTerm.Of(answer.Outcome);
        yield return Row(answer, outcome, answer.Effect, Shown.P(answer.PValue), Shown.P(answer.AdjustedPValue));
        foreach (var other in answer.OtherEffects) yield return Row(answer, outcome, other, "", "");
    }

    public void Write(DoseAnswer answer)
    {
        var outcome = ColumnTerm.Of(answer.Outcome);
        var name = $"q{question}-{answer.Outcome}";
        report.Add(new Heading(3, Questions.Name(answer)));
        report.Add(new Paragraph(Found(answer, outcome)));
        Warnings(answer);
        Pictures(answer, outcome, name);
        report.Add(Checks(answer, outcome));
        Numbers(answer);
    }

    private string[] Row(DoseAnswer answer, ColumnTerm outcome, ContrastEstimate effect, string p, string adjusted) =>
        [outcome.Label, _exposure.With(effect.Name), Shown.Count(answer.Rows), Shown.Count(Riders(answer)), Shown.Number(effect.Estimate), Shown.Interval(effect.Low, effect.High), p, adjusted, answer.IsExploratory ? "exploratory" : ""];

    private string Found(DoseAnswer answer, ColumnTerm outcome)
    {
        var (effect, step) = (answer.Effect, _exposure.With(Shown.Chosen(study.EffectStep)));
        var who = study.Dose.Comparison == DoseComparison.WithinRider ? "Within the same rider" : "Over all strides, within and between riders";
        var size = $"{outcome.With(Shown.Number(Math.Abs(effect.Estimate)))} {(effect.Estimate < 0 ? "less" : "more")}";
        var interval = $"95 % interval {outcome.With(Shown.Interval(effect.Low, effect.High))}";
        var found = effect.Low > 0 || effect.High < 0
            ? $"{who}, {_exposure.Name} larger by {step} went with {size} {outcome.Name} ({interval})."
            : $"{who}, the data do not tell in which direction {outcome.Name} goes with {_exposure.Name}: for {step} more the best guess is {size}, but the interval holds zero ({interval}). That is not the same as no effect: any value in the interval fits the data.";
        return $"{found} It rests on {Shown.Count(answer.Rows)} strides of {Shown.Count(Riders(answer))} riders."
            + (answer.IsExploratory ? " Exploratory: the study was not written for this outcome; it is an idea to be tried on new data, not a result." : "");
    }

    private void Warnings(DoseAnswer answer)
    {
        foreach (var term in answer.Fit.Random.Where(r => r.IsSingular))
            report.Add(new Warning($"Singular fit: as far as these data tell, the spread of '{term.Name}' is zero or its parts go together wholly. The effect can be read; the spread cannot, and a model without that term should give the same answer."));
        if (answer.Fit.ResidualAtBound) report.Add(new Warning("The stated measurement errors explain all of the spread from stride to stride, and more: they hold parts that strides share, or are stated too large. Carry them as weights instead."));
        if (Riders(answer) < FewRiders) report.Add(new Warning($"{Riders(answer)} riders: spreads between riders, and so the interval, rest on very few. Read this as a rehearsal, not as a result."));
    }

    private void Pictures(DoseAnswer answer, ColumnTerm outcome, string name)
    {
        var views = new DoseViews(answer, study);
        var within = study.Dose.Comparison == DoseComparison.WithinRider;
        var curve = views.Curve();
        report.Picture($"{name}-dose", $"Mean {outcome.Name} against {_exposure.Name} with its 95 % band. Green: means of a rider {(answer.Data.Sessions is null ? "at one length" : "in one session")}; grey: strides{(within ? "; each rider is moved to the mean of all riders" : "")}.",
            (png, svg) => DosePlot.Save(new($"{outcome.Name} against {_exposure.Name}", _exposure.Label, outcome.Label, curve, views.Strides(), views.Means(), report.Note), png, svg));
        report.Picture($"{name}-riders", "Each rider's own line, drawn toward that of all riders by as much as the rider's strides tell little; blue: all riders. Green: means as measured.",
            (png, svg) => SpaghettiPlot.Save("each rider's own line", _exposure.Label, outcome.Label, views.RiderLines(), views.MeansAsMeasured(), (curve.X, curve.Middle), report.Note, png, svg));
        if (study.Dose.RandomSlope)
            report.Picture($"{name}-caterpillar", $"Effect of {_exposure.With(Shown.Chosen(study.EffectStep))} more in each rider, with its 95 % interval, from least to most; last row: all riders.",
                (png, svg) => IntervalPlot.Save("the effect in each rider", $"change of {outcome.Label}", views.RiderEffects(study.EffectStep), 0, report.Note, png, svg));
        (double, double)[] trend = answer.Sensitivity is { } s ? [.. s.Trend, (-1, s.Corrected)] : [];
        report.Picture($"{name}-checks", "Residuals against a normal; how far leaving out each rider moves the fixed effects (Cook's distance, 1 is much)" + (trend.Length > 0 ? "; the effect with errors added to the exposure, and extrapolated to none (orange)." : "."),
            (png, svg) => ChecksPlot.Save(answer.Residuals.Quantiles, [.. answer.Influence.Select(i => i.CooksDistance)], trend, report.Note, png, svg));
    }

    private FigureTable Checks(DoseAnswer answer, ColumnTerm outcome)
    {
        var most = answer.Influence.Where(i => double.IsFinite(i.CooksDistance)).OrderByDescending(i => i.CooksDistance).FirstOrDefault();
        List<IReadOnlyList<string>> rows =
        [
            .. answer.Fit.Random.SelectMany(r => r.Columns.Select((c, j) => (IReadOnlyList<string>)[$"spread between levels of {r.Name}: {c}", outcome.With(Shown.Number(r.StandardDeviations[j])), r.Columns.Count > 1 && j > 0 ? $"correlation with the level {Shown.Number(r.Correlations[0, j])}" : $"{r.Levels.Count} levels"])),
            ["spread from stride to stride" + (study.MeasurementError == CarriedError.KnownVariance ? ", beyond the stated errors" : ""), outcome.With(Shown.Number(answer.Fit.ResidualSd)), ""],
            ["share of the spread explained by the fixed effects", Shown.Percent(answer.Explained.Marginal), "marginal R²"],
            ["share explained by fixed and random effects", Shown.Percent(answer.Explained.Conditional), "conditional R²"],
            ["residuals beyond three SD", Shown.Percent(answer.Residuals.BeyondThree), "0.3 % for a normal"],
            ["skewness, excess kurtosis of the residuals", $"{Shown.Number(answer.Residuals.Skewness)}, {Shown.Number(answer.Residuals.ExcessKurtosis)}", "0 for a normal"],
            ["neighbouring strides' residuals go together", Shown.Number(answer.Residuals.NeighbourCorrelation), "0 where strides are independent; above, intervals are too narrow"],
            ["size of residual against fitted value", Shown.Number(answer.Residuals.SpreadTrend), "0 where the spread is even"],
        ];
        if (most is not null) rows.Add(["rider who moves the answer most", $"{most.Level}: {Shown.Number(most.CooksDistance)}", "Cook's distance; above about 1 worth a look"]);
        rows.Add([$"effect by Satterthwaite, the plain check", Shown.Number(answer.Wald.Estimate), Shown.Interval(answer.Wald.Low, answer.Wald.High)]);
        if (answer.Sensitivity is { } s)
            rows.Add([$"effect with errors of {_exposure.Name} taken out (SD {Shown.Chosen(study.ExposureErrorSd)}, simulation and extrapolation)", Shown.Number(s.Corrected), $"as measured {Shown.Number(s.Naive)}{(s.Failed > 0 ? $"; {s.Failed} fits failed" : "")}"]);
        return new(["check", "value", ""], rows);
    }

    private void Numbers(DoseAnswer answer)
    {
        foreach (var effect in answer.OtherEffects.Prepend(answer.Effect))
            report.Add(question, answer.Outcome, ($"effect {effect.Name}", effect.Estimate), ($"effect {effect.Name}, se", effect.StandardError), ($"effect {effect.Name}, low", effect.Low), ($"effect {effect.Name}, high", effect.High));
        report.Add(question, answer.Outcome, ("rows", answer.Rows), ("p", answer.PValue), ("p adjusted", answer.AdjustedPValue), ("degrees of freedom", answer.Wald.DegreesOfFreedom), ("criterion", answer.Fit.CriterionValue), ("residual sd", answer.Fit.ResidualSd), ("marginal r2", answer.Explained.Marginal), ("conditional r2", answer.Explained.Conditional));
        foreach (var f in answer.Fit.Fixed) report.Add(question, answer.Outcome, ($"fixed {f.Name}", f.Estimate), ($"fixed {f.Name}, se", f.StandardError));
        foreach (var r in answer.Fit.Random)
            for (var j = 0; j < r.Columns.Count; j++) report.Add(question, answer.Outcome, ($"sd {r.Name} {r.Columns[j]}", r.StandardDeviations[j]));
        foreach (var i in answer.Influence) report.Add(question, answer.Outcome, ($"cook's distance without {i.Level}", i.CooksDistance));
        if (answer.Sensitivity is { } s) report.Add(question, answer.Outcome, ("effect without errors of the exposure", s.Corrected));
    }

    private static int Riders(DoseAnswer answer) => answer.Fit.Random[0].Levels.Count;

    private static string[] Horses(DoseSettings dose) => dose.Horse switch
    {
        HorseRole.Crossed => ["a level for each horse, the same under every rider"],
        HorseRole.Nested => ["a level for each pair of rider and horse"],
        _ => [],
    };
}
