using GaitSeat.Faults;
using GaitSeat.Faults.Features;
using GaitSeat.Faults.Teaching;
using GaitSeat.Faults.Training;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Review.Clips;
using GaitSeat.Review.Web;
using GaitSeat.Store;

namespace GaitSeat.Review.Tests;

/// <summary>Ten thousand flagged spells of 200 riders, without clips.</summary>
internal sealed class ManyFlags : IDisposable
{
    internal const int Clips = 10_000;
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("gaitseat-many-");

    internal ManyFlags()
    {
        Dataset = Dataset.Open(Path.Combine(_folder.FullName, "dataset"));
        var table = FeatureTable.Of(Enumerable.Range(0, Clips).Select(MadeSeason.Spell), new());
        Season = ReviewSeason.Of(
            Dataset, Run, table, [], new Dictionary<Fault, FaultModel>(), new RuleSettings(), new(), TeachingOrder.Read(Path.Combine(MadeSeason.Root, "datasets", "teaching-order.json")),
            new Dictionary<Fault, ExerciseCard>(), new ReadSettings(), null);
        Shelf = new(_folder.FullName, Season.Spells.Select(s => s.Provenance).ToDictionary(p => p.ClipKey, p => new ClipFacts(p.ClipKey, p.ClipFile, 320, 180, 25)), new(_folder.FullName, TimeProvider.System), new(Dataset.Folder));
    }

    internal Dataset Dataset { get; }

    internal DatasetRun Run { get; } = new(MadeSeason.Pipeline, MadeSeason.Models);

    internal ReviewSeason Season { get; }

    internal ClipShelf Shelf { get; }

    internal Task<ReviewSite> StartAsync()
    {
        var clips = Season.Spells.Select(s => new Seasons.ClipLine(s.Provenance.ClipKey, s.Provenance.ClipFile, s.Rider, s.Horse, s.SessionDate, null, null, false, null, null, 0));
        return ReviewSite.StartAsync(Season, _folder.FullName, Shelf, new([.. clips], [], []), "coach-1", 0, TimeProvider.System, null);
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
