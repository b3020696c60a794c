using GaitSeat.Faults.Tests.Season;
using GaitSeat.Faults.Training;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests.Training;

public sealed class ModelShelfTests : IDisposable
{
    private static readonly DateTimeOffset Since = new(2026, 6, 1, 0, 0, 0, TimeSpan.Zero);
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-shelf-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void KeptModel_SpeaksAsTheTrainedOne()
    {
        var loaded = Keep().Load(Fault.ChairSeat, PlantedSeason.Model, new())!;
        Assert.Equal(Trained.Outcome.Model!.Probabilities(Trained.Season.Table.Rows), loaded.Model.Probabilities(Trained.Season.Table.Rows));
        Assert.Equal(Trained.Outcome.HeldOut.OrderBy(h => h.Key), loaded.HeldOut.OrderBy(h => h.Key));
    }

    [Fact]
    public void SameVerdicts_GiveTheSameFilesByteForByte()
    {
        Keep();
        var before = Files();
        var again = Trained.Again(PlantedSeason.Quick);
        Directory.Delete(_folder, recursive: true);
        new ModelShelf(_folder).Keep(again, Since, Picture);
        Assert.Equal(before.Keys.Order(), Files().Keys.Order());
        Assert.All(Files(), f => Assert.Equal(before[f.Key], f.Value));
    }

    [Fact]
    public void NothingInUse_LeavesItToTheRules()
    {
        Assert.Null(new ModelShelf(_folder).Load(Fault.ChairSeat, PlantedSeason.Model, new()));
        new ModelShelf(_folder).Keep(Trained.Outcome with { End = TrainingEnd.Candidate }, Since, Picture);
        Assert.Null(new ModelShelf(_folder).Load(Fault.ChairSeat, PlantedSeason.Model, new()));
    }

    [Fact]
    public void SameModelAgain_DoesNotReplaceItself()
    {
        var inUse = Keep().Load(Fault.ChairSeat, PlantedSeason.Model, new());
        var again = Trained.Again(PlantedSeason.Quick, inUse);
        Assert.Equal(TrainingEnd.Candidate, again.End);
        Assert.Equal(0, again.Report!.GainOverInUse.Value, 12);
        Assert.Contains("not better beyond the noise", again.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("scorer.zip", "damaged")]
    [InlineData("model.json", "cannot be read")]
    [InlineData("held-out.json", "cannot be read")]
    public void DamagedFile_IsNamed(string file, string said)
    {
        var shelf = Keep();
        var path = Path.Combine(shelf.FolderOf(Trained.Outcome.Model!), file);
        File.WriteAllBytes(path, [.. File.ReadAllBytes(path)[..^40]]);
        var caught = Assert.Throws<FaultModelException>(() => shelf.Load(Fault.ChairSeat, PlantedSeason.Model, new()));
        Assert.Contains(said, caught.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ChangedFacts_AreCaught()
    {
        var shelf = Keep();
        var path = Path.Combine(shelf.FolderOf(Trained.Outcome.Model!), "model.json");
        File.WriteAllText(path, File.ReadAllText(path).Replace("\"software_version\": \"test\"", "\"software_version\": \"best\"", StringComparison.Ordinal));
        Assert.Contains("were changed", Assert.Throws<FaultModelException>(() => shelf.Load(Fault.ChairSeat, PlantedSeason.Model, new())).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OtherBodyPoints_AreRefused() =>
        Assert.Contains("body points of models", Assert.Throws<FaultModelException>(() => Keep().Load(Fault.ChairSeat, "other", new())).Message, StringComparison.Ordinal);

    [Fact]
    public void OtherFeatures_AreRefused()
    {
        var model = Trained.Outcome.Model!;
        var older = model.Info with { FeatureSchema = new('0', 64) };
        Assert.Contains("another version", Assert.Throws<FaultModelException>(() => FaultModel.Load(older, model.Weights, PlantedSeason.Model, new())).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OtherFeatureSettings_AreRefused() =>
        Assert.Contains("faults.features", Assert.Throws<FaultModelException>(() => Keep().Load(Fault.ChairSeat, PlantedSeason.Model, new() { MinimumUsualSpells = 5 })).Message, StringComparison.Ordinal);

    [Fact]
    public void BytesThatAreNoModel_AreToldSo() =>
        Assert.Throws<FaultModelException>(() => Scorer.Load([1, 2, 3], Trained.Outcome.Model!.Info.Preparation));

    [Fact]
    public void Card_StandsBesideTheModelWithItsHashes()
    {
        var folder = Keep().FolderOf(Trained.Outcome.Model!);
        foreach (var card in (string[])["card.md", "card.html"])
        {
            var text = File.ReadAllText(Path.Combine(folder, card));
            Assert.All([Trained.Outcome.Model!.Hash, Trained.Outcome.Model.Info.DataHash, "light_gbm", "rules", "grey", "Worst mistakes"], said => Assert.Contains(said, text, StringComparison.Ordinal));
        }

        Assert.StartsWith("<svg", File.ReadAllText(Path.Combine(folder, "calibration.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public void WorstMistakes_AreShownByThePicturesWhereTheyLie()
    {
        var folder = Keep().FolderOf(Trained.Outcome.Model!);
        var worst = Trained.Outcome.Report!.Worst[0];
        var path = "../../pictures/" + worst.Spell.ClipKey[..8] + ".jpg";
        Assert.Contains($"](<{path}>)", File.ReadAllText(Path.Combine(folder, "card.md")), StringComparison.Ordinal);
        Assert.Contains($"<img src=\"{path}\"", File.ReadAllText(Path.Combine(folder, "card.html")), StringComparison.Ordinal);
    }

    private string? Picture(string clip) => Path.Combine(_folder, "pictures", clip[..8] + ".jpg");

    private ModelShelf Keep()
    {
        Assert.Equal(TrainingEnd.Replaces, Trained.Outcome.End);
        var shelf = new ModelShelf(_folder);
        shelf.Keep(Trained.Outcome, Since, Picture);
        return shelf;
    }

    private Dictionary<string, byte[]> Files() =>
        Directory.EnumerateFiles(_folder, "*", SearchOption.AllDirectories).ToDictionary(f => Path.GetRelativePath(_folder, f), File.ReadAllBytes);
}
