using GaitSeat.Model;

namespace GaitSeat.Faults.Rules;

/// <summary>The strides of one spell of rising trot, in time order.</summary>
internal sealed class SpellStrides(Spell spell, IReadOnlyList<Stride> strides)
{
    public Spell Spell { get; } = spell;

    public IReadOnlyList<Stride> Strides { get; } = strides;

    public static bool Has(Stride stride, StrideMeasure measure) =>
        stride.Measures[measure] is { IsMissing: false } m && !double.IsNaN(m.StandardError);

    public int CountWith(StrideMeasure measure) => Strides.Count(s => Has(s, measure));
}
