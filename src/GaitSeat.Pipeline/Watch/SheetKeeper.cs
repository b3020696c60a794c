using GaitSeat.Pipeline.Season;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Watch;

/// <summary>The session sheet over a night in which someone may edit it: read anew when it or the consent file changes, and when a new day begins, since a consent may have ended. A sheet with errors is told of, and the last good one holds on.</summary>
/// <param name="read">Told of each good sheet; the dataset keeps how far the consents reach. Null for nobody.</param>
public sealed class SheetKeeper(string folder, ForgottenList forgotten, TimeProvider time, Action<string> say, Action<SeasonSheet>? read = null)
{
    private readonly Lock _guard = new();
    private SeasonSheet? _sheet;
    private (DateOnly, (DateTime, long), (DateTime, long)) _stamp;

    /// <exception cref="SeasonException">The first sheet holds errors: there is no good one to hold on to.</exception>
    public SeasonSheet Current()
    {
        lock (_guard)
        {
            var today = DateOnly.FromDateTime(time.GetLocalNow().Date);
            var stamp = (today, StampOf(SessionSheet.FileName), StampOf(ConsentFile.FileName));
            if (_sheet is not null && stamp == _stamp) return _sheet;
            try
            {
                _sheet = SeasonSheet.Of(folder, today).Without(forgotten);
                read?.Invoke(_sheet);
                foreach (var note in _sheet.Notes) say(note);
            }
            catch (SeasonException e) when (_sheet is not null)
            {
                say($"{e.Message}; the last good one is used: {string.Join("; ", e.Problems)}");
            }

            _stamp = stamp;
            return _sheet;
        }
    }

    private (DateTime, long) StampOf(string name) => new FileInfo(Path.Combine(folder, name)) is { Exists: true } file ? (file.LastWriteTimeUtc, file.Length) : default;
}
