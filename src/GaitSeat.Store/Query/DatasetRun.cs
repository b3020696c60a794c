namespace GaitSeat.Store;

/// <summary>One run of a dataset: the rows of one pipeline and one set of models. Rows of several runs must not be counted together.</summary>
public sealed record DatasetRun(string PipelineHash, string ModelHash)
{
    internal string Where => $"pipeline_hash = {Quoted(PipelineHash)} AND model_hash = {Quoted(ModelHash)}";

    /// <summary>How many runs a dataset holds, told by the names of its files: no file is opened.</summary>
    public static int CountIn(string datasetFolder)
    {
        var folder = Path.Combine(datasetFolder, ClipsTable.Name);
        return Directory.Exists(folder)
            ? Directory.EnumerateFiles(folder, "*" + RunName.Extension).Select(f => RunName.RunOf(Path.GetFileName(f))).Distinct(StringComparer.Ordinal).Count()
            : 0;
    }

    /// <summary>The only run there is, or the one whose pipeline hash begins as given.</summary>
    /// <exception cref="DatasetException">There is no such run, or it is not clear which is meant.</exception>
    public static DatasetRun Choose(DatasetQuery query, string? pipelineHash)
    {
        ArgumentNullException.ThrowIfNull(query);
        var runs = query.Query("SELECT pipeline_hash, model_hash, count(*) AS clips FROM clips GROUP BY ALL ORDER BY clips DESC, pipeline_hash, model_hash")
            .Select(r => (Run: new DatasetRun((string)r["pipeline_hash"]!, (string)r["model_hash"]!), Clips: (long)r["clips"]!)).ToArray();
        if (runs.Length == 0) throw new DatasetException("The dataset holds no clip yet. Measure clips into it first.");
        var meant = runs.Where(r => pipelineHash is null || r.Run.PipelineHash.StartsWith(pipelineHash, StringComparison.OrdinalIgnoreCase)).ToArray();
        if (meant.Length == 1) return meant[0].Run;
        var list = string.Join("; ", runs.Select(r => $"{r.Run.PipelineHash} with models {r.Run.ModelHash} ({r.Clips} clips)"));
        throw new DatasetException(meant.Length == 0
            ? $"No run has a pipeline hash that begins with '{pipelineHash}'. There are: {list}."
            : $"The dataset holds several runs; name the pipeline hash of one, or keep runs of other models in a dataset of their own. There are: {list}.");
    }

    private static string Quoted(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";
}
