using GaitSeat.Model;
using GaitSeat.Pipeline.Season;
using GaitSeat.Store;

namespace GaitSeat.Review.Clips;

/// <summary>
/// Whether a clip may be shown, by the session sheet and the consent file as they stand now: consent taken back while the page is open, or ended at midnight, holds at once. A sheet with errors lets nothing
/// through, since nobody can say what it means. A folder without a sheet holds no word on consent, and its clips are shown as they were measured.
/// </summary>
public sealed class ConsentGate(string folder, TimeProvider time)
{
    private readonly Lock _guard = new();
    private readonly string _sheetPath = Path.Combine(folder, SessionSheet.FileName);
    private readonly string _consentPath = Path.Combine(folder, ConsentFile.FileName);
    private (DateOnly Day, (DateTime, long)? Sheet, (DateTime, long)? Consent)? _read;
    private SeasonSheet? _sheet;
    private bool _hadSheet, _hadConsent;

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
                { } row => row.Against(ConsentUse.Show) is { } gap ? $"There is no consent to show this clip: {gap.Sentence}." : null,
                null => $"The clip has no row in {SessionSheet.FileName}, so there is no consent to show it.",
            };
        }
    }

    private void Refresh()
    {
        var today = DateOnly.FromDateTime(time.GetLocalNow().Date);
        var now = (today, Sheet: StampOf(_sheetPath), Consent: StampOf(_consentPath));
        // A file that was there and is gone has taken everyone's word with it.
        if ((now.Sheet is null && _hadSheet) || (now.Consent is null && _hadConsent)) throw new IOException("the sheet or the consent file is gone");
        if (now.Sheet is null) return;
        (_hadSheet, _hadConsent) = (true, now.Consent is not null);
        if (now == _read) return;
        _sheet = SeasonSheet.Of(folder, today);
        _read = now;
    }

    private static (DateTime, long)? StampOf(string path) => new FileInfo(path) is { Exists: true } file ? (file.LastWriteTimeUtc, file.Length) : null;
}
