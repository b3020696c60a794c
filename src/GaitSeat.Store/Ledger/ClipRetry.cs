namespace GaitSeat.Store;

/// <summary>
/// Makes a clip that was set aside undone again, so that the next run tries it anew. Only the rows of one run go; a clip that was measured is left alone,
/// and so are other runs, verdicts and marks.
/// </summary>
public static class ClipRetry
{
    /// <returns>False where the run has not set the clip aside.</returns>
    /// <exception cref="ArgumentException">The key is no clip key.</exception>
    /// <exception cref="DatasetException">The dataset cannot be read or a file not taken away; the clip may then still count as set aside.</exception>
    public static bool SetBack(Dataset dataset, DatasetRun run, string clipKey)
    {
        ArgumentNullException.ThrowIfNull(dataset);
        ArgumentNullException.ThrowIfNull(run);
        var name = RunName.Of(clipKey, run.PipelineHash, run.ModelHash);
        if (!dataset.Clips().Any(c => c.ClipKey == clipKey && c.PipelineHash == run.PipelineHash && c.ModelHash == run.ModelHash && c.Status == ClipStatus.SetAside)) return false;
        try
        {
            // clips goes first, as always: a clip half taken away must not pass for done.
            foreach (var table in TableList.InWriteOrder.Reverse()) File.Delete(Path.Combine(dataset.Folder, table.Name, name));
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"Clip '{clipKey}' could not be made undone in '{dataset.Folder}' ({e.Message}). Check rights, then try again.", e);
        }
    }
}
