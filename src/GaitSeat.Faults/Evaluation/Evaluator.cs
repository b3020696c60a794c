using GaitSeat.Faults.Features;
using GaitSeat.Faults.Training;
using GaitSeat.Model;

namespace GaitSeat.Faults.Evaluation;

/// <summary>What is in use and how it judges the same spells; each probability from a state that had not seen the spell's rider.</summary>
internal sealed record Incumbent(string Name, double[] Probabilities);

/// <summary>Makes the report of a cross-validation.</summary>
internal sealed class Evaluator(IReadOnlyList<LabelledSpell> spells, CrossValidated cross, TrainingSettings training, EvaluationSettings settings)
{
    private const double Percent = 100;
    private readonly string[] _riders = [.. spells.Select(s => s.Rider)];
    private readonly bool[] _isThere = [.. spells.Select(s => s.IsThere)];

    internal EvaluationReport Report(Fault fault, Incumbent inUse, CancellationToken cancellationToken)
    {
        var rules = spells.Select(s => s.Rule).ToArray();
        var compared = new List<Performance> { Judge("nested choice", cross.Probabilities) };
        compared.AddRange(cross.ByTrainer.Select(t => Judge(t.Key.ToTerm(), t.Value)));
        compared.Add(Judge(RulesName, rules));
        if (inUse.Name != RulesName) compared.Add(Judge($"in use ({inUse.Name[..12]})", inUse.Probabilities));
        return new(
            fault, spells.Count, _isThere.Count(t => t), _riders.Distinct().Count(), Budget, compared, inUse.Name, Gain(inUse.Probabilities), cross.Chosen,
            new Ranking(cross.Probabilities, _isThere).Curve(), Evaluation.Calibration.Bins(cross.Probabilities, _isThere),
            Slices.Of(spells, cross.Probabilities, settings), LearningCurve.Of(spells, cross, training, cancellationToken),
            PermutationImportance.Of(spells, cross, training.Seed), Worst(), Missing());
    }

    internal const string RulesName = "rules";

    private int Budget => Math.Max(1, (int)Math.Round(spells.Count * settings.BudgetPct / Percent));

    private Performance Judge(string name, double[] probabilities)
    {
        var ranking = new Ranking(probabilities, _isThere);
        var bootstrap = new RiderBootstrap(_riders, training.Seed, training.BootstrapRounds, training.Confidence);
        return new(name, bootstrap.Of(w => ranking.AveragePrecision(w)), bootstrap.Of(w => ranking.RocArea(w)), ranking.PrecisionAt(Budget),
            Evaluation.Calibration.Brier(probabilities, _isThere), Evaluation.Calibration.ExpectedError(probabilities, _isThere));
    }

    /// <summary>Both rankings on the same draws of riders: what the riders have in common cancels.</summary>
    private Interval Gain(double[] inUse)
    {
        var (ours, theirs) = (new Ranking(cross.Probabilities, _isThere), new Ranking(inUse, _isThere));
        return new RiderBootstrap(_riders, training.Seed, training.BootstrapRounds, training.Confidence).Of(w => ours.AveragePrecision(w) - theirs.AveragePrecision(w));
    }

    private IReadOnlyList<Mistake> Worst() =>
        [.. Enumerable.Range(0, spells.Count).OrderByDescending(i => Math.Abs(cross.Probabilities[i] - (_isThere[i] ? 1 : 0))).ThenBy(i => spells[i].Row.Key).Take(settings.Mistakes)
            .Select(i => (Spell: spells[i].Row.Spell, Said: cross.Probabilities[i], Was: _isThere[i]))
            .Where(m => m.Said >= 0.5 != m.Was)
            .Select(m => new Mistake(m.Spell.Key, m.Spell.Provenance.ClipFile, m.Spell.Spell.StartSeconds, m.Spell.Spell.EndSeconds, m.Said, m.Was))];

    private SortedDictionary<string, double> Missing() => new(FeatureCatalogue.All.Select((f, i) => (f.Family, Pct: Percent * spells.Count(s => double.IsNaN(s.Row.Values[i])) / spells.Count))
        .GroupBy(f => f.Family).Select(g => (g.Key, Least: g.Min(f => f.Pct))).Where(f => f.Least > 0).ToDictionary(f => f.Key, f => f.Least), StringComparer.Ordinal);
}
