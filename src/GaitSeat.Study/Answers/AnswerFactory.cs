using System.Globalization;
using GaitSeat.Study.Agreement;
using GaitSeat.Study.BeforeAfter;
using GaitSeat.Study.Definition;
using GaitSeat.Study.DoseResponse;
using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;
using GaitSeat.Study.Reliability;

namespace GaitSeat.Study.Answers;

/// <summary>One outcome of one study, by its kind.</summary>
internal static class AnswerFactory
{
    /// <summary>Up to so many rows variances are fitted anew for each rider left out (about a minute at most).</summary>
    private const int RowsForFreeVariances = 100_000;

    public static StudyAnswer Of(StudySettings study, StudyTable table, string outcome, bool exploratory, RowSelection rows)
    {
        var values = rows.Take(table.Numbers(outcome));
        var riders = rows.Take(table.Labels(study.Rider));
        return study.Kind switch
        {
            StudyKind.DoseResponse => Dose(study, table, outcome, exploratory, rows),
            StudyKind.BeforeAfter => new ChangeAnswer(
                outcome, exploratory, rows.Flow, StirrupChange.Of(values, riders, rows.Take(table.Labels(study.Session)), After(study, table, rows), study.Dose.Model)),
            StudyKind.Agreement => Agreement(outcome, exploratory, rows, Pairs(study, table, rows, riders, values), study.ErrorVarianceRatio),
            StudyKind.Reliability => new ReliabilityAnswer(outcome, exploratory, rows.Flow, SessionReliability.Of(values, riders, rows.Take(table.Labels(study.Session)), study.Bootstrap)),
            _ => throw new ArgumentOutOfRangeException(nameof(study), study.Kind, "a kind that is answered from rows"),
        };
    }

    private static DoseAnswer Dose(StudySettings study, StudyTable table, string outcome, bool exploratory, RowSelection rows)
    {
        var data = DoseRows(study, table, outcome, rows);
        var design = DoseDesign.Of(data, study.Dose);
        var fit = MixedModel.Fit(design.Mixed, study.Dose.Model);
        double[] steps = [study.EffectStep, .. study.OtherSteps.Select(s => double.Parse(s, CultureInfo.InvariantCulture))];
        Contrast[] contrasts = [.. steps.Select(s => design.Effect(string.Create(CultureInfo.InvariantCulture, $"{s:+0.###;-0.###}"), design.Center, design.Center + s))];
        var wald = WaldInterval.Of(fit, contrasts[0]);
        IReadOnlyList<ContrastEstimate> effects = study.Interval switch
        {
            IntervalMethod.Profile => [.. contrasts.Select(c => ProfileInterval.Of(fit, c))],
            IntervalMethod.Bootstrap => Bootstrap.Of(fit, contrasts, study.Bootstrap).Contrasts,
            _ => [.. contrasts.Select(c => WaldInterval.Of(fit, c))],
        };
        return new(
            outcome, exploratory, rows.Flow, design, data, fit, effects[0], [.. effects.Skip(1)], wald, ExplainedVariance.Of(fit), ResidualCheck.Of(fit), Influence.Of(fit, term: 0, freeVariances: rows.Rows.Length <= RowsForFreeVariances),
            study.ExposureErrorSd > 0 ? Sensitivity(study, table, rows, data) : null);
    }

    private static DoseData DoseRows(StudySettings study, StudyTable table, string outcome, RowSelection rows) => new()
    {
        Outcome = rows.Take(table.Numbers(outcome)),
        Exposure = new(study.Exposure, rows.Take(table.Numbers(study.Exposure))),
        Adjustment = [.. study.Adjustment.Select(a => new DesignColumn(a, rows.Take(table.Numbers(a))))],
        Riders = rows.Take(table.Labels(study.Rider)),
        Horses = study.Dose.Horse == HorseRole.None ? null : rows.Take(table.Labels(study.Horse)),
        Sessions = study.Dose.Session ? rows.Take(table.Labels(study.Session)) : null,
        MeasurementVariance = study.MeasurementError == CarriedError.KnownVariance ? Variances(table, outcome, rows) : null,
        Weights = study.MeasurementError == CarriedError.Weights ? Weights(Variances(table, outcome, rows)) : null,
    };

    private static double[] Variances(StudyTable table, string outcome, RowSelection rows) => Array.ConvertAll(rows.Take(table.Numbers(outcome + "_se")), s => s * s);

    /// <summary>About one on average, so that the residual's spread stays that of a stride.</summary>
    private static double[] Weights(double[] variances)
    {
        var typical = 1 / variances.Average(v => 1 / v);
        return Array.ConvertAll(variances, v => typical / v);
    }

    private static SimexResult Sensitivity(StudySettings study, StudyTable table, RowSelection rows, DoseData data)
    {
        var measurements = study.ExposureMeasuredOncePerSession
            ? Grouping.Of("session", rows.Take(table.Labels(study.Session))).Within(Grouping.Of("rider", data.Riders)).LevelOf
            : [.. Enumerable.Range(0, data.Outcome.Length)];
        return Simex.Of(data.Exposure.Values, study.ExposureErrorSd, measurements, Effect, study.Simex);

        double Effect(double[] exposure)
        {
            var design = DoseDesign.Of(data with { Exposure = data.Exposure with { Values = exposure } }, study.Dose);
            var fit = MixedModel.Fit(design.Mixed, study.Dose.Model);
            return Dense.Dot(design.Effect("step", design.Center, design.Center + study.EffectStep).Weights, fit.Estimates);
        }
    }

    /// <summary>Rows that are neither before nor after were left out with their reason.</summary>
    private static bool[] After(StudySettings study, StudyTable table, RowSelection rows) =>
        [.. ChangeRule.Parse(study.After).Sides(table, rows.Rows, rows.Take(table.Labels(study.Rider)), rows.Take(table.Labels(study.Session))).Select(s => s!.Value)];

    private static MethodPair[] Pairs(StudySettings study, StudyTable table, RowSelection rows, string[] riders, double[] first)
    {
        var second = rows.Take(table.Numbers(study.Comparator));
        MethodPair[] pairs = [.. riders.Select((r, i) => new MethodPair(r, first[i], second[i]))];
        if (study.AverageOver.Length == 0) return pairs;
        var units = rows.Take(table.Labels(study.AverageOver));
        return [.. pairs.Select((p, i) => (Pair: p, Unit: units[i])).GroupBy(p => (p.Pair.Subject, p.Unit)).Select(g => new MethodPair(g.Key.Subject, g.Average(p => p.Pair.First), g.Average(p => p.Pair.Second)))];
    }

    private static AgreementAnswer Agreement(string outcome, bool exploratory, RowSelection rows, MethodPair[] pairs, double ratio)
    {
        double[][] means = [.. pairs.GroupBy(p => p.Subject).Select(g => new[] { g.Average(p => p.First), g.Average(p => p.Second) })];
        return new(outcome, exploratory, rows.Flow, pairs, BlandAltman.Of(pairs), DemingRegression.Of(pairs, ratio), RatingTable.Of(means).Icc(IccForm.AgreementSingle));
    }
}
