using GaitSeat.Faults.Evaluation;
using GaitSeat.Faults.Features;
using GaitSeat.Faults.Training;
using GaitSeat.Model;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Faults.Drift;

/// <summary>One feature in one month against the training spells.</summary>
/// <param name="Index">Population stability index.</param>
/// <param name="Limit">What it is held against: the settings' limit, or what chance alone gives with so few spells, whichever is more.</param>
public sealed record FeatureDrift(string Month, string Feature, int Spells, double Index, double Limit)
{
    public bool HasMoved => Index > Limit;
}

/// <summary>How often coaches agreed with what was flagged, by month.</summary>
public sealed record MonthlyAgreement(string Month, int Judged, Interval Agreed);

/// <summary>Watches whether spells and verdicts still are what the model learnt from. Spells of one rider are alike, so chance alone moves an index further than is allowed for: a warning is a reason to look, not a proof.</summary>
public static class DriftWatch
{
    /// <summary>Features that tell the world apart; spreads and slopes follow them and would only multiply false alarms.</summary>
    private static readonly int[] Watched =
        [.. FeatureCatalogue.All.Select((f, i) => (f.Name, i)).Where(f => f.Name.EndsWith("_mean", StringComparison.Ordinal) || f.i >= FeatureCatalogue.Measures.Count * FeatureCatalogue.PerMeasure).Select(f => f.i)];

    /// <summary>Every watched feature in every month with enough spells of a known date, by month.</summary>
    public static IReadOnlyList<FeatureDrift> Of(FaultModelInfo model, FeatureTable table, DriftSettings settings)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(settings);
        var months = table.Rows.Where(r => r.Spell.SessionDate is not null).GroupBy(r => Month(r.Spell.SessionDate!.Value)).Where(g => g.Count() >= settings.MinimumSpells).OrderBy(g => g.Key, StringComparer.Ordinal);
        return [.. months.SelectMany(m => Watched.Select(f => OfFeature(m.Key, model.Reference[f], [.. m.Select(r => r.Values[f])], settings)))];
    }

    /// <summary>Agreement with flags by the month they were judged in.</summary>
    public static IReadOnlyList<MonthlyAgreement> Agreement(IEnumerable<Verdict> verdicts, double confidence)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        return [.. verdicts.Where(v => v.ToldFlagged == true && v.Answer != VerdictAnswer.CannotTell)
            .GroupBy(v => Month(DateOnly.FromDateTime(v.JudgedAt.UtcDateTime))).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new MonthlyAgreement(g.Key, g.Count(), WilsonInterval.Of(g.Count(v => v.Answer == VerdictAnswer.Agrees), g.Count(), confidence)))];
    }

    /// <summary>Sum over the bins of (now - then) ln(now / then), half a spell added to each bin so that an empty one does not make it infinite.</summary>
    internal static double Index(IReadOnlyList<int> then, IReadOnlyList<int> now)
    {
        const double Half = 0.5;
        double before = then.Sum() + Half * then.Count, after = now.Sum() + Half * now.Count;
        return then.Zip(now).Sum(bin => ((bin.Second + Half) / after - (bin.First + Half) / before) * Math.Log((bin.Second + Half) / after / ((bin.First + Half) / before)));
    }

    /// <summary>Unchanged, the index over (1/n + 1/m) is about chi-squared with one degree less than there are bins.</summary>
    private static FeatureDrift OfFeature(string month, FeatureReference reference, double[] values, DriftSettings settings)
    {
        var now = FeatureReference.CountIn(reference.Edges, values);
        var chance = ChiSquared.InvCDF(reference.Counts.Length - 1, settings.Confidence) * (1.0 / reference.Counts.Sum() + 1.0 / values.Length);
        return new(month, reference.Feature, values.Length, Index(reference.Counts, now), Math.Max(settings.IndexLimit, chance));
    }

    private static string Month(DateOnly day) => FormattableString.Invariant($"{day.Year:0000}-{day.Month:00}");
}
