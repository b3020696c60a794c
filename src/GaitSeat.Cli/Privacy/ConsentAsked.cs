using GaitSeat.Model;
using GaitSeat.Pipeline.Season;
using GaitSeat.Store;

namespace GaitSeat.Cli.Privacy;

/// <summary>Whose consent reaches a use: by sheet and consent file of today where their folder is named, else by what the dataset recorded when a run last read them.</summary>
internal static class ConsentAsked
{
    /// <param name="clipFolder">Where sheet and consent file lie; null where they are not named.</param>
    /// <exception cref="SeasonException">The folder has no sheet, or it cannot be used.</exception>
    internal static LeftOutClips Of(DatasetQuery query, DatasetRun run, string datasetFolder, ConsentUse use, string? clipFolder)
    {
        if (clipFolder is not null && !File.Exists(Path.Combine(clipFolder, SessionSheet.FileName))) throw new SeasonException($"there is no {SessionSheet.FileName} in '{clipFolder}', so nobody's consent is known");
        var sheet = clipFolder is null ? null : SeasonSheet.Of(clipFolder, Today.Local);
        return LeftOutClips.Of(query, run, datasetFolder, use, file => sheet?.RowOf(file), Today.Local);
    }
}
