namespace GaitSeat.Faults.Training;

/// <summary>Whole riders, as the seed orders them, until there are enough spells to compare trainers on.</summary>
internal static class Subsample
{
    internal static IReadOnlyList<LabelledSpell> Of(IReadOnlyList<LabelledSpell> spells, TrainingSettings settings)
    {
        if (spells.Count <= settings.ComparisonSpells) return spells;
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var count = 0;
        foreach (var rider in spells.GroupBy(s => s.Rider, StringComparer.Ordinal).OrderBy(g => RiderOrder.Of(g.Key, settings.Seed, "part")).ThenBy(g => g.Key, StringComparer.Ordinal))
        {
            if (count >= settings.ComparisonSpells && HasBoth(spells, taken)) break;
            taken.Add(rider.Key);
            count += rider.Count();
        }

        return [.. spells.Where(s => taken.Contains(s.Rider))];
    }

    /// <summary>A rare fault may need more riders before each fold can hold both answers.</summary>
    private static bool HasBoth(IReadOnlyList<LabelledSpell> spells, HashSet<string> taken) =>
        Riders(spells, taken, there: true) >= LeastRiders && Riders(spells, taken, there: false) >= LeastRiders;

    private const int LeastRiders = 10;

    private static int Riders(IReadOnlyList<LabelledSpell> spells, HashSet<string> taken, bool there) =>
        spells.Where(s => s.IsThere == there && taken.Contains(s.Rider)).Select(s => s.Rider).Distinct().Count();
}
