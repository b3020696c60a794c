using GaitSeat.Pipeline.Season;
using GaitSeat.Store;

namespace GaitSeat.Review.Clips;

/// <summary>
/// Whether a clip may be shown, by the session sheet as it stands now: consent taken back while the page is open holds at once. A sheet with errors lets nothing
/// through, since nobody can say what it means. A folder without a sheet holds no word on consent, and its clips are shown as they were measured.
/// </summary>
public sealed class ConsentGate(string folder)
{
    private readonly Lock _guard = new();
    private readonly string _sheetPath = Path.Combine(folder, SessionSheet.FileName);
    private (DateTime Modified, long Bytes)? _read;
    private SeasonSheet? _sheet;
    private bool _hadSheet;

    /// <returns>Null where the clip may be shown; else why not, a sentence.</returns>
    public string? Refusal(string clipFile)
    {
        lock (_guard)
        {
            try
            {
                Refresh();
            }
            catch (Exception e) when (e is SeasonException or IOException or UnauthorizedAccessException)
            {
                (_read, _sheet) = (null, null);
                return $"{SessionSheet.FileName} cannot be read, so nobody's consent is known. Correct it and look again.";
            }

            if (_sheet is null) return null;
            return _sheet.RowOf(clipFile) switch
            {
                { Consent: true } => null,
                { Consent: false } => $"{SessionSheet.FileName} says that there is no consent to this clip.",
                null => $"The clip has no row in {SessionSheet.FileName}, so there is no consent to show it.",
            };
        }
    }

    private void Refresh()
    {
        var file = new FileInfo(_sheetPath);
        (DateTime, long)? now = file.Exists ? (file.LastWriteTimeUtc, file.Length) : null;
        if (now is null)
        {
            // A sheet that was there and is gone has taken everyone's word with it.
            if (_hadSheet) throw new IOException("the sheet is gone");
            return;
        }

        _hadSheet = true;
        if (now == _read) return;
        _sheet = SeasonSheet.Of(folder);
        _read = now;
    }
}
