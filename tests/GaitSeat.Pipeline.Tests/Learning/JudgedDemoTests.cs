using GaitSeat.Cli.Learning;
using GaitSeat.Faults.Tests.Season;
using GaitSeat.Model;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using GaitSeat.Studio;

namespace GaitSeat.Pipeline.Tests.Learning;

/// <summary>Faults planted by the studio, several at once and some together, judged with 5 % wrong answers, through maths, rules, Parquet and training.</summary>
public sealed class JudgedDemoTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-judged-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>Half the riders and two thirds of the clips of the demo's judged season, two of its faults, quick settings.</summary>
    [Fact]
    public async Task PartOfTheSeason_FaultsThatComeTogetherAreFoundApart()
    {
        var clips = Season().JudgedClips.Where(c => Number(c.Rider) <= 20 && Number(c.Name[4..]) <= 8).Select(c => c with { Answers = c.Answers.Where(a => a.Key is Fault.StirrupShort or Fault.ChairSeat).ToDictionary() }).ToArray();
        var demo = await JudgedDemo.RunAsync(clips, _folder, new PipelineSettings { Faults = new() { Training = PlantedSeason.Quick with { BootstrapRounds = 100 } } }, "test", TestContext.Current.CancellationToken);
        Assert.Equal([Fault.StirrupShort, Fault.ChairSeat], demo.Figures.Select(f => f.Fault));
        Assert.All(demo.Figures, f => Assert.True(f.Model > f.Rules && f.Model > 3.0 * f.Planted / f.Spells, $"{f}"));
        using var query = new DatasetQuery(demo.DatasetFolder);
        Assert.NotEmpty(query.Query("SELECT * FROM flags WHERE flagged_by = 'model'"));
    }

    /// <summary>The goal: average precision of at least 0.9 for every planted fault, and above the rules.</summary>
    [Fact]
    public async Task WholeSeason_EveryPlantedFaultIsRecovered()
    {
        Assert.SkipUnless(LongRun.IsOn, "Takes some minutes; ./gaitseat test --long");
        var season = Season();
        var demo = await JudgedDemo.RunAsync(season.JudgedClips, _folder, new(), "test", TestContext.Current.CancellationToken);
        Assert.Equal(season.Judged!.Faults.Count, demo.Figures.Count);
        foreach (var f in demo.Figures) TestContext.Current.TestOutputHelper!.WriteLine($"{f}");
        Assert.All(demo.Figures, f => Assert.True(f.Model >= 0.9 && f.Model > f.Rules, $"{f}"));
    }

    private static int Number(string text) => int.Parse(text.TrimStart('J'), System.Globalization.CultureInfo.InvariantCulture);

    private static DemoSeason Season() => DemoSeason.Load(Path.Combine(Repository.Root, "datasets", "demo-season.json"));
}
