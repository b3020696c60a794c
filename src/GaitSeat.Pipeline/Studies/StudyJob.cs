using System.Text;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using GaitSeat.Study.Answers;
using GaitSeat.Study.Definition;
using GaitSeat.Study.Report;

namespace GaitSeat.Pipeline.Studies;

/// <summary>What is asked of a study.</summary>
/// <param name="StudyPath">The study file.</param>
/// <param name="DatasetFolder">Not needed where every question only plans.</param>
/// <param name="PipelineHash">Beginning of the pipeline hash of the run to read, where the dataset holds several.</param>
/// <param name="Command">What was typed, for the report.</param>
public sealed record StudyRequest(string StudyPath, string? DatasetFolder, string? PipelineHash, string OutFolder, string Command, string SoftwareVersion)
{
    /// <summary>Which clips of a run are left out, since their riders did not agree to studies.</summary>
    public Func<DatasetQuery, DatasetRun, LeftOutClips> LeaveOut { get; init; } = (_, _) => LeftOutClips.None;
}

/// <summary>From a study file and a dataset to a report folder.</summary>
public static class StudyJob
{
    /// <summary>What the database may hold while it reads; without a limit it takes what the machine has. A million strides of a dozen columns are read within 0.45 GB there, beside what it holds of the files' own descriptions.</summary>
    private const long LeastMegabytes = 300, BytesPerStride = 150;

    /// <returns>The answers; the report is written.</returns>
    /// <exception cref="SettingsException">The study file is wrong, or asks for columns there are not; every mistake with its line.</exception>
    /// <exception cref="DatasetException">There is no such dataset or run, or it cannot be read.</exception>
    public static IReadOnlyList<StudyResult> Run(StudyRequest request, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        var file = StudyFile.Read(request.StudyPath);
        var (results, origin) = file.Questions.All(q => q.Kind == StudyKind.Planning) ? (StudyRun.Of(file.Questions, _ => throw new InvalidOperationException("a plan has no rows")), null) : Asked(file, request, ct);
        var registration = new Registration(Path.GetFileName(file.Path), file.Sha256, file.Registered, DateOnly.FromDateTime(file.ChangedAt.UtcDateTime), Encoding.UTF8.GetString(File.ReadAllBytes(file.Path)));
        StudyReport.Write(new(file.Title, file.DataNote, registration, origin, results, request.Command, request.SoftwareVersion), request.OutFolder);
        return results;
    }

    private static (IReadOnlyList<StudyResult> Results, DataOrigin Origin) Asked(StudyFile file, StudyRequest request, CancellationToken ct)
    {
        if (request.DatasetFolder is not { } folder) throw new DatasetException("The study asks for strides, and no dataset is given: name its folder with --dataset.");
        using var query = new DatasetQuery(folder);
        Limit(query, 0);
        var run = DatasetRun.Choose(query, request.PipelineHash);
        var leftOut = request.LeaveOut(query, run);
        var origin = OriginReader.Read(query, run, folder, leftOut);
        var values = file.Questions.Select(q => q.ValuesFile).Where(v => v.Length > 0).Distinct().ToDictionary(v => v, v => new ValuesFile(query, Beside(file.Path, v), v));
        var sources = file.Questions.Select(q => new StudySource(query, run, values.GetValueOrDefault(q.ValuesFile), leftOut)).ToArray();
        Refuse(file, sources);
        Limit(query, origin.Strides);
        var withValues = origin with { ValuesFiles = [.. values.Values.Select(v => (v.Name, v.Sha256, v.Lines, v.Unmatched(query)))] };
        var prints = new string[file.Questions.Count];
        var last = file.Questions.ToList().FindLastIndex(q => q.Kind != StudyKind.Planning);
        var results = StudyRun.Of(file.Questions, question =>
        {
            ct.ThrowIfCancellationRequested();
            var i = file.Questions.ToList().FindIndex(q => ReferenceEquals(q, question));
            var table = sources[i].Read(query, NeededColumns.Of(question));
            // The database keeps what it took until it is closed; the model needs the room.
            if (i == last) query.Dispose();
            prints[i] = TableFingerprint.Of(table);
            return table;
        });
        return (results, withValues with { Fingerprints = [.. prints.Select(p => p ?? "")] });
    }

    private static void Limit(DatasetQuery query, long strides) => query.Query($"SET memory_limit = '{LeastMegabytes + strides * BytesPerStride / 1_000_000} MB'");

    /// <summary>Columns that are not there, of all questions at once.</summary>
    private static void Refuse(StudyFile file, StudySource[] sources)
    {
        SettingsError[] errors = [.. file.Questions.SelectMany((q, i) => StudyCheck.Of(q, sources[i].Columns).Select(m => file.ErrorOf(i, m)))];
        if (errors.Length > 0) throw new SettingsException(errors);
    }

    private static string Beside(string studyPath, string name) => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(studyPath))!, name);
}
