using GaitSeat.Faults.Features;
using GaitSeat.Faults.Training;

namespace GaitSeat.Faults.Evaluation;

/// <summary>
/// What the models lean on: a family's features are dealt anew among the held-out spells of a fold, all together, since they say much the same,
/// and the fall of average precision is read. A family whose like stands in another family can be missed without loss.
/// </summary>
internal static class PermutationImportance
{
    /// <summary>Held-out spells of a fold that are scored for each family; more only cost time.</summary>
    private const int SpellsPerFold = 500;

    internal static IReadOnlyList<Importance> Of(IReadOnlyList<LabelledSpell> spells, CrossValidated cross, int seed)
    {
        var families = FeatureCatalogue.All.Select((f, i) => (f.Family, i)).GroupBy(f => f.Family, f => f.i, StringComparer.Ordinal).ToArray();
        var lost = families.ToDictionary(f => f.Key, _ => new List<double>(), StringComparer.Ordinal);
        for (var fold = 0; fold < cross.Models.Count; fold++)
        {
            var held = spells.Where((_, i) => cross.Folds[i] == fold).Take(SpellsPerFold).ToArray();
            var isThere = held.Select(s => s.IsThere).ToArray();
            if (!isThere.Contains(true)) continue;
            var vectors = held.Select(s => s.Row.Values).ToArray();
            var full = new Ranking(cross.Models[fold].Scorer.Scores(vectors), isThere).AveragePrecision();
            foreach (var family in families)
            {
                var dealt = Deal(vectors, [.. family], new Random(seed + fold));
                lost[family.Key].Add(full - new Ranking(cross.Models[fold].Scorer.Scores(dealt), isThere).AveragePrecision());
            }
        }

        return [.. lost.Where(l => l.Value.Count > 0).Select(l => new Importance(l.Key, l.Value.Average())).OrderByDescending(i => i.AveragePrecisionLost).ThenBy(i => i.Family, StringComparer.Ordinal)];
    }

    private static double[][] Deal(double[][] vectors, int[] features, Random random)
    {
        var order = Enumerable.Range(0, vectors.Length).ToArray();
        random.Shuffle(order);
        return [.. vectors.Select((v, i) =>
        {
            var copy = (double[])v.Clone();
            foreach (var f in features) copy[f] = vectors[order[i]][f];
            return copy;
        })];
    }
}
