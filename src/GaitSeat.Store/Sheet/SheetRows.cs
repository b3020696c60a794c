using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Rows of a session sheet or consent file that name a rider or a clip.</summary>
public static class SheetRows
{
    /// <returns>How many there are; 0 where there is no such file.</returns>
    public static int Count(string path, string? rider, IReadOnlySet<string> clipFiles) => File.Exists(path) ? Cut(path, rider, clipFiles).Rows : 0;

    /// <summary>Takes them out; the other lines stay byte for byte, and the file appears whole or not at all.</summary>
    /// <exception cref="InvalidDataException">The file cannot be understood well enough.</exception>
    public static void Drop(string path, string? rider, IReadOnlySet<string> clipFiles)
    {
        if (!File.Exists(path)) return;
        var (text, _, gone) = Cut(path, rider, clipFiles);
        if (gone.Count == 0) return;
        var mark = File.ReadAllBytes(path) is [0xEF, 0xBB, 0xBF, ..] ? "\uFEFF" : "";
        AtomicFile.WriteText(path, mark + string.Concat(Lines(text).Where((_, i) => !gone.Contains(i + 1))));
    }

    private static (string Text, int Rows, HashSet<int> Gone) Cut(string path, string? rider, IReadOnlySet<string> clipFiles)
    {
        var (text, problem) = SheetText.Read(path, "sheet");
        if (problem is not null || SheetGrid.Cut(text!) is not { } grid) throw new InvalidDataException(problem?.ToString() ?? $"'{path}' is empty.");
        var (riders, files) = (grid.ColumnOf("rider"), grid.ColumnOf(SheetColumns.ClipFile));
        var starts = grid.Lines.Select(l => l.Line).ToList();
        var (rows, gone) = (0, new HashSet<int>());
        for (var i = 0; i < grid.Lines.Count; i++)
        {
            var fields = grid.Lines[i].Fields;
            var named = (rider is not null && riders >= 0 && fields.ElementAtOrDefault(riders) == rider) || (files >= 0 && fields.ElementAtOrDefault(files) is { } file && clipFiles.Contains(file));
            if (!named) continue;
            rows++;
            // A field in quotes may run over several lines.
            gone.UnionWith(Enumerable.Range(starts[i], (i + 1 < starts.Count ? starts[i + 1] : Lines(text!).Count() + 1) - starts[i]));
        }

        return (text!, rows, gone);
    }

    private static IEnumerable<string> Lines(string text)
    {
        for (int from = 0, to; from < text.Length; from = to)
        {
            var end = text.IndexOf('\n', from);
            to = end < 0 ? text.Length : end + 1;
            yield return text[from..to];
        }
    }
}
