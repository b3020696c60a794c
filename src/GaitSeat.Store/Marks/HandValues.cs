using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>What hands measured of one stride: the values of <see cref="HandValues.Columns"/>, NaN where not marked.</summary>
/// <param name="Frames">Marked frames the values come from.</param>
/// <param name="Judges">How many marked them.</param>
public sealed record HandValueLine(SpellKey Spell, string ClipFile, int Stride, IReadOnlyList<double> Values, int Frames, int Judges);

/// <summary>Values of strides from marks, comparable with the tool's: only marks in the part of the stride that the measure is taken from count.</summary>
/// <param name="Lines">One a stride with a value, by clip, spell and stride.</param>
/// <param name="Unused">Frames that lie neither at a sit nor at a top of a stride, or have too few points for an angle.</param>
public sealed record HandValues(IReadOnlyList<HandValueLine> Lines, int Unused)
{
    /// <summary>The measure is the mean over this share of the stride on either side of the instant.</summary>
    private const double WindowShare = 0.05;

    /// <summary>Room for a frame's time written to the millisecond, s.</summary>
    private const double SlackSeconds = 0.001;

    private static readonly (StrideMeasure Measure, bool IsTop, Func<HandAngles, double> Of)[] Measures =
    [
        (StrideMeasure.ThighAngleSit, false, a => a.Thigh), (StrideMeasure.ThighAngleTop, true, a => a.Thigh), (StrideMeasure.ShankAngleSit, false, a => a.Shank),
        (StrideMeasure.KneeAngleSit, false, a => a.Knee), (StrideMeasure.KneeAngleTop, true, a => a.Knee), (StrideMeasure.TrunkLeanSit, false, a => a.TrunkLean),
        (StrideMeasure.TrunkLeanTop, true, a => a.TrunkLean), (StrideMeasure.FootPitchSit, false, a => a.FootPitch),
    ];

    /// <summary>Names of the values: <c>hand_</c> and the column of the tool's measure.</summary>
    public static IReadOnlyList<string> Columns { get; } = [.. Measures.Select(m => "hand_" + MeasureCatalogue.Get(m.Measure).Column)];

    /// <param name="marks">Those that stand; several judges and frames of one stride are averaged.</param>
    public static HandValues Of(IReadOnlyList<HandMark> marks, IReadOnlyList<RiddenSpell> spells)
    {
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(spells);
        var strides = spells.SelectMany(s => s.Strides.Select(x => (Spell: s, Stride: x))).ToLookup(s => s.Spell.Provenance.ClipKey, StringComparer.Ordinal);
        var found = new List<(RiddenSpell Spell, Stride Stride, string Judge, double[] Values)>();
        var unused = 0;
        foreach (var frame in marks.GroupBy(m => (m.ClipKey, m.Judge, m.TimeSeconds)))
        {
            var points = frame.ToDictionary(m => m.Point, m => new PointPx(m.XPx, m.YPx));
            var before = found.Count;
            foreach (var (spell, stride) in strides[frame.Key.ClipKey])
            {
                var angles = HandAngles.Of(p => points.GetValueOrDefault(p, PointPx.Missing), stride.Facing);
                double[] values = [.. Measures.Select(m => IsIn(stride, m.IsTop, frame.Key.TimeSeconds) ? m.Of(angles) : double.NaN)];
                if (values.Any(double.IsFinite)) found.Add((spell, stride, frame.Key.Judge, values));
            }

            if (found.Count == before) unused++;
        }

        var lines = found.GroupBy(f => (f.Spell.Key, f.Stride.Number)).OrderBy(g => g.Key.Key).ThenBy(g => g.Key.Number).Select(g => new HandValueLine(
            g.Key.Key, g.First().Spell.Provenance.ClipFile, g.Key.Number,
            [.. Measures.Select((_, i) => g.Select(f => f.Values[i]).Where(double.IsFinite).DefaultIfEmpty(double.NaN).Average())], g.Count(), g.Select(f => f.Judge).Distinct(StringComparer.Ordinal).Count()));
        return new([.. lines], unused);
    }

    private static bool IsIn(Stride stride, bool isTop, double seconds) =>
        Math.Abs(seconds - (isTop ? stride.TopSeconds : stride.StartSeconds)) <= WindowShare * (stride.EndSeconds - stride.StartSeconds) + SlackSeconds;
}
