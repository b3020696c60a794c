using System.Security.Cryptography;
using System.Text;
using GaitSeat.Faults.Evaluation;
using GaitSeat.Faults.Features;
using GaitSeat.Model;

namespace GaitSeat.Faults.Training;

/// <summary>What became of a training.</summary>
public enum TrainingEnd
{
    /// <summary>Too few verdicts to say anything; the rules stay in force.</summary>
    TooFew,

    /// <summary>A model was trained and is kept beside, but does not take over.</summary>
    Candidate,

    /// <summary>The model takes over: it is better beyond the noise on riders it did not learn from.</summary>
    Replaces,
}

/// <param name="Reason">One line for people.</param>
/// <param name="Model">Null where nothing was trained.</param>
/// <param name="HeldOut">Probability of each spell from models that had not seen its rider: what a later model is held against.</param>
public sealed record TrainingOutcome(Fault Fault, TrainingEnd End, string Reason, TrainingSet Data, FaultModel? Model, EvaluationReport? Report, IReadOnlyDictionary<SpellKey, double> HeldOut);

/// <summary>The model in use of a fault and the held-out probabilities of its training.</summary>
public sealed record ModelInUse(FaultModel Model, IReadOnlyDictionary<SpellKey, double> HeldOut);

/// <summary>Trains one fault's model and decides whether it takes over.</summary>
public sealed class FaultTrainer(TrainingSettings settings, EvaluationSettings evaluation, string softwareVersion)
{
    /// <param name="inUse">What it is held against; null for the rules.</param>
    /// <exception cref="RiderLeakException">A cut of riders leaks; nothing is trained.</exception>
    public TrainingOutcome Train(TrainingSet data, ModelInUse? inUse, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(data);
        if (TooFew(data) is { } why) return Refuse(data, why);
        try
        {
            return TrainOn(data, inUse, cancellationToken);
        }
        catch (TooFewVerdictsException e)
        {
            return Refuse(data, e.Message);
        }
    }

    private TrainingOutcome TrainOn(TrainingSet data, ModelInUse? inUse, CancellationToken cancellationToken)
    {
        var (fault, spells) = (data.Verdicts.Fault, data.Spells);
        var validation = new CrossValidation(settings);
        var cross = validation.Run(spells, cancellationToken);
        var report = new Evaluator(spells, cross, settings, evaluation).Report(fault, IncumbentOf(spells, inUse), cancellationToken);
        var choice = validation.Choose(spells, cancellationToken);
        var scorer = Trainer.Fit(spells, choice.Kind, settings);
        var model = Package(data, choice, scorer);
        var heldOut = spells.Select((s, i) => (s.Row.Key, P: cross.Probabilities[i])).ToDictionary(s => s.Key, s => s.P);
        var better = report.GainOverInUse.Lower > 0;
        return new(fault, better ? TrainingEnd.Replaces : TrainingEnd.Candidate, Reason(report, better), data, model, report, heldOut);
    }

    private string? TooFew(TrainingSet data)
    {
        var (there, not) = (data.Spells.Where(s => s.IsThere).ToArray(), data.Spells.Where(s => !s.IsThere).ToArray());
        static int Riders(LabelledSpell[] spells) => spells.Select(s => s.Rider).Distinct().Count();
        if (data.Spells.Count == 0) return "Nobody has judged it on a spell of a known rider.";
        if (there.Length == 0 || not.Length == 0) return $"All {data.Spells.Count} verdicts say the same; both answers are needed.";
        if (there.Length < settings.MinimumPositives || not.Length < settings.MinimumNegatives)
            return $"{there.Length} spells with the fault and {not.Length} without were judged; at least {settings.MinimumPositives} and {settings.MinimumNegatives} are needed to say anything.";
        var folds = Math.Max(settings.MinimumRidersEach, settings.OuterFolds);
        return Riders(there) < folds || Riders(not) < folds
            ? $"The spells with the fault come from {Riders(there)} riders, those without from {Riders(not)}; at least {folds} of each are needed to hold riders out."
            : null;
    }

    /// <summary>A spell the model in use had learnt from is judged by its held-out probability; any other by the model itself, which may know the rider: that errs towards keeping what is in use.</summary>
    private static Incumbent IncumbentOf(IReadOnlyList<LabelledSpell> spells, ModelInUse? inUse)
    {
        if (inUse is null) return new(Evaluator.RulesName, [.. spells.Select(s => s.Rule)]);
        var now = inUse.Model.Probabilities([.. spells.Select(s => s.Row)]);
        return new(inUse.Model.Hash, [.. spells.Select((s, i) => inUse.HeldOut.TryGetValue(s.Row.Key, out var held) ? held : now[i])]);
    }

    private FaultModel Package(TrainingSet data, Choice choice, Scorer scorer)
    {
        var spells = data.Spells;
        var weights = scorer.ToBytes();
        var from = spells[0].Row.Spell.Provenance;
        var info = new FaultModelInfo(
            data.Verdicts.Fault, choice.Kind, choice.Calibration, scorer.Preparation, FeatureCatalogue.SchemaHash, data.Features, settings, Provenance.CurrentSchemaVersion, from.PipelineHash, from.ModelHash,
            softwareVersion, spells.Count, spells.Count(s => s.IsThere), spells.Select(s => s.Rider).Distinct().Count(), DataHash(spells),
            Convert.ToHexStringLower(SHA256.HashData(weights)), FeatureReference.Of([.. spells.Select(s => s.Row.Values)]));
        return new(info, weights, scorer);
    }

    /// <summary>Round-trip text of numbers, so that the hash tells any change of a feature or verdict.</summary>
    private static string DataHash(IReadOnlyList<LabelledSpell> spells)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var s in spells)
            hash.AppendData(Encoding.UTF8.GetBytes(FormattableString.Invariant($"{s.Row.Key.ClipKey} {s.Row.Key.SpellNumber} {s.Rider} {s.IsThere} ") + string.Join(' ', s.Row.Values.Select(v => v.ToString("R", System.Globalization.CultureInfo.InvariantCulture))) + "\n"));
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static string Reason(EvaluationReport report, bool better)
    {
        var (gain, ap) = (report.GainOverInUse, report.Compared[0].AveragePrecision);
        var figures = FormattableString.Invariant($"average precision {ap.Value:0.000} on held-out riders, {gain.Value:+0.000;-0.000} against {Short(report.InUse)} (95 % interval {gain.Lower:+0.000;-0.000} to {gain.Upper:+0.000;-0.000})");
        return better ? $"Takes over: {figures}." : $"Kept as a candidate, not better beyond the noise: {figures}.";
    }

    private static string Short(string name) => name == Evaluator.RulesName ? "the rules" : "model " + name[..12];

    private static TrainingOutcome Refuse(TrainingSet data, string why) =>
        new(data.Verdicts.Fault, TrainingEnd.TooFew, why + " The rules stay in force.", data, null, null, new Dictionary<SpellKey, double>());
}
