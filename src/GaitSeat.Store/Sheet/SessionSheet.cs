using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// The CSV beside the clips that says who rides in which clip. UTF-8 with or without byte order mark, comma or semicolon,
/// a decimal comma where the semicolon parts the fields.
/// </summary>
public static class SessionSheet
{
    public const string FileName = "session-sheet.csv";

    /// <summary>Reads and checks the whole sheet, and the consent file beside it where there is one; every error is reported, not only the first.</summary>
    /// <param name="today">The day on which the consents must hold.</param>
    public static SheetResult Read(string path, DateOnly today)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var (text, problem) = SheetText.Read(path, "session sheet");
        if (problem is not null) return Failed([problem]);
        if (SheetGrid.Cut(text!) is not { } grid) return Failed([new(null, null, $"'{path}' is empty; the first line must name the columns.")]);
        var header = HeaderCheck.Problems(grid, SheetColumns.Required);
        return header.Count > 0
            ? Failed([.. header, .. grid.Problems])
            : ConsentRows.Apply(SheetReader.Read(grid), Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, ConsentFile.FileName), today);
    }

    /// <summary>Writes a sheet with the clips listed and everything else to be filled in, consent too: it has to be given.</summary>
    /// <exception cref="IOException">The file is there already, or cannot be written.</exception>
    public static void WriteTemplate(string path, IEnumerable<string> clipFiles) => SheetWriter.WriteTemplate(path, clipFiles);

    /// <summary>Adds a row for each clip the sheet does not list; every byte that was there stays.</summary>
    /// <returns>How many rows were added.</returns>
    /// <exception cref="InvalidDataException">The sheet cannot be understood well enough to add to it.</exception>
    public static int Update(string path, IEnumerable<string> clipFiles) => SheetWriter.Update(path, clipFiles);

    private static SheetResult Failed(IReadOnlyList<SheetProblem> errors) => new(new Dictionary<string, Session>(), errors, []);
}
