namespace GaitSeat.Faults.Features;

/// <summary>The features that hold a spell against the same rider's other spells.</summary>
internal static class RiderFeatures
{
    /// <param name="spells">All spells of one rider; their values are filled in.</param>
    internal static void Fill(IReadOnlyList<OwnFeatures> spells, FeatureSettings settings)
    {
        for (var m = 0; m < FeatureCatalogue.Measures.Count; m++)
        {
            var at = m * FeatureCatalogue.PerMeasure;
            var sorted = spells.Where(s => double.IsFinite(s.Values[at])).OrderBy(s => s.Values[at]).ToArray();
            var reins = sorted.Where(s => s.Spell.Rein is not null).GroupBy(s => s.Spell.Rein!, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Average(s => s.Values[at]), StringComparer.Ordinal);
            foreach (var spell in spells)
            {
                var mean = spell.Values[at];
                spell.Values[at + FeatureCatalogue.ReinDifference] = mean - OtherRein(reins, spell.Spell.Rein);
                spell.Values[at + FeatureCatalogue.FromUsual] = mean - Usual(sorted, spell.Spell.Provenance.ClipKey, at, settings.MinimumUsualSpells);
            }
        }
    }

    /// <summary>There are two reins, so the other is whatever is not this one.</summary>
    private static double OtherRein(Dictionary<string, double> reins, string? rein) =>
        rein is null ? double.NaN : reins.Where(r => r.Key != rein).Select(r => r.Value).DefaultIfEmpty(double.NaN).First();

    /// <summary>Median over the other clips, walked to in the rider's sorted spells: sorting anew for every spell would take minutes in a season of 100 000.</summary>
    private static double Usual(OwnFeatures[] sorted, string clip, int at, int atLeast)
    {
        var count = sorted.Count(s => s.Spell.Provenance.ClipKey != clip);
        if (count < atLeast) return double.NaN;
        var (lower, upper, seen) = (double.NaN, double.NaN, 0);
        foreach (var s in sorted)
        {
            if (s.Spell.Provenance.ClipKey == clip) continue;
            if (seen == (count - 1) / 2) lower = s.Values[at];
            if (seen++ == count / 2)
            {
                upper = s.Values[at];
                break;
            }
        }

        return (lower + upper) / 2;
    }
}
