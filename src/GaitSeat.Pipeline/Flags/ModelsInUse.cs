using GaitSeat.Faults.Features;
using GaitSeat.Faults.Training;
using GaitSeat.Model;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Flags;

/// <summary>The fault models of a dataset and those in use for a run.</summary>
public static class ModelsInUse
{
    private const string Folder = "fault-models";

    public static ModelShelf ShelfOf(Dataset dataset)
    {
        ArgumentNullException.ThrowIfNull(dataset);
        return new(Path.Combine(dataset.Folder, Folder));
    }

    /// <summary>One model a fault at most. One that cannot be used is told, and its fault left to its rule.</summary>
    public static IReadOnlyDictionary<Fault, ModelInUse> Of(ModelShelf shelf, DatasetRun run, FeatureSettings features, Action<string> tell)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(tell);
        var models = new Dictionary<Fault, ModelInUse>();
        foreach (var fault in Enum.GetValues<Fault>())
        {
            try
            {
                if (shelf.Load(fault, run.ModelHash, features) is not { } model) continue;
                models[fault] = model;
                if (model.Model.Info.PipelineHash != run.PipelineHash) tell($"{fault.ToTerm()}: the model was trained on spells of other pipeline settings ({model.Model.Info.PipelineHash}); train it anew once there are verdicts on this run.");
            }
            catch (FaultModelException e)
            {
                tell($"{e.Message} Until then the rule for {fault.ToTerm()} is in force.");
            }
        }

        return models;
    }
}
