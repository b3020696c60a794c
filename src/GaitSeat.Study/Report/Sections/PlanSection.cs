using GaitSeat.Study.Definition;
using GaitSeat.Study.Planning;
using GaitSeat.Study.Plots.Studies;

namespace GaitSeat.Study.Report.Sections;

/// <summary>How many riders and strides.</summary>
internal sealed class PlanSection(ReportBuilder report, StudySettings study, int question)
{
    public static string Method(StudySettings study) =>
        $"{Shown.Count(study.Power.Simulations)} seasons are drawn for each plan from what is believed of the spreads, and each is analysed as a dose–response study would be. "
        + $"Asked about: {Shown.Chosen(study.Power.StepCm)} cm more of stirrup, with a true effect of {Shown.Chosen(study.Plan.EffectPerCm * study.Power.StepCm)} in the outcome's unit. The spreads are assumptions: take them from the reliability of a season that was measured.";

    public void Write(IReadOnlyList<PowerResult> plans)
    {
        report.Add(new FigureTable(
            ["riders", "lengths each", "strides each", "half width, mean", "half width, 9 in 10", "power", "95 % interval", "coverage", "failed"],
            [.. plans.Select(p => (IReadOnlyList<string>)[Shown.Count(p.Plan.Riders), Shown.Count(p.Plan.LengthsPerRider), Shown.Count(p.Plan.StridesPerLength), Shown.Number(p.MeanHalfWidth), Shown.Number(p.HalfWidth90), Shown.Percent(p.Detected.Value), $"{Shown.Percent(p.Detected.Low)} to {Shown.Percent(p.Detected.High)}", Shown.Percent(p.Covered.Value), Shown.Count(p.Failed)])]));
        report.Add(new Paragraph(Found(plans)));
        report.Picture($"q{question}-plans", "Half width of the interval that nine seasons in ten stay within, and power with its 95 % interval, against the number of riders.",
            (png, svg) => PlanPlot.Save([.. plans.Select(Point)], study.WantedHalfWidth, "in the outcome's unit", report.Note, png, svg));
        foreach (var p in plans)
        {
            var name = $"{p.Plan.Riders} riders, {p.Plan.StridesPerLength} strides";
            report.Add(question, name, ("mean half width", p.MeanHalfWidth), ("half width 90", p.HalfWidth90), ("power", p.Detected.Value), ("coverage", p.Covered.Value), ("mean estimate", p.MeanEstimate), ("singular", p.Singular), ("failed", p.Failed));
        }
    }

    private string Found(IReadOnlyList<PowerResult> plans)
    {
        if (study.WantedHalfWidth == 0) return "No half width was asked for (wanted_half_width).";
        return PowerSimulation.FirstWithin(plans.OrderBy(p => p.Plan.Riders).ThenBy(p => p.Plan.StridesPerLength), study.WantedHalfWidth) is { } first
            ? $"For an interval of ± {Shown.Chosen(study.WantedHalfWidth)} in nine seasons of ten, the smallest plan tried that does is {first.Plan.Riders} riders at {first.Plan.LengthsPerRider} lengths with {first.Plan.StridesPerLength} strides each (± {Shown.Number(first.HalfWidth90)})."
            : $"None of the plans tried gives an interval of ± {Shown.Chosen(study.WantedHalfWidth)} in nine seasons of ten; plan more riders. Strides beyond a few tens add little, since riders differ.";
    }

    private static PlanPoint Point(PowerResult p) => new($"{p.Plan.StridesPerLength} strides at each length", p.Plan.Riders, p.HalfWidth90, 100 * p.Detected.Value, 100 * p.Detected.Low, 100 * p.Detected.High);
}
