using GaitSeat.Pipeline.Season;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Watch;

/// <summary>The session sheet over a night in which someone may edit it: read anew when it changes. A sheet with errors is told of, and the last good one holds on.</summary>
public sealed class SheetKeeper(string folder, Action<string> say)
{
    private readonly Lock _guard = new();
    private SeasonSheet? _sheet;
    private (DateTime, long) _stamp;

    /// <exception cref="SeasonException">The first sheet holds errors: there is no good one to hold on to.</exception>
    public SeasonSheet Current()
    {
        lock (_guard)
        {
            var file = new FileInfo(Path.Combine(folder, SessionSheet.FileName));
            var stamp = file.Exists ? (file.LastWriteTimeUtc, file.Length) : default;
            if (_sheet is not null && stamp == _stamp) return _sheet;
            try
            {
                _sheet = SeasonSheet.Of(folder);
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
}
