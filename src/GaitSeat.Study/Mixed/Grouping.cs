namespace GaitSeat.Study.Mixed;

/// <summary>Which level of a grouping factor (rider, horse, session) each row belongs to.</summary>
/// <param name="Name">Name of the factor.</param>
/// <param name="LevelOf">0-based level of each row.</param>
/// <param name="Levels">Names of the levels.</param>
public sealed record Grouping(string Name, int[] LevelOf, IReadOnlyList<string> Levels)
{
    /// <summary>Levels in ordinal order of their names, so that the order of the rows does not matter.</summary>
    public static Grouping Of(string name, IReadOnlyList<string> labels)
    {
        var levels = labels.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToArray();
        var index = levels.Select((l, i) => (l, i)).ToDictionary(p => p.l, p => p.i, StringComparer.Ordinal);
        return new(name, [.. labels.Select(l => index[l])], levels);
    }

    /// <summary>This factor nested in <paramref name="outer"/>: the same name under two outer levels is two levels, written <c>outer/inner</c>.</summary>
    public Grouping Within(Grouping outer)
    {
        var pairs = LevelOf.Select((l, i) => (Outer: outer.LevelOf[i], Inner: l)).ToArray();
        var levels = pairs.Distinct().OrderBy(p => p.Outer).ThenBy(p => p.Inner).ToArray();
        var index = levels.Select((p, i) => (p, i)).ToDictionary(x => x.p, x => x.i);
        return new($"{outer.Name}/{Name}", [.. pairs.Select(p => index[p])], [.. levels.Select(p => $"{outer.Levels[p.Outer]}/{Levels[p.Inner]}")]);
    }
}
