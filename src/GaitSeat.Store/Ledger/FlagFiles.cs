namespace GaitSeat.Store;

/// <summary>The files of the flags table: one a clip that has flags, under the name of the clip's other files. They are made anew from spells and fault models, so nothing is lost when one is taken away.</summary>
internal sealed class FlagFiles(string folder)
{
    /// <summary>Writes the flags of a run; files of this run for clips without flags are taken away.</summary>
    public async Task WriteAsync(IReadOnlyList<FlagRecord> flags, DatasetRun run, string softwareVersion, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(flags);
        var clips = flags.GroupBy(f => RunName.Of(f.Spell.Provenance.ClipKey, run.PipelineHash, run.ModelHash)).ToDictionary(g => g.Key, g => g.ToArray(), StringComparer.Ordinal);
        if (flags.FirstOrDefault(f => f.Spell.Provenance.PipelineHash != run.PipelineHash || f.Spell.Provenance.ModelHash != run.ModelHash) is { } other)
            throw new ArgumentException($"A flag on '{other.Spell.Provenance.ClipFile}' is of another run.", nameof(flags));
        try
        {
            foreach (var stale in Directory.EnumerateFiles(folder, "*-" + RunName.RunPart(run.PipelineHash, run.ModelHash)).Where(f => !clips.ContainsKey(Path.GetFileName(f))).ToList()) File.Delete(stale);
            foreach (var (name, ofClip) in clips)
            {
                FlagRow[] rows = [.. ofClip.OrderBy(f => f.Spell.Key).ThenBy(f => f.Fault).Select(f => new FlagRow(f, softwareVersion))];
                await AtomicParquet.WriteAsync(FlagsTable.Table, stream => FlagsTable.Table.WriteAsync(rows, stream, cancellationToken), Path.Combine(folder, name), cancellationToken);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"The flags could not be written to '{folder}' ({e.Message}). Check rights and room on the disk, then run again.", e);
        }
    }
}
