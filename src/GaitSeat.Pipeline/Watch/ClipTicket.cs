using GaitSeat.Pipeline.Season;

namespace GaitSeat.Pipeline.Watch;

/// <summary>A clip as it lay in the folder when it was queued. Another size or time is another ticket: the file was replaced.</summary>
/// <param name="File">Name within the season's folder, which machines may have mounted at different places.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="ModifiedTicksUtc">When it was last written, 100 ns ticks of UTC.</param>
public sealed record ClipTicket(string File, long Bytes, long ModifiedTicksUtc)
{
    /// <exception cref="FileNotFoundException">It is gone, or a link that leads nowhere.</exception>
    public static ClipTicket Of(FileInfo file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var (bytes, modified) = ClipFile.StampOf(file.FullName);
        return new(file.Name, bytes, modified);
    }
}
