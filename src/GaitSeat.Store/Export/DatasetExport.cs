using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>One run of a dataset in open formats. Only clips whose rider agreed leave; what stays behind is counted.</summary>
public sealed class DatasetExport : IDisposable
{
    private const string NoTracks = "no_tracks";
    private const string NoScaleOrSide = "no_scale_or_side";
    private const string NoStrides = "no_strides";
    private const string NoPictureSize = "no_picture_size";

    private readonly DatasetQuery _query;
    private readonly DatasetRun _run;
    private readonly IReadOnlyList<ExportClip> _clips;
    private readonly Dictionary<string, int> _withoutConsent;

    private DatasetExport(DatasetQuery query, DatasetRun run, IReadOnlyDictionary<string, Session>? sheet)
    {
        (_query, _run, _withoutConsent) = (query, run, []);
        var clips = new List<ExportClip>();
        foreach (var row in query.Query($"SELECT clip_key, clip_file, rider, width_px, height_px, session_hash IS NOT NULL AS has_row FROM clips WHERE {run.Where} ORDER BY clip_file, clip_key"))
        {
            if (ConsentCheck.Against((string)row["clip_file"]!, (bool)row["has_row"]!, sheet) is { } reason) Count(_withoutConsent, reason);
            else clips.Add(new((string)row["clip_key"]!, (string?)row["rider"], (int?)row["width_px"], (int?)row["height_px"]));
        }

        _clips = clips;
    }

    /// <param name="pipelineHash">The beginning of the run's pipeline hash; null where there is only one run.</param>
    /// <param name="sheet">The session sheet as it is today, by clip file; a consent taken back since counts. Null where it is not at hand.</param>
    /// <exception cref="DatasetException">There is no such dataset or run.</exception>
    public static DatasetExport Open(string datasetFolder, string? pipelineHash, IReadOnlyDictionary<string, Session>? sheet)
    {
        var query = new DatasetQuery(datasetFolder);
        try
        {
            return new(query, DatasetRun.Choose(query, pipelineHash), sheet);
        }
        catch
        {
            query.Dispose();
            throw;
        }
    }

    public DatasetRun Run => _run;

    /// <summary>Keys of the clips that may leave.</summary>
    public IReadOnlyList<string> ClipKeys => [.. _clips.Select(c => c.ClipKey)];

    /// <summary>Pseudonyms of the riders in them.</summary>
    public IReadOnlyList<string> Riders => [.. _clips.Select(c => c.Rider).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>One CSV a table, without <c>tracks</c> and <c>verdicts</c>, and without columns of free text.</summary>
    public ExportSummary Csv(string folder) => Tables(folder, ".csv", "FORMAT csv, HEADER true");

    /// <summary>The same as Parquet with Zstandard.</summary>
    public ExportSummary Parquet(string folder) => Tables(folder, RunName.Extension, "FORMAT parquet, COMPRESSION zstd");

    private ExportSummary Tables(string folder, string extension, string format) => Write(folder, (files, _) =>
    {
        var names = ExportNames.Of(_query);
        var keys = $"[{string.Join(", ", _clips.Select(c => SqlText.Literal(c.ClipKey)))}]::VARCHAR[]";
        var rows = 0L;
        foreach (var table in CsvTables.All)
        {
            // A session leaves only where every clip it was made from may.
            var may = table.Name == SessionsTable.Name ? $"list_has_all({keys}, string_split(clip_keys, ','))" : $"list_contains({keys}, clip_key)";
            var columns = CsvTables.ColumnsOf(table).Select(names.Sql);
            var sql = $"SELECT {string.Join(", ", columns)} FROM {table.Name} WHERE {_run.Where} AND {may} ORDER BY {SortKeys.Of(table)}";
            rows += Save(files, Path.Combine(folder, table.Name + extension), path => _query.Run($"COPY ({sql}) TO {SqlText.Literal(path)} ({format}, USE_TMP_FILE false)", c => c.ExecuteNonQuery()));
        }

        return rows;
    });

    /// <summary>One COCO file a clip.</summary>
    /// <param name="maxSidePx">Longest side of the analysed picture, px, as the run's settings had it.</param>
    public ExportSummary Coco(string folder, int maxSidePx) => Write(folder, (files, leftOut) => EachClip(leftOut, (clip, trace, spells) =>
    {
        if (clip is not { WidthPx: { } width, HeightPx: { } height }) return Count(leftOut, NoPictureSize);
        Facing At(double t) => spells.FirstOrDefault(s => t >= s.StartSeconds && t <= s.EndSeconds)?.Facing ?? Facing.Unknown;
        var (text, frames) = CocoFile.Make(clip, trace, Math.Max(1, Math.Max(width, height) / (double)maxSidePx), At);
        return frames == 0 ? Count(leftOut, NoScaleOrSide) : Text(files, Path.Combine(folder, clip.Name + ".coco.json"), text, frames);
    }));

    /// <summary>One TRC a spell of rising trot.</summary>
    public ExportSummary Trc(string folder) => Motion(folder, ".trc", (motion, path) => System.Text.Encoding.UTF8.GetBytes(TrcFile.Text(motion, Path.GetFileName(path))));

    /// <summary>One C3D a spell of rising trot.</summary>
    public ExportSummary C3d(string folder) => Motion(folder, ".c3d", (motion, _) => C3dFile.Bytes(motion));

    /// <summary>One WebVTT a clip with strides, named by the clip's key: the name of the file may tell who rides.</summary>
    public ExportSummary Vtt(string folder) => Write(folder, (files, leftOut) => _clips.Sum(clip =>
    {
        var spells = ExportSpell.Read(_query, clip.ClipKey, _run);
        var findings = _query.Query($"SELECT start_s, end_s, fault, summary FROM findings WHERE clip_key = {SqlText.Literal(clip.ClipKey)} AND {_run.Where} ORDER BY start_s, fault")
            .Select(r => new VttFinding((double)r["start_s"]!, (double)r["end_s"]!, (string)r["fault"]!, (string)r["summary"]!));
        var (text, cues) = VttFile.Make(spells, [.. findings]);
        return cues == 0 ? Count(leftOut, NoStrides) : Text(files, Path.Combine(folder, clip.Name + ".vtt"), text, cues);
    }));

    public void Dispose() => _query.Dispose();

    private ExportSummary Motion(string folder, string extension, Func<PlaneMotion, string, byte[]> bytes) => Write(folder, (files, leftOut) => EachClip(leftOut, (clip, trace, spells) =>
        spells.Where(s => s.Strides.Count > 0).Sum(spell =>
        {
            if (PlaneMotion.Of(trace, spell) is not { } motion) return Count(leftOut, NoScaleOrSide);
            var path = Path.Combine(folder, FormattableString.Invariant($"{clip.Name}-spell{spell.Number}{extension}"));
            return Save(files, path, p =>
            {
                File.WriteAllBytes(p, bytes(motion, path));
                return motion.Frames.Count;
            });
        })));

    private long EachClip(Dictionary<string, int> leftOut, Func<ExportClip, PointTrace, IReadOnlyList<ExportSpell>, long> export) => _clips.Sum(clip =>
    {
        var trace = PointTrace.Read(_query, clip.ClipKey, _run);
        return trace.Frames.Count == 0 ? Count(leftOut, NoTracks) : export(clip, trace, ExportSpell.Read(_query, clip.ClipKey, _run));
    });

    private ExportSummary Write(string folder, Func<List<string>, Dictionary<string, int>, long> write)
    {
        var files = new List<string>();
        var leftOut = new Dictionary<string, int>(_withoutConsent);
        try
        {
            Directory.CreateDirectory(folder);
            var rows = write(files, leftOut);
            return new(files, rows, leftOut);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"'{folder}' could not be written to ({e.Message}). Check rights and room on the disk, then export again.", e);
        }
    }

    private static long Text(List<string> files, string path, string text, long rows) => Save(files, path, p =>
    {
        File.WriteAllText(p, text);
        return rows;
    });

    private static long Save(List<string> files, string path, Func<string, long> write)
    {
        var rows = AtomicFile.Write(path, write);
        files.Add(path);
        return rows;
    }

    private static long Count(Dictionary<string, int> leftOut, string reason)
    {
        leftOut[reason] = leftOut.GetValueOrDefault(reason) + 1;
        return 0;
    }
}
