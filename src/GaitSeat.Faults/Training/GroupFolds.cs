namespace GaitSeat.Faults.Training;

/// <summary>Riders of the same person in training and in test would let a model be praised for knowing the person. It must not be trained.</summary>
public sealed class RiderLeakException(string message) : Exception(message);

/// <summary>Cuts spells into folds so that no rider stands in two.</summary>
public static class GroupFolds
{
    /// <summary>
    /// Riders go, largest first and in an order that the seed shuffles among equals, to the fold that has the fewest spells with the fault, then the fewest spells.
    /// </summary>
    /// <param name="folds">How many; at least 2 and at most as many as there are riders.</param>
    /// <returns>Fold of each spell, from 0.</returns>
    public static int[] Cut(IReadOnlyList<string> riders, IReadOnlyList<bool> isThere, int folds, int seed)
    {
        ArgumentNullException.ThrowIfNull(riders);
        ArgumentNullException.ThrowIfNull(isThere);
        ArgumentOutOfRangeException.ThrowIfNotEqual(isThere.Count, riders.Count);
        ArgumentOutOfRangeException.ThrowIfLessThan(folds, 2);
        var groups = Enumerable.Range(0, riders.Count).GroupBy(i => riders[i], StringComparer.Ordinal)
            .Select(g => (Rider: g.Key, Spells: g.Count(), There: g.Count(i => isThere[i])))
            .OrderByDescending(g => g.There).ThenByDescending(g => g.Spells).ThenBy(g => RiderOrder.Of(g.Rider, seed, "folds")).ThenBy(g => g.Rider, StringComparer.Ordinal).ToArray();
        if (groups.Length < folds) throw new ArgumentException($"{groups.Length} riders cannot be cut into {folds} folds; a fold needs one.", nameof(folds));
        var (spells, there, foldOf) = (new int[folds], new int[folds], new Dictionary<string, int>(StringComparer.Ordinal));
        foreach (var g in groups)
        {
            var fold = Enumerable.Range(0, folds).OrderBy(f => g.There > 0 ? there[f] : 0).ThenBy(f => spells[f]).First();
            (foldOf[g.Rider], spells[fold], there[fold]) = (fold, spells[fold] + g.Spells, there[fold] + g.There);
        }

        return [.. riders.Select(r => foldOf[r])];
    }

    /// <summary>Held before anything is trained on a cut, whoever made it.</summary>
    /// <exception cref="RiderLeakException">A rider stands in two folds.</exception>
    public static void RequireNoLeak(IReadOnlyList<string> riders, IReadOnlyList<int> folds)
    {
        ArgumentNullException.ThrowIfNull(riders);
        ArgumentNullException.ThrowIfNull(folds);
        ArgumentOutOfRangeException.ThrowIfNotEqual(folds.Count, riders.Count);
        var foldOf = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < riders.Count; i++)
        {
            if (!foldOf.TryAdd(riders[i], folds[i]) && foldOf[riders[i]] != folds[i])
                throw new RiderLeakException($"Rider '{riders[i]}' stands in folds {foldOf[riders[i]]} and {folds[i]}; nothing was trained. Cut by rider.");
        }
    }
}
