using GaitSeat.Model;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Season;

/// <summary>The rows of a season's sheet, looked up by clip.</summary>
public sealed class SeasonSheet
{
    private readonly IReadOnlyDictionary<string, Session>? _sessions;

    private SeasonSheet(IReadOnlyDictionary<string, Session>? sessions, IReadOnlyList<string> notes)
    {
        _sessions = sessions;
        Notes = notes;
    }

    /// <summary>What a user should know of the sheet.</summary>
    public IReadOnlyList<string> Notes { get; }

    /// <summary>Reads the sheet of a folder; a folder without one is fine.</summary>
    /// <param name="today">The day on which the consents must hold.</param>
    /// <exception cref="SeasonException">The sheet or its consent file holds errors; all are listed.</exception>
    public static SeasonSheet Of(string folder, DateOnly today)
    {
        var path = Path.Combine(folder, SessionSheet.FileName);
        if (!File.Exists(path))
            return new(null, [$"no {SessionSheet.FileName} in the folder: no rider sizes, so lengths are in percent of leg length; 'gaitseat sheet' writes a template"]);

        var sheet = SessionSheet.Read(path, today);
        return sheet.Errors.Count > 0
            ? throw new SeasonException($"'{path}' cannot be used", [.. sheet.Errors.Select(e => e.ToString())])
            : new(sheet.Sessions, [.. sheet.Warnings.Select(w => w.ToString())]);
    }

    /// <summary>The same, with no consent of those who were forgotten: their clips are not to be measured whatever the sheet says.</summary>
    public SeasonSheet Without(ForgottenList forgotten)
    {
        ArgumentNullException.ThrowIfNull(forgotten);
        if (_sessions is null || forgotten.Count == 0) return this;
        var rows = _sessions.ToDictionary(
            r => r.Key,
            r => forgotten.HasRider(r.Value.Rider) ? r.Value with { Consent = false, Terms = new(ConsentUse.None, null, ConsentStanding.Forgotten) } : r.Value,
            StringComparer.OrdinalIgnoreCase);
        return new(rows, Notes);
    }

    /// <summary>The rows; none where there is no sheet.</summary>
    public IEnumerable<Session> Rows => _sessions?.Values ?? [];

    /// <summary>The clip's row; null where it has none.</summary>
    public Session? RowOf(string clipFile) => _sessions?.GetValueOrDefault(clipFile);

    /// <summary>Whether there is a sheet and this clip is not in it.</summary>
    public bool Lacks(string clipFile) => _sessions is not null && !_sessions.ContainsKey(clipFile);
}
