namespace GaitSeat.Model;

/// <summary>Where a row came from. The first three make the key under which a clip's files are kept.</summary>
/// <param name="ClipKey">SHA-256 of the clip's bytes, lower-case hex.</param>
/// <param name="PipelineHash">SHA-256 over every setting that can change a number, lower-case hex.</param>
/// <param name="ModelHash">SHA-256 over names and hashes of the models in use, lower-case hex.</param>
public sealed record Provenance(string ClipKey, string ClipFile, string PipelineHash, string ModelHash, string SoftwareVersion, int SchemaVersion)
{
    /// <summary>
    /// Raised when the meaning or layout of a table changes.
    /// </summary>
    public const int CurrentSchemaVersion = 1;
}
