using Microsoft.ML;
using Microsoft.ML.Data;
using Microsoft.ML.Trainers;
using Microsoft.ML.Trainers.FastTree;
using Microsoft.ML.Trainers.LightGbm;

namespace GaitSeat.Faults.Training;

/// <summary>Trains one scorer. Single-threaded with fixed seeds: the same spells give the same bytes.</summary>
internal static class Trainer
{
    /// <summary>Both answers must be there.</summary>
    internal static Scorer Fit(IReadOnlyList<LabelledSpell> spells, TrainerKind kind, TrainingSettings settings)
    {
        var preparation = FeaturePreparation.Learn([.. spells.Select(s => s.Row.Values)]);
        var ml = new MLContext(settings.Seed);
        double there = spells.Count(s => s.IsThere), not = spells.Count - there;
        float Weight(bool isThere) => (float)Math.Clamp(isThere ? not / there : there / not, 1, settings.LargestClassWeight);
        var rows = spells.Select(s => new ScorerInput { Features = preparation.Apply(s.Row.Values), Label = s.IsThere, Weight = Weight(s.IsThere) });
        var data = ml.Data.LoadFromEnumerable(rows.ToArray(), ScorerInput.Schema(preparation.Width));
        return new(ml, preparation, Estimator(ml, kind, settings).Fit(data), data.Schema);
    }

    private static IEstimator<ITransformer> Estimator(MLContext ml, TrainerKind kind, TrainingSettings s) => kind switch
    {
        TrainerKind.LogisticRegression => ml.BinaryClassification.Trainers.LbfgsLogisticRegression(new LbfgsLogisticRegressionBinaryTrainer.Options
        {
            ExampleWeightColumnName = nameof(ScorerInput.Weight), NumberOfThreads = 1, L1Regularization = (float)s.Penalty, L2Regularization = (float)s.Penalty,
        }),
        TrainerKind.StochasticDualAscent => ml.BinaryClassification.Trainers.SdcaLogisticRegression(new SdcaLogisticRegressionBinaryTrainer.Options
        {
            ExampleWeightColumnName = nameof(ScorerInput.Weight), NumberOfThreads = 1, MaximumNumberOfIterations = s.StochasticPasses,
        }),
        TrainerKind.FastTree => ml.BinaryClassification.Trainers.FastTree(new FastTreeBinaryTrainer.Options
        {
            ExampleWeightColumnName = nameof(ScorerInput.Weight), NumberOfThreads = 1, Seed = s.Seed, FeatureSelectionSeed = s.Seed,
            NumberOfTrees = s.Trees, NumberOfLeaves = s.Leaves, MinimumExampleCountPerLeaf = s.LeafSpells, LearningRate = s.LearningRate,
        }),
        TrainerKind.LightGbm => ml.BinaryClassification.Trainers.LightGbm(new LightGbmBinaryTrainer.Options
        {
            ExampleWeightColumnName = nameof(ScorerInput.Weight), NumberOfThreads = 1, Seed = s.Seed, Silent = true, Verbose = false,
            NumberOfIterations = s.Trees, NumberOfLeaves = s.Leaves, MinimumExampleCountPerLeaf = s.LeafSpells, LearningRate = s.LearningRate,
        }),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such trainer."),
    };
}

/// <summary>A spell as ML.NET takes it.</summary>
internal sealed class ScorerInput
{
    public float[] Features { get; init; } = [];

    public bool Label { get; init; }

    public float Weight { get; init; }

    /// <summary>ML.NET wants to know the width of the vector beforehand.</summary>
    internal static SchemaDefinition Schema(int width)
    {
        var schema = SchemaDefinition.Create(typeof(ScorerInput));
        schema[nameof(Features)].ColumnType = new VectorDataViewType(NumberDataViewType.Single, width);
        return schema;
    }
}
