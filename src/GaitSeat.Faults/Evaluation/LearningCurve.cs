using GaitSeat.Faults.Training;

namespace GaitSeat.Faults.Evaluation;

/// <summary>How the model gains with more riders: tells whether more verdicts are worth a coach's time.</summary>
internal static class LearningCurve
{
    private static readonly double[] Shares = [0.25, 0.5, 0.75, 1];

    /// <summary>Trains the most chosen trainer on growing parts of the riders of all folds but the first, and tests it on the first. Parts with one answer only are left out.</summary>
    internal static IReadOnlyList<LearningPoint> Of(IReadOnlyList<LabelledSpell> spells, CrossValidated cross, TrainingSettings settings, CancellationToken cancellationToken)
    {
        var kind = cross.Chosen.GroupBy(k => k).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).First().Key;
        var test = spells.Where((_, i) => cross.Folds[i] == 0).ToArray();
        var train = Subsample.Of([.. spells.Where((_, i) => cross.Folds[i] != 0)], settings);
        var riders = train.Select(s => s.Rider).Distinct().OrderBy(r => RiderOrder.Of(r, settings.Seed, "learning")).ToArray();
        var points = new List<LearningPoint>();
        foreach (var share in Shares)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var taken = riders.Take((int)Math.Ceiling(share * riders.Length)).ToHashSet(StringComparer.Ordinal);
            var part = train.Where(s => taken.Contains(s.Rider)).ToArray();
            if (part.All(s => s.IsThere) || part.All(s => !s.IsThere)) continue;
            var scores = Trainer.Fit(part, kind, settings).Scores([.. test.Select(s => s.Row.Values)]);
            points.Add(new(taken.Count, part.Length, new Ranking(scores, [.. test.Select(s => s.IsThere)]).AveragePrecision()));
        }

        return points;
    }
}
