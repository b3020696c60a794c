namespace GaitSeat.Study.Mixed.Solving;

/// <summary>Which cell each row falls in, and the levels of each cell.</summary>
internal sealed record CellIndex(int[] CellOf, int[][] Levels)
{
    public static CellIndex Of(IReadOnlyList<RandomTerm> terms)
    {
        var cellOf = new int[terms[0].Groups.LevelOf.Length];
        var levels = new List<int[]> { Array.Empty<int>() };
        foreach (var term in terms) levels = Split(cellOf, levels, term.Groups);
        return new(cellOf, [.. levels]);
    }

    private static List<int[]> Split(int[] cellOf, List<int[]> levels, Grouping groups)
    {
        var split = new List<int[]>();
        var known = new Dictionary<long, int>();
        for (var i = 0; i < cellOf.Length; i++)
        {
            var key = (long)cellOf[i] * groups.Levels.Count + groups.LevelOf[i];
            if (!known.TryGetValue(key, out var cell))
            {
                known.Add(key, cell = split.Count);
                split.Add([.. levels[cellOf[i]], groups.LevelOf[i]]);
            }

            cellOf[i] = cell;
        }

        return split;
    }
}
