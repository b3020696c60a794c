using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Cli.Accuracy;

/// <summary>What the eyes made of a clip: what they saw, or why the clip was set aside.</summary>
public sealed record Look(SeenClip? Seen, string? Reason, string? Detail);

/// <summary>
/// Keeps what was seen in each clip of an accuracy run, one file a clip, written as soon as the clip is done: a run that was stopped goes on from there,
/// and the maths can be run again on the same sightings in milliseconds.
/// </summary>
/// <param name="folder">Where the files go.</param>
/// <param name="anySettings">Take what an earlier run saw, whatever settings, models and build it saw with; only another clip under the same name is seen anew.</param>
public sealed class SeenStore(string folder, bool anySettings)
{
    private const string Ending = ".seen.json.gz";

    private static readonly JsonSerializerOptions Json = new()
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        IgnoreReadOnlyProperties = true,
    };

    /// <param name="workshop">Opened only when a clip has to be looked at.</param>
    public async Task<Look> LookAsync(string clipPath, PipelineSettings settings, Lazy<Workshop> workshop, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        var clip = await HashAsync(clipPath, ct);
        if (Read(clipPath) is { } kept && kept.Clip == clip && (anySettings || kept.Eyes == EyesOf(settings, workshop.Value.ModelHash))) return kept.Look;
        var look = await LookAnewAsync(clipPath, workshop.Value, ct);
        Write(clipPath, new(clip, EyesOf(settings, workshop.Value.ModelHash), look));
        return look;
    }

    private static async Task<Look> LookAnewAsync(string clipPath, Workshop workshop, CancellationToken ct)
    {
        try
        {
            return new(await new ClipMeasurer(workshop).SeeAsync(clipPath, null, ct), null, null);
        }
        catch (ClipSetAsideException e)
        {
            return new(null, e.Reason, e.Message);
        }
    }

    /// <summary>Names everything that decides what is seen: settings before the maths, models, and the build of the code that looks.</summary>
    private static string EyesOf(PipelineSettings settings, string modelHash)
    {
        var before = PipelineHash.Of(settings with { Motion = new(), Rules = new() });
        var builds = new[] { typeof(Scout), typeof(FrameReader), typeof(Workshop) }.Select(t => t.Assembly.ManifestModule.ModuleVersionId);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join(' ', [before, modelHash, .. builds]))));
    }

    private static async Task<string> HashAsync(string path, CancellationToken ct)
    {
        await using var stream = File.OpenRead(path);
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, ct));
    }

    private string PathOf(string clipPath) => Path.Combine(folder, Path.GetFileNameWithoutExtension(clipPath) + Ending);

    /// <summary>Null where there is none, or one that cannot be read: then the clip is seen anew.</summary>
    private Kept? Read(string clipPath)
    {
        if (!File.Exists(PathOf(clipPath))) return null;
        try
        {
            using var stream = new GZipStream(File.OpenRead(PathOf(clipPath)), CompressionMode.Decompress);
            return JsonSerializer.Deserialize<Kept>(stream, Json);
        }
        catch (Exception e) when (e is JsonException or InvalidDataException)
        {
            return null;
        }
    }

    private void Write(string clipPath, Kept kept) => AtomicFile.WriteBytes(PathOf(clipPath), file =>
    {
        using var stream = new GZipStream(file, CompressionLevel.Fastest, leaveOpen: true);
        JsonSerializer.Serialize(stream, kept, Json);
    });

    private sealed record Kept(string Clip, string Eyes, Look Look);
}
