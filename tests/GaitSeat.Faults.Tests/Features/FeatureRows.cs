using GaitSeat.Faults.Features;

namespace GaitSeat.Faults.Tests.Features;

internal static class FeatureRows
{
    internal static double Value(this FeatureRow row, string feature) =>
        row.Values[FeatureCatalogue.All.Select((f, i) => (f.Name, i)).Single(f => f.Name == feature).i];

    internal static FeatureTable WithoutRider(FeatureTable table) =>
        table with { Rows = [.. table.Rows.Select(r => r with { Spell = r.Spell with { Rider = null } })] };
}
