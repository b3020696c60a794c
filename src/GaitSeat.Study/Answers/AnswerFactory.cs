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
            StudyKind.BeforeAfter => new ChangeAnswer(outcome, exploratory, rows.Flow, StirrupChange.Of(values, riders, After(study, table, rows), study.Dose.Model)),
            StudyKind.Agreement => Agreement(outcome, exploratory, rows, Pairs(riders, values, rows.Take(table.Numbers(study.Comparator))), study.ErrorVarianceRatio),
            StudyKind.Reliability => new ReliabilityAnswer(outcome, exploratory, rows.Flow, SessionReliability.Of(values, riders, rows.Take(table.Labels(study.Session)), study.Bootstrap)),
            _ => throw new ArgumentOutOfRangeException(nameof(study), study.Kind, "a kind that is answered from rows"),
        };
    }

    private static DoseAnswer Dose(StudySettings study, StudyTable table, string outcome, bool exploratory, RowSelection rows)
    {
        var data = DoseRows(study, table, outcome, rows);
        var design = DoseDesign.Of(data, study.Dose);
        var fit = MixedModel.Fit(design.Mixed, study.Dose.Model);
        var contrast = design.Effect($"{study.Exposure} +{study.EffectStep}", design.Center, design.Center + study.EffectStep);
        var wald = WaldInterval.Of(fit, contrast);
        var effect = study.Interval switch
        {
            IntervalMethod.Profile => ProfileInterval.Of(fit, contrast),
            IntervalMethod.Bootstrap => Bootstrap.Of(fit, [contrast], study.Bootstrap).Contrasts[0],
            _ => wald,
        };
        return new(
            outcome, exploratory, rows.Flow, design, fit, effect, wald, ExplainedVariance.Of(fit), ResidualCheck.Of(fit), Influence.Of(fit, term: 0, freeVariances: rows.Rows.Length <= RowsForFreeVariances),
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
        MeasurementVariance = study.CarryMeasurementError ? Array.ConvertAll(rows.Take(table.Numbers(outcome + "_se")), s => s * s) : null,
    };

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
            return WaldInterval.Of(fit, design.Effect("step", design.Center, design.Center + study.EffectStep)).Estimate;
        }
    }

    private static bool[] After(StudySettings study, StudyTable table, RowSelection rows)
    {
        var after = RowFilter.Parse(study.After).Of(table);
        return [.. rows.Rows.Select(r => after[r])];
    }

    private static MethodPair[] Pairs(string[] riders, double[] first, double[] second) => [.. riders.Select((r, i) => new MethodPair(r, first[i], second[i]))];

    private static AgreementAnswer Agreement(string outcome, bool exploratory, RowSelection rows, MethodPair[] pairs, double ratio)
    {
        double[][] means = [.. pairs.GroupBy(p => p.Subject).Select(g => new[] { g.Average(p => p.First), g.Average(p => p.Second) })];
        return new(outcome, exploratory, rows.Flow, pairs, BlandAltman.Of(pairs), DemingRegression.Of(pairs, ratio), RatingTable.Of(means).Icc(IccForm.AgreementSingle));
    }
}
