using GaitSeat.Faults.Evaluation;

namespace GaitSeat.Faults.Training;

/// <summary>A trainer chosen, and its calibration: both from riders held out within the training riders.</summary>
internal sealed record Choice(TrainerKind Kind, IReadOnlyDictionary<TrainerKind, double> Inner, IReadOnlyDictionary<TrainerKind, PlattCalibration> Calibrations)
{
    internal PlattCalibration Calibration => Calibrations[Kind];
}

/// <summary>What nested cross-validation told: each spell's probability comes from models that never saw its rider, neither to be trained nor to be chosen.</summary>
/// <param name="Probabilities">Of the trainer chosen in each fold, in the order of the spells.</param>
/// <param name="ByTrainer">The same for each trainer by itself.</param>
/// <param name="Chosen">Trainer chosen in each outer fold.</param>
/// <param name="Models">Model of each outer fold.</param>
/// <param name="Folds">Outer fold of each spell.</param>
internal sealed record CrossValidated(
    double[] Probabilities,
    IReadOnlyDictionary<TrainerKind, double[]> ByTrainer,
    IReadOnlyList<TrainerKind> Chosen,
    IReadOnlyList<(Scorer Scorer, PlattCalibration Calibration)> Models,
    int[] Folds);

/// <summary>There are too few verdicts to say anything; the rules stay in force.</summary>
internal sealed class TooFewVerdictsException(string message) : Exception(message);

/// <summary>Cuts riders into folds; tests put a leaking one in its place.</summary>
internal delegate int[] FoldCutter(IReadOnlyList<string> riders, IReadOnlyList<bool> isThere, int folds, int seed);

/// <summary>Nested cross-validation by rider.</summary>
internal sealed class CrossValidation(TrainingSettings settings, FoldCutter cutter)
{
    private static readonly TrainerKind[] Kinds = Enum.GetValues<TrainerKind>();

    internal CrossValidation(TrainingSettings settings)
        : this(settings, GroupFolds.Cut)
    {
    }

    internal CrossValidated Run(IReadOnlyList<LabelledSpell> spells, CancellationToken cancellationToken)
    {
        var folds = Cut(spells, settings.OuterFolds);
        var probabilities = new double[spells.Count];
        var byTrainer = Kinds.ToDictionary(k => k, _ => new double[spells.Count]);
        var (chosen, models) = (new List<TrainerKind>(), new List<(Scorer, PlattCalibration)>());
        for (var fold = 0; fold < settings.OuterFolds; fold++)
        {
            var (train, test) = Part(spells, folds, fold);
            var choice = Choose(train, cancellationToken);
            var part = Subsample.Of(train, settings);
            var scorer = Trainer.Fit(train, choice.Kind, settings);
            foreach (var kind in Kinds)
            {
                cancellationToken.ThrowIfCancellationRequested();
                var its = kind == choice.Kind ? scorer : Trainer.Fit(part, kind, settings);
                Put(byTrainer[kind], test, its, choice.Calibrations[kind], spells);
            }

            Put(probabilities, test, scorer, choice.Calibration, spells);
            chosen.Add(choice.Kind);
            models.Add((scorer, choice.Calibration));
        }

        return new(probabilities, byTrainer, chosen, models, folds);
    }

    /// <summary>Compares the trainers by average precision on held-out riders of these spells.</summary>
    internal Choice Choose(IReadOnlyList<LabelledSpell> spells, CancellationToken cancellationToken)
    {
        var part = Subsample.Of(spells, settings);
        var folds = Cut(part, settings.InnerFolds);
        var isThere = part.Select(s => s.IsThere).ToArray();
        var (inner, calibrations) = (new Dictionary<TrainerKind, double>(), new Dictionary<TrainerKind, PlattCalibration>());
        foreach (var kind in Kinds)
        {
            var scores = new double[part.Count];
            for (var fold = 0; fold < settings.InnerFolds; fold++)
            {
                cancellationToken.ThrowIfCancellationRequested();
                var (train, test) = Part(part, folds, fold);
                var held = Trainer.Fit(train, kind, settings).Scores([.. test.Select(i => part[i].Row.Values)]);
                for (var i = 0; i < test.Length; i++) scores[test[i]] = held[i];
            }

            calibrations[kind] = PlattCalibration.Fit(scores, isThere);
            inner[kind] = new Ranking([.. scores.Select(calibrations[kind].Probability)], isThere).AveragePrecision();
        }

        return new(Kinds.MaxBy(k => inner[k]), inner, calibrations);
    }

    private int[] Cut(IReadOnlyList<LabelledSpell> spells, int count)
    {
        var riders = spells.Select(s => s.Rider).ToArray();
        var folds = cutter(riders, [.. spells.Select(s => s.IsThere)], count, settings.Seed);
        GroupFolds.RequireNoLeak(riders, folds);
        for (var fold = 0; fold < count; fold++)
        {
            var rest = spells.Where((_, i) => folds[i] != fold).ToArray();
            if (rest.All(s => s.IsThere) || rest.All(s => !s.IsThere)) throw new TooFewVerdictsException("The verdicts of one answer come from so few riders that none is left to learn from when they are held out.");
        }

        return folds;
    }

    private static (LabelledSpell[] Train, int[] Test) Part(IReadOnlyList<LabelledSpell> spells, int[] folds, int fold) =>
        ([.. spells.Where((_, i) => folds[i] != fold)], [.. Enumerable.Range(0, spells.Count).Where(i => folds[i] == fold)]);

    private static void Put(double[] into, int[] test, Scorer scorer, PlattCalibration calibration, IReadOnlyList<LabelledSpell> spells)
    {
        var scores = scorer.Scores([.. test.Select(i => spells[i].Row.Values)]);
        for (var i = 0; i < test.Length; i++) into[test[i]] = calibration.Probability(scores[i]);
    }
}
