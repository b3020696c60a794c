namespace GaitSeat.Store;

/// <summary>Whether the first line names the columns that are needed, each once.</summary>
internal static class HeaderCheck
{
    internal static IReadOnlyList<SheetProblem> Problems(SheetGrid grid, IReadOnlyList<string> required)
    {
        var line = grid.Header.Line;
        var names = grid.Header.Fields;
        var found = string.Join(", ", names.Where(n => n.Length > 0));
        var missing = required.Where(r => !names.Contains(r))
            .Select(r => new SheetProblem(line, r, $"the column is missing; found: {found}. Required: {string.Join(", ", required)}."));
        var twice = names.Where(n => n.Length > 0).GroupBy(n => n).Where(g => g.Count() > 1)
            .Select(g => new SheetProblem(line, g.Key, $"the column stands {g.Count()} times; once is allowed."));
        return [.. missing, .. twice];
    }
}
