using System.Security.Cryptography;
using System.Text;
using GaitSeat.Faults;
using GaitSeat.Model;
using GaitSeat.Motion;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using GaitSeat.Studio;

namespace GaitSeat.Cli.Learning;

/// <summary>The judged demo season as a dataset: clips that were ridden but not drawn, measured by the maths and the rules of the house, with the judge's answers.</summary>
/// <param name="pipeline">Settings of maths and rules.</param>
internal sealed class UndrawnSeason(IReadOnlyList<JudgedClip> clips, PipelineSettings pipeline, string softwareVersion)
{
    private const string Judge = "made-judge";

    /// <summary>No model looked: the points are the studio's.</summary>
    private static readonly string NoModels = Hash("points of the studio, put wrong by chance");

    private readonly string _pipelineHash = PipelineHash.Of(pipeline);

    internal async Task WriteAsync(Dataset dataset, CancellationToken ct)
    {
        var options = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = ct };
        await Parallel.ForEachAsync(clips, options, async (clip, token) => await dataset.WriteAsync(Measured(clip), withTracks: false, token));
    }

    /// <summary>One answer for each fault of the plan in each spell of rising trot, as a sheet for <c>verdicts</c>.</summary>
    internal async Task WriteVerdictsAsync(string path, IReadOnlyList<RiddenSpell> spells, CancellationToken ct)
    {
        var answers = clips.ToDictionary(FileOf, c => c.Answers, StringComparer.Ordinal);
        var lines = spells.Where(s => s.Spell.Gait == Gait.RisingTrot)
            .SelectMany(s => answers[s.Provenance.ClipFile].Select(a => $"{s.Provenance.ClipFile},{s.Spell.Number},{a.Key.ToTerm()},{(a.Value ? VerdictAnswer.Agrees : VerdictAnswer.DoesNot).ToTerm()},{Judge},{s.SessionDate:yyyy-MM-dd}"));
        await File.WriteAllLinesAsync(path, lines.Prepend("clip_file,spell,fault,verdict,judge,judged_at"), ct);
    }

    private ClipRecord Measured(JudgedClip clip)
    {
        var truth = UndrawnClip.TruthOf(clip.Script, clip.Name);
        var lengths = new BodyLengths(clip.Script.StatureCm);
        var motion = MotionAnalysis.Analyse(UndrawnClip.See(truth, clip.Script.Seed, clip.RiderSeed), lengths, pipeline.Motion);
        var session = new Model.Session(
            FileOf(clip), clip.Date, null, clip.Rider, clip.Horse, lengths, null, null, clip.Script.Facing.ToTerm(), true, null,
            new Dictionary<string, string> { ["horse_colour"] = clip.Coat, ["camera"] = truth.Camera });
        return new(
            new(Hash(clip.Name), FileOf(clip), _pipelineHash, NoModels, softwareVersion, Provenance.CurrentSchemaVersion), session, null, ClipStatus.Measured, null, null, null, motion,
            RuleFindings.Find(motion.Spells, motion.Strides, pipeline.Rules), motion.LeftOut, truth.Frames);
    }

    private static string FileOf(JudgedClip clip) => clip.Name + ".mp4";

    private static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
