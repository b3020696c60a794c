using System.Security.Cryptography;
using System.Text.Json;
using GaitSeat.Faults.Features;
using GaitSeat.Model;

namespace GaitSeat.Faults.Training;

/// <summary>What must be known of a fault model beside its weights; kept as JSON beside them.</summary>
/// <param name="FeatureSchema">Layout and meaning of the feature vector, <see cref="FeatureCatalogue.SchemaHash"/>.</param>
/// <param name="Features">How the features were made; a spell's features must be made the same way.</param>
/// <param name="Training">What it was trained with.</param>
/// <param name="ModelHash">Body-point models of the spells it learnt from; points of other models stand elsewhere.</param>
/// <param name="DataHash">SHA-256 over the spells, their features and verdicts.</param>
/// <param name="ScorerHash">SHA-256 over the bytes of the weights.</param>
/// <param name="Reference">How the features lay among the training spells, for the drift watch.</param>
public sealed record FaultModelInfo(
    Fault Fault,
    TrainerKind Trainer,
    PlattCalibration Calibration,
    FeaturePreparation Preparation,
    string FeatureSchema,
    FeatureSettings Features,
    TrainingSettings Training,
    int SchemaVersion,
    string PipelineHash,
    string ModelHash,
    string SoftwareVersion,
    int Spells,
    int Positives,
    int Riders,
    string DataHash,
    string ScorerHash,
    IReadOnlyList<FeatureReference> Reference);

/// <summary>A fault model: from a spell's features to the probability that a coach would see the fault there.</summary>
public sealed class FaultModel
{
    private readonly Scorer _scorer;

    internal FaultModel(FaultModelInfo info, byte[] weights, Scorer scorer) => (Info, Weights, _scorer) = (info, weights, scorer);

    public FaultModelInfo Info { get; }

    internal byte[] Weights { get; }

    /// <summary>Names the model: SHA-256 over all that is known of it, its weights' hash included; lower-case hex.</summary>
    public string Hash => field ??= Convert.ToHexStringLower(SHA256.HashData(InfoBytes()));

    /// <summary>Calibrated probabilities, in the order of the rows.</summary>
    public double[] Probabilities(IReadOnlyList<FeatureRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        return Probabilities([.. rows.Select(r => r.Values)]);
    }

    internal double[] Probabilities(IReadOnlyList<double[]> vectors) => [.. _scorer.Scores(vectors).Select(Info.Calibration.Probability)];

    internal byte[] InfoBytes() => JsonSerializer.SerializeToUtf8Bytes(Info, FaultJson.Options);

    /// <summary>Checks that the model may speak of a run's spells.</summary>
    /// <exception cref="FaultModelException">It was trained on another layout, with other feature settings or on other body points, or its bytes are not those that were saved.</exception>
    internal static FaultModel Load(FaultModelInfo info, byte[] weights, string modelHash, FeatureSettings features)
    {
        if (info.FeatureSchema != FeatureCatalogue.SchemaHash || info.SchemaVersion != Provenance.CurrentSchemaVersion)
            throw new FaultModelException($"The model for {info.Fault.ToTerm()} was trained on features of another version (schema {info.SchemaVersion}, features {info.FeatureSchema[..8]}; this program has {Provenance.CurrentSchemaVersion}, {FeatureCatalogue.SchemaHash[..8]}). Train it anew.");
        if (info.Features != features)
            throw new FaultModelException($"The model for {info.Fault.ToTerm()} was trained on features made with {info.Features}; the settings under faults.features now say {features}. Set them back, or train anew.");
        if (info.ModelHash != modelHash)
            throw new FaultModelException($"The model for {info.Fault.ToTerm()} was trained on body points of models {info.ModelHash}; this run has {modelHash}. Train it on verdicts of this run.");
        if (Convert.ToHexStringLower(SHA256.HashData(weights)) != info.ScorerHash)
            throw new FaultModelException($"The model file for {info.Fault.ToTerm()} is not the one that was saved (its SHA-256 differs): it is damaged. Restore it, or train anew.");
        return new(info, weights, Scorer.Load(weights, info.Preparation));
    }
}
