using System.Security.Cryptography;
using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// The name under which a clip's files are kept, the same in every table: <c>clipKey[..16]-run[..12].parquet</c>.
/// The run is a hash over pipeline hash, model hash and schema version: another setting, model or table layout gives another file,
/// so old rows stay as they are. 64 and 48 bits keep names short; a chance clash among a million clips has odds below 1 in 10 million,
/// and the full hashes stand in every row.
/// </summary>
internal static class RunName
{
    internal const string Extension = ".parquet";
    private const int RunDigits = 12;

    internal static string Of(Provenance p) => Of(p.ClipKey, p.PipelineHash, p.ModelHash);

    internal static string Of(string clipKey, string pipelineHash, string modelHash) => Of(clipKey, pipelineHash, modelHash, Provenance.CurrentSchemaVersion);

    /// <param name="schemaVersion">Version of the tables' layout the file is written in.</param>
    internal static string Of(string clipKey, string pipelineHash, string modelHash, int schemaVersion) => ClipPart(clipKey) + RunPart(pipelineHash, modelHash, schemaVersion);

    /// <summary>What the names of all files of one run end with.</summary>
    internal static string RunPart(string pipelineHash, string modelHash) => RunPart(pipelineHash, modelHash, Provenance.CurrentSchemaVersion);

    private static string RunPart(string pipelineHash, string modelHash, int schemaVersion)
    {
        ArgumentException.ThrowIfNullOrEmpty(pipelineHash);
        ArgumentException.ThrowIfNullOrEmpty(modelHash);
        var run = SHA256.HashData(Encoding.UTF8.GetBytes($"{pipelineHash}\n{modelHash}\n{schemaVersion}"));
        return Convert.ToHexStringLower(run)[..RunDigits] + Extension;
    }

    /// <summary>The part of a clip's file name that tells the run.</summary>
    internal static string RunOf(string fileName) => fileName[(fileName.IndexOf('-', StringComparison.Ordinal) + 1)..];

    /// <summary>What the names of all files of one clip begin with.</summary>
    internal static string ClipPart(string clipKey)
    {
        ArgumentNullException.ThrowIfNull(clipKey);
        if (clipKey.Length != 64 || !clipKey.All(char.IsAsciiHexDigitLower))
        {
            throw new ArgumentException($"A clip key is 64 lower-case hex digits (SHA-256), not '{clipKey}'.", nameof(clipKey));
        }

        return ClipKey.InName(clipKey) + "-";
    }
}
