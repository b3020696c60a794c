using System.Diagnostics;
using GaitSeat.Faults;
using GaitSeat.Faults.Features;
using GaitSeat.Faults.Teaching;
using GaitSeat.Faults.Training;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Review.Clips;
using GaitSeat.Review.Verdicts;
using GaitSeat.Review.Web;
using GaitSeat.Store;

namespace GaitSeat.Review.Tests;

/// <summary>A queue of ten thousand flags; how long it took is written to the output, not asserted.</summary>
public sealed class ManyFlagsTests(ITestOutputHelper output)
{
    private const int Clips = 10_000, PageLines = 50;

    [Fact]
    public async Task TenThousandFlags_ArePaged_AndEachIsReached()
    {
        var folder = Directory.CreateTempSubdirectory("gaitseat-many-");
        try
        {
            var dataset = Dataset.Open(Path.Combine(folder.FullName, "dataset"));
            var run = new DatasetRun("pipe1", "model1");
            var table = FeatureTable.Of(Enumerable.Range(0, Clips).Select(MadeSeason.Spell), new());
            var season = ReviewSeason.Of(
                dataset, run, table, [], new Dictionary<Fault, FaultModel>(), new RuleSettings(), TeachingOrder.Read(Path.Combine(MadeSeason.Root, "datasets", "teaching-order.json")),
                new Dictionary<Fault, ExerciseCard>(), new ReadSettings(), null);
            var facts = season.Spells.Select(s => s.Provenance).ToDictionary(p => p.ClipKey, p => new ClipFacts(p.ClipKey, p.ClipFile, 320, 180, 25));
            using var verdicts = new VerdictDesk(dataset, run, "coach-1", TimeProvider.System);
            var desk = new Desk(season, new(folder.FullName, facts, new(folder.FullName, TimeProvider.System)), verdicts);
            var first = Timed("first page", () => desk.Page(0, PageLines));
            var last = Timed("last page", () => desk.Page(first.Total - 10, PageLines));
            var question = desk.Find(last.Lines[^1].Id)!;
            Timed("one question", () => desk.ShowAsync(question, CancellationToken.None).GetAwaiter().GetResult());
            await verdicts.AnswerAsync(question, [question.Fault!.Value], VerdictAnswer.Agrees, null, CancellationToken.None);
            Assert.True(first.Total >= Clips, $"Only {first.Total} questions.");
            Assert.Equal((PageLines, 10), (first.Lines.Count, last.Lines.Count));
            Assert.Equal(1, desk.Page(0, PageLines).Judged);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private T Timed<T>(string what, Func<T> act)
    {
        var watch = Stopwatch.StartNew();
        var result = act();
        output.WriteLine(FormattableString.Invariant($"{what}: {watch.Elapsed.TotalMilliseconds:0} ms"));
        return result;
    }
}
