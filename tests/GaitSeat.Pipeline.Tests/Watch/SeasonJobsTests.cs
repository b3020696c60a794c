using System.Collections.Concurrent;
using GaitSeat.Pipeline.Queue;
using GaitSeat.Pipeline.Watch;
using Microsoft.Extensions.Time.Testing;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>The queue on Hangfire, in memory.</summary>
public sealed class SeasonJobsTests
{
    private readonly FakeTimeProvider _clock = new();
    private readonly ConcurrentQueue<string> _done = new();

    [Fact]
    public async Task Clip_IsDoneOnce_HoweverOftenItIsOffered()
    {
        using var hold = new SemaphoreSlim(0);
        using var jobs = Jobs(TimeProvider.System, async (t, ct) =>
        {
            await hold.WaitAsync(ct);
            _done.Enqueue(t.File);
        });
        jobs.Open();

        Assert.Equal(2, jobs.Offer([new("a.mp4", 1, 1), new("b.mp4", 1, 1)]).Count);
        Assert.Empty(jobs.Offer([new("a.mp4", 1, 1), new("b.mp4", 1, 1)]));
        hold.Release(2);
        await UntilAsync(() => _done.Count == 2);

        Assert.Equal(["a.mp4", "b.mp4"], _done.Order());
    }

    [Fact]
    public async Task ReplacedClip_IsAnother()
    {
        using var jobs = Jobs(TimeProvider.System, (t, _) =>
        {
            _done.Enqueue($"{t.File} {t.Bytes}");
            return Task.CompletedTask;
        });
        jobs.Open();
        jobs.Offer([new("a.mp4", 1, 1)]);
        jobs.Offer([new("a.mp4", 2, 1)]);
        await UntilAsync(() => _done.Count == 2);

        Assert.Equal(["a.mp4 1", "a.mp4 2"], _done.Order());
    }

    /// <summary>A clip whose job ended and which is still not done is not lost: the folder brings it back, a while later.</summary>
    [Fact]
    public async Task ClipThatIsStillNotDone_MayBeOfferedAgain_AfterAWhile()
    {
        using var jobs = Jobs(_clock, (t, _) =>
        {
            _done.Enqueue(t.File);
            throw new InvalidOperationException("came to nothing");
        });
        jobs.Open();
        jobs.Offer([new("a.mp4", 1, 1)]);
        await UntilAsync(() => _done.Count == 1);
        Assert.Empty(jobs.Offer([new("a.mp4", 1, 1)]));

        await UntilAsync(() =>
        {
            _clock.Advance(TimeSpan.FromSeconds(61));
            return jobs.Offer([new("a.mp4", 1, 1)]).Count == 1;
        });
        await UntilAsync(() => _done.Count == 2);
    }

    [Fact]
    public async Task Close_StopsWhatIsUnderWay_AndOpenGoesOn()
    {
        var (begun, stopped) = (0, 0);
        using var jobs = Jobs(TimeProvider.System, async (t, ct) =>
        {
            if (Interlocked.Increment(ref begun) > 1)
            {
                _done.Enqueue(t.File);
                return;
            }

            try
            {
                await Task.Delay(Timeout.InfiniteTimeSpan, ct);
            }
            finally
            {
                Interlocked.Increment(ref stopped);
            }
        });
        jobs.Open();
        jobs.Offer([new("a.mp4", 1, 1), new("b.mp4", 1, 1)]);
        await UntilAsync(() => Volatile.Read(ref begun) == 1);

        await jobs.CloseAsync(TimeSpan.Zero);
        Assert.Equal((1, 0), (stopped, _done.Count));

        jobs.Open();
        jobs.Offer([new("a.mp4", 1, 1), new("b.mp4", 1, 1)]);
        await UntilAsync(() => _done.Distinct().Count() == 2);
        Assert.Equal(["a.mp4", "b.mp4"], _done.Order());
    }

    private static SeasonJobs Jobs(TimeProvider clock, Func<ClipTicket, CancellationToken, Task> work) =>
        new(QueueStorage.InMemory(), QueueStorage.NameOf("s", "p", "m"), "m-1", new() { StopSeconds = 2 }, clock, work);

    private static async Task UntilAsync(Func<bool> holds)
    {
        var held = false;
        for (var i = 0; i < 600 && !(held = holds()); i++) await Task.Delay(50);
        Assert.True(held, "it did not come to that within 30 s");
    }
}
