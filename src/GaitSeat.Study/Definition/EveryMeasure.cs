using GaitSeat.Model;

namespace GaitSeat.Study.Definition;

/// <summary>The word that stands for all measures of a stride in a list of outcomes.</summary>
public static class EveryMeasure
{
    public const string Word = "every_measure";

    /// <summary>How the clip was filmed, not how the rider rides.</summary>
    private static readonly StrideMeasure[] Filming = [StrideMeasure.Scale, StrideMeasure.ViewYaw, StrideMeasure.RiderHeight];

    /// <summary>The study with the word replaced by the columns it stands for; what is already on the other side of the question is left out.</summary>
    public static StudySettings In(StudySettings study)
    {
        string[] asked = study.Kind == StudyKind.DoseResponse ? [study.Exposure, .. study.Adjustment] : [];
        return study with { Outcomes = Replaced(study.Outcomes, [.. study.Exploratory, .. asked]), Exploratory = Replaced(study.Exploratory, [.. study.Outcomes, .. asked]) };
    }

    private static string[] Replaced(string[] outcomes, string[] others) => outcomes.Contains(Word)
        ? [.. outcomes.Where(o => o != Word).Concat(MeasureCatalogue.All.Where(m => !Filming.Contains(m.Measure)).Select(m => m.Column).Except(others)).Distinct()]
        : outcomes;
}
