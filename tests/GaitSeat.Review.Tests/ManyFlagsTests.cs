using System.Diagnostics;
using GaitSeat.Model;
using GaitSeat.Review.Verdicts;
using GaitSeat.Review.Web;

namespace GaitSeat.Review.Tests;

/// <summary>A queue of ten thousand flags; how long it took is written to the output, not asserted.</summary>
public sealed class ManyFlagsTests(ITestOutputHelper output)
{
    private const int PageLines = 50;

    [Fact]
    public async Task TenThousandFlags_ArePaged_AndEachIsReached()
    {
        using var many = new ManyFlags();
        using var verdicts = new VerdictDesk(many.Dataset, many.Run, "coach-1", TimeProvider.System, _ => false);
        var desk = new Desk(many.Season, many.Shelf, verdicts);
        var first = Timed("first page", () => desk.Page(0, PageLines));
        var last = Timed("last page", () => desk.Page(first.Total - 10, PageLines));
        var question = desk.Find(last.Lines[^1].Id)!;
        Timed("one question", () => desk.ShowAsync(question, CancellationToken.None).GetAwaiter().GetResult());
        await verdicts.AnswerAsync(question, [question.Fault!.Value], VerdictAnswer.Agrees, null, CancellationToken.None);
        Assert.True(first.Total >= ManyFlags.Clips, $"Only {first.Total} questions.");
        Assert.Equal((PageLines, 10), (first.Lines.Count, last.Lines.Count));
        Assert.Equal(1, desk.Page(0, PageLines).Judged);
    }

    private T Timed<T>(string what, Func<T> act)
    {
        var watch = Stopwatch.StartNew();
        var result = act();
        output.WriteLine(FormattableString.Invariant($"{what}: {watch.Elapsed.TotalMilliseconds:0} ms"));
        return result;
    }
}
