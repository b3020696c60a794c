using GaitSeat.Faults.Evaluation;
using GaitSeat.Faults.Training;
using GaitSeat.Model;
using GaitSeat.Studio;

namespace GaitSeat.Cli.Learning;

/// <summary>How well a planted fault is found again on riders the models had not seen. Average precision throughout.</summary>
/// <param name="Planted">Judged spells it was planted in.</param>
/// <param name="Model">Against what was planted.</param>
/// <param name="Rules">The rule against what was planted.</param>
/// <param name="AgainstAnswers">The model against the judge's answers, wrong ones and all.</param>
/// <param name="Ceiling">What was planted as the score, against the judge's answers: nobody who does not know the judge's slips does better but by chance.</param>
internal sealed record PlantedFigures(Fault Fault, int Spells, int Planted, double Model, double Rules, double AgainstAnswers, double Ceiling, TrainingEnd End)
{
    /// <returns>Null where nothing was trained.</returns>
    internal static PlantedFigures? Of(TrainingOutcome outcome, IReadOnlyList<JudgedClip> clips)
    {
        if (outcome.Model is null) return null;
        var planted = clips.ToDictionary(c => c.Name + ".mp4", c => c.Planted.Contains(outcome.Fault), StringComparer.Ordinal);
        var spells = outcome.Data.Spells;
        bool[] truth = [.. spells.Select(s => planted[s.Row.Spell.Provenance.ClipFile])], answers = [.. spells.Select(s => s.IsThere)];
        double[] told = [.. spells.Select(s => outcome.HeldOut[s.Row.Key])];
        return new(
            outcome.Fault, spells.Count, truth.Count(t => t), Precision(told, truth), Precision([.. spells.Select(s => s.Rule)], truth), Precision(told, answers),
            Precision([.. truth.Select(t => t ? 1.0 : 0)], answers), outcome.End);
    }

    private static double Precision(double[] scores, bool[] isThere) => new Ranking(scores, isThere).AveragePrecision();
}
