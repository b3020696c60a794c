using System.Text.Json;
using GaitSeat.Faults.Cards;
using GaitSeat.Faults.Features;
using GaitSeat.Model;

namespace GaitSeat.Faults.Training;

/// <summary>
/// The fault models of a dataset on disk: <c>fault/hash/</c> holds weights, facts, held-out probabilities and card of every model ever kept; <c>fault/in-use.json</c>
/// names the one in use. A model is never written over, so what was in use can be put back by naming it again.
/// </summary>
public sealed class ModelShelf
{
    private const string Weights = "scorer.zip";
    private const string Info = "model.json";
    private const string HeldOut = "held-out.json";
    private const string InUse = "in-use.json";
    private const int NameDigits = 16;
    private readonly string _folder;

    public ModelShelf(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        _folder = Path.GetFullPath(folder);
    }

    /// <summary>Folder of a model, whether or not it is there.</summary>
    public string FolderOf(FaultModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return Path.Combine(_folder, model.Info.Fault.ToTerm(), model.Hash[..NameDigits]);
    }

    /// <summary>Every file of the shelf, in ordinal order of their paths; none where there is no folder.</summary>
    public IReadOnlyList<FileInfo> Files() => Directory.Exists(_folder) ? [.. new DirectoryInfo(_folder).EnumerateFiles("*", SearchOption.AllDirectories).OrderBy(f => f.FullName, StringComparer.Ordinal)] : [];

    /// <summary>Keeps a trained model with its card, and puts it in use where it takes over.</summary>
    /// <param name="since">When; stands in <c>in-use.json</c> only, so that the model's own files are the same for the same verdicts.</param>
    /// <param name="pictureOf">Full path of a clip's picture, by clip key; null where there is none. See <see cref="ModelCard"/>.</param>
    /// <exception cref="ArgumentException">The outcome has no model.</exception>
    public void Keep(TrainingOutcome outcome, DateTimeOffset since, Func<string, string?> pictureOf)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        if (outcome.Model is not { } model) throw new ArgumentException("Nothing was trained, so there is nothing to keep.", nameof(outcome));
        var folder = FolderOf(model);
        if (!File.Exists(Path.Combine(folder, Info)))
        {
            Directory.CreateDirectory(folder);
            Put(folder, Weights, model.Weights);
            Put(folder, HeldOut, JsonSerializer.SerializeToUtf8Bytes(outcome.HeldOut.Select(h => new HeldOutSpell(h.Key.ClipKey, h.Key.SpellNumber, h.Value)).OrderBy(h => h.Clip, StringComparer.Ordinal).ThenBy(h => h.Spell), FaultJson.Options));
            foreach (var (name, text) in ModelCard.Files(outcome, clip => pictureOf(clip) is { } path ? Path.GetRelativePath(folder, path).Replace('\\', '/') : null)) Put(folder, name, System.Text.Encoding.UTF8.GetBytes(text));
            Put(folder, Info, model.InfoBytes());
        }

        if (outcome.End == TrainingEnd.Replaces)
            Put(Path.Combine(_folder, model.Info.Fault.ToTerm()), InUse, JsonSerializer.SerializeToUtf8Bytes(new InUseNote(model.Hash, since.ToUniversalTime()), FaultJson.Options));
    }

    /// <summary>The model in use; null where the rules are.</summary>
    /// <param name="modelHash">Body-point models of the spells it is to speak of.</param>
    /// <param name="features">How the features of those spells are made.</param>
    /// <exception cref="FaultModelException">It cannot be used: why, and what to do. The rules stay in force.</exception>
    public ModelInUse? Load(Fault fault, string modelHash, FeatureSettings features)
    {
        var note = Path.Combine(_folder, fault.ToTerm(), InUse);
        if (!File.Exists(note)) return null;
        var hash = Read<InUseNote>(note, fault).Hash;
        if (hash.Length < NameDigits || !hash.All(char.IsAsciiHexDigitLower)) throw new FaultModelException($"'{note}' names no model ('{hash}'); 64 lower-case hex digits are allowed. Correct it, or delete it to go back to the rules.");
        var folder = Path.Combine(_folder, fault.ToTerm(), hash[..NameDigits]);
        var weights = Path.Combine(folder, Weights);
        if (!File.Exists(weights)) throw new FaultModelException($"The model for {fault.ToTerm()} is not where '{note}' says: '{weights}' is missing. Restore it, or delete the note to go back to the rules.");
        var model = FaultModel.Load(Read<FaultModelInfo>(Path.Combine(folder, Info), fault), File.ReadAllBytes(weights), modelHash, features);
        if (model.Hash != hash) throw new FaultModelException($"The facts of the model for {fault.ToTerm()} in '{folder}' were changed since it was put in use. Restore them, or train anew.");
        return new(model, Read<HeldOutSpell[]>(Path.Combine(folder, HeldOut), fault).ToDictionary(h => new SpellKey(h.Clip, h.Spell), h => h.Probability));
    }

    private static T Read<T>(string path, Fault fault)
    {
        try
        {
            return JsonSerializer.Deserialize<T>(File.ReadAllBytes(path), FaultJson.Options) ?? throw new JsonException("It is empty.");
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException)
        {
            throw new FaultModelException($"'{path}' of the model for {fault.ToTerm()} cannot be read ({e.Message}). Restore it, or train anew.", e);
        }
    }

    private static void Put(string folder, string name, byte[] bytes) => AtomicFile.WriteBytes(Path.Combine(folder, name), file => file.Write(bytes));

    private sealed record InUseNote(string Hash, DateTimeOffset Since);

    private sealed record HeldOutSpell(string Clip, int Spell, double Probability);
}
