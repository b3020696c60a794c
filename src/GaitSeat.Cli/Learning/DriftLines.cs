using System.Globalization;
using GaitSeat.Faults.Drift;
using GaitSeat.Faults.Training;
using GaitSeat.Model;

namespace GaitSeat.Cli.Learning;

/// <summary>What the drift watch found, as lines for people.</summary>
internal static class DriftLines
{
    private const int FeaturesNamed = 5;

    internal static IEnumerable<string> Of(JudgedSeason season, IReadOnlyDictionary<Fault, ModelInUse> models, DriftSettings settings, double confidence)
    {
        foreach (var (fault, model) in models)
        {
            var moved = DriftWatch.Of(model.Model.Info, season.Table, settings).Where(d => d.HasMoved).GroupBy(d => d.Month);
            foreach (var month in moved)
            {
                var named = month.OrderByDescending(d => d.Index).Take(FeaturesNamed).Select(d => string.Create(CultureInfo.InvariantCulture, $"{d.Feature} {d.Index:0.00} (limit {d.Limit:0.00})"));
                yield return $"{fault.ToTerm()}: the spells of {month.Key} are no longer those the model learnt from: {string.Join(", ", named)}{(month.Count() > FeaturesNamed ? " and others" : "")}. Judge some of them, then train anew.";
            }
        }

        foreach (var month in DriftWatch.Agreement(season.Verdicts, confidence))
            yield return string.Create(CultureInfo.InvariantCulture, $"{month.Month}: a coach agreed with {100 * month.Agreed.Value:0} % of {month.Judged} flags judged (95 % interval {100 * month.Agreed.Lower:0} to {100 * month.Agreed.Upper:0} %).");
    }
}
