using GaitSeat.Faults.Flags;
using GaitSeat.Model;

namespace GaitSeat.Review.Seasons;

/// <summary>The riders of a run, by name; clips whose sheet names no rider come last.</summary>
internal sealed class SeasonBook
{
    /// <summary>What a coach follows over a season; in percent of leg length, which exists without a rider's stature too.</summary>
    internal static IReadOnlyList<MeasureDefinition> Measures { get; } =
        [.. new[] { StrideMeasure.ThighAngleSit, StrideMeasure.RiseHeightPctLeg, StrideMeasure.StirrupDriftSwingPctLeg, StrideMeasure.TrunkLeanSit }.Select(MeasureCatalogue.Get)];

    private readonly string?[] _riders;
    private readonly ILookup<string?, RiddenSpell> _spells;
    private readonly ILookup<string?, Flag> _flags;
    private readonly SeasonFacts _facts;
    private readonly Func<string, bool> _mayShow;

    internal SeasonBook(IReadOnlyList<RiddenSpell> spells, IReadOnlyList<Flag> flags, SeasonFacts facts, Func<string, bool> mayShow)
    {
        (_facts, _mayShow) = (facts, mayShow);
        _spells = spells.ToLookup(s => s.Rider);
        _flags = flags.ToLookup(f => f.Spell.Rider);
        _riders = [.. spells.Select(s => s.Rider).Concat(facts.Clips.Select(c => c.Rider)).Distinct().OrderBy(r => r is null).ThenBy(r => r, StringComparer.Ordinal)];
    }

    /// <summary>Those with a clip that may be shown, with their number, which stands while the program runs.</summary>
    internal IReadOnlyList<(int Number, RiderSeason Rider)> All() => [.. _riders.Select((_, i) => (i, Rider(i)!)).Where(r => r.Item2.Clips > 0)];

    /// <summary>Clips of the run that may not be shown.</summary>
    internal int Hidden => _facts.Clips.Count(c => !_mayShow(c.ClipKey));

    /// <returns>Null where there is no such rider or nothing of them may be shown.</returns>
    internal RiderSeason? Rider(int number)
    {
        if (number < 0 || number >= _riders.Length) return null;
        var name = _riders[number];
        return new(name, [.. _spells[name]], [.. _flags[name]], _facts, _mayShow);
    }
}
