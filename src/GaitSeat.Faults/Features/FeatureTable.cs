using GaitSeat.Model;

namespace GaitSeat.Faults.Features;

/// <summary>A spell and its features, in the order of <see cref="FeatureCatalogue.All"/>; NaN where there is no value.</summary>
public sealed record FeatureRow(RiddenSpell Spell, double[] Values)
{
    public SpellKey Key => Spell.Key;
}

/// <summary>The features of a dataset's spells.</summary>
/// <param name="Rows">Spells of rising trot with enough trusted strides, by <see cref="SpellKey"/>.</param>
/// <param name="OtherGaits">Spells left out because nothing is measured in their gait.</param>
/// <param name="TooFewStrides">Spells of rising trot left out for want of strides.</param>
/// <param name="Settings">How the features were made.</param>
public sealed record FeatureTable(IReadOnlyList<FeatureRow> Rows, int OtherGaits, int TooFewStrides, FeatureSettings Settings)
{
    /// <summary>Makes the features. A rider's own other spells are used, never a verdict and never another rider, so nothing leaks between groups of riders.</summary>
    public static FeatureTable Of(IEnumerable<RiddenSpell> spells, FeatureSettings settings)
    {
        ArgumentNullException.ThrowIfNull(spells);
        ArgumentNullException.ThrowIfNull(settings);
        var all = spells.ToArray();
        var rising = all.Where(s => s.Spell.Gait == Gait.RisingTrot).OrderBy(s => s.Key).ToArray();
        var own = rising.Select(OwnFeatures.Of).Where(o => o.Trusted >= settings.MinimumStrides).ToArray();
        var byRider = own.Where(o => o.Spell.Rider is not null).ToLookup(o => o.Spell.Rider!, StringComparer.Ordinal);
        foreach (var rider in byRider) RiderFeatures.Fill([.. rider], settings);
        return new([.. own.Select(o => new FeatureRow(o.Spell, o.Values))], all.Length - rising.Length, rising.Length - own.Length, settings);
    }
}
