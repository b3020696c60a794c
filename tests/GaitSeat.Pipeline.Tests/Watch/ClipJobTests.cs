using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Night;
using GaitSeat.Pipeline.Watch.Policies;
using GaitSeat.Pipeline.Worker;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>What becomes of a clip when things go wrong around it.</summary>
public sealed class ClipJobTests
{
    [Fact]
    public async Task Clip_IsDone_AndASecondTimeNothing()
    {
        using var bench = new Bench();
        var ticket = bench.Put("a.mp4", "a");

        await bench.RunAsync(ticket);
        await bench.RunAsync(ticket);

        Assert.Equal(1, bench.Calls);
        Assert.Equal([NightEnd.SetAside, NightEnd.AlreadyDone], bench.Entries.Select(e => e.End));
        Assert.Equal((ClipStatus.SetAside, StubStage.Reason), (Assert.Single(bench.Dataset.Clips()).Status, bench.Dataset.Clips()[0].Reason));
        Assert.Equal(25, bench.Metrics.Frames);
    }

    [Fact]
    public async Task ProcessThatDiesThreeTimes_SetsTheClipAside_WithItsLastWords()
    {
        using var bench = new Bench { Happens = (n, _) => throw new ClipCrashException($"ended with code {n}") };

        await bench.RunAsync(bench.Put("a.mp4", "a"));

        Assert.Equal(3, bench.Calls);
        var row = Assert.Single(bench.Dataset.Clips());
        Assert.Equal((ClipStatus.SetAside, "process_crashed"), (row.Status, row.Reason));
        Assert.Contains("3 times, the last time: ended with code 3", row.Detail, StringComparison.Ordinal);
        Assert.Equal(2, bench.Metrics.Retries["crash"]);
        Assert.Equal(1, bench.Metrics.SetAside["process_crashed"]);
    }

    [Fact]
    public async Task ProcessThatDiesTwice_IsTriedAThirdTime()
    {
        using var bench = new Bench { Happens = (n, _) => n < 3 ? throw new ClipCrashException("x") : Task.CompletedTask };

        await bench.RunAsync(bench.Put("a.mp4", "a"));

        Assert.Equal((3, StubStage.Reason), (bench.Calls, bench.Dataset.Clips()[0].Reason));
    }

    /// <summary>Two crashes before the worker itself was restarted leave one more.</summary>
    [Fact]
    public async Task Crashes_AreCountedOverRestarts()
    {
        using var bench = new Bench { Happens = (_, _) => throw new ClipCrashException("again") };
        var ticket = bench.Put("a.mp4", "a");
        var key = await ClipKey.OfFileAsync(Path.Combine(bench.Clips, "a.mp4"), CancellationToken.None);
        var count = CrashCount.Of(bench.Desk, key, new('a', 64), new('b', 64), bench.Time);
        count.Add("first");
        count.Add("second");

        await bench.RunAsync(ticket);

        Assert.Equal(1, bench.Calls);
        Assert.Equal("process_crashed", bench.Dataset.Clips()[0].Reason);
    }

    /// <summary>The system took a process's memory, or somebody killed it: that passes, and counts against nobody.</summary>
    [Fact]
    public async Task KilledProcess_IsTriedAgain_AndIsNoCrash()
    {
        using var bench = new Bench { Happens = (n, _) => n < 5 ? throw new ClipKilledException("killed") : Task.CompletedTask };

        await bench.RunAsync(bench.Put("a.mp4", "a"));

        Assert.Equal((5, StubStage.Reason), (bench.Calls, bench.Dataset.Clips()[0].Reason));
        Assert.Equal(4, bench.Metrics.Retries["retry"]);
        Assert.Empty(Crashes(bench));
    }

    [Fact]
    public async Task ClipThatIsAlwaysKilled_IsPutOff_AndSetAsideTheThirdTime()
    {
        using var bench = new Bench { Happens = (n, _) => throw new ClipKilledException($"killed for the {n}th time") };
        var ticket = bench.Put("a.mp4", "a");

        for (var night = 0; night < 3; night++) await bench.RunAsync(ticket);

        Assert.Equal(3 * (1 + bench.Settings.Retry.Attempts), bench.Calls);
        Assert.Equal([(NightEnd.PutOff, "killed"), (NightEnd.PutOff, "killed"), (NightEnd.SetAside, "process_crashed")], bench.Entries.Select(e => (e.End, e.Reason!)));
        Assert.Contains("killed for the 18th time", Assert.Single(bench.Dataset.Clips()).Detail, StringComparison.Ordinal);
    }

    /// <summary>Someone copies another clip over it while it is measured: what was seen belongs to neither.</summary>
    [Fact]
    public async Task ClipReplacedWhileItIsRead_LeavesNoRow_UntilItStandsStill()
    {
        using var bench = new Bench();
        var ticket = bench.Put("a.mp4", "a");
        ClipTicket? fresh = null;
        bench.Happens = (n, _) =>
        {
            if (n == 1) fresh = bench.Put("a.mp4", "quite another clip");
            return Task.CompletedTask;
        };

        await bench.RunAsync(ticket);
        Assert.Equal((1, 0), (bench.Calls, bench.Entries.Count));
        Assert.Empty(bench.Dataset.Clips());

        await bench.RunAsync(fresh!);
        Assert.Equal(await ClipKey.OfFileAsync(Path.Combine(bench.Clips, "a.mp4"), CancellationToken.None), Assert.Single(bench.Dataset.Clips()).ClipKey);
    }

    /// <summary>The same size and, by a hand on the clock, the same time: the bytes of what could not be measured are compared.</summary>
    [Fact]
    public async Task ClipSetAside_WhoseBytesAreOthersByNow_IsNotRecorded()
    {
        using var bench = new Bench(new() { Retry = new() { Attempts = 1 } });
        var ticket = bench.Put("a.mp4", "one");
        bench.Happens = (_, _) =>
        {
            bench.Put("a.mp4", "two");
            File.SetLastWriteTimeUtc(Path.Combine(bench.Clips, "a.mp4"), new(ticket.ModifiedTicksUtc, DateTimeKind.Utc));
            return Task.CompletedTask;
        };

        await bench.RunAsync(ticket);

        Assert.Equal(NightEnd.PutOff, Assert.Single(bench.Entries).End);
        Assert.Empty(bench.Dataset.Clips());
    }

    [Fact]
    public async Task ClipTakenAwayWhileItIsRead_IsNotSetAside()
    {
        using var bench = new Bench();
        var ticket = bench.Put("a.mp4", "a");
        bench.Happens = (_, _) =>
        {
            File.Delete(Path.Combine(bench.Clips, "a.mp4"));
            return Task.CompletedTask;
        };

        await bench.RunAsync(ticket);

        Assert.Equal((1, 0), (bench.Calls, bench.Entries.Count));
        Assert.Empty(bench.Dataset.Clips());
    }

    [Fact]
    public async Task WhatCanPass_IsTriedAgain_WithGrowingPauses()
    {
        var at = new List<double>();
        using var bench = new Bench(new() { Retry = new() { PauseSeconds = 10, Jitter = false } });
        bench.Happens = (n, _) =>
        {
            at.Add(bench.Time.GetUtcNow().TimeOfDay.TotalSeconds);
            return n < 4 ? throw new IOException("busy") : Task.CompletedTask;
        };

        await bench.RunAsync(bench.Put("a.mp4", "a"));

        Assert.Equal(4, bench.Calls);
        Assert.Equal((NightEnd.SetAside, 3), (bench.Entries[0].End, bench.Entries[0].Retries));
        // 10, 20 and 40 s are waited; the clock of the test runs on a little while the job is at work.
        Assert.All(at.Zip(at.Skip(1), (a, b) => b - a).Zip([10.0, 20, 40]), p => Assert.True(p.First >= p.Second, $"paused {p.First} s; {p.Second} s at least"));
    }

    [Fact]
    public async Task WhatDoesNotPass_IsPutOff_NotSetAside_AndDueAgainLater()
    {
        using var bench = new Bench { Happens = (_, _) => throw new IOException("still being copied") };
        var ticket = bench.Put("a.mp4", "a");

        await bench.RunAsync(ticket);

        Assert.Equal(1 + bench.Settings.Retry.Attempts, bench.Calls);
        Assert.Equal(NightEnd.PutOff, Assert.Single(bench.Entries).End);
        Assert.Empty(bench.Dataset.Clips());
        Assert.Single(bench.Pending.Of([ticket], bench.Sheet.Current()));
        Assert.Empty(bench.Pending.Due([ticket]));
        bench.Time.Advance(TimeSpan.FromMinutes(bench.Settings.PutOffMinutes));
        Assert.Single(bench.Pending.Due([ticket]));
    }

    [Fact]
    public async Task FullDisk_Pauses_SaysSo_AndGoesOn_WithoutCountingAgainstTheClip()
    {
        using var bench = new Bench { FreeBytes = 5_000_000 };
        bench.Happens = (n, _) => n == 1 ? throw new DatasetException("no room") : Task.CompletedTask;
        var (steps, paused) = (0, "");

        await bench.RunAsync(bench.Put("a.mp4", "a"), stepSeconds: 10, each: () =>
        {
            paused = bench.Metrics.Paused ?? paused;
            if (++steps == 200) bench.FreeBytes = long.MaxValue;
        });

        Assert.Equal(2, bench.Calls);
        Assert.Contains("has 5 MB left", paused, StringComparison.Ordinal);
        Assert.Null(bench.Metrics.Paused);
        Assert.Equal((NightEnd.SetAside, 0), (bench.Entries[0].End, bench.Entries[0].Retries));
    }

    [Fact]
    public async Task ShareThatIsGone_Pauses_UntilItIsBack()
    {
        using var bench = new Bench();
        var ticket = bench.Put("a.mp4", "a");
        Directory.Move(bench.Clips, bench.Clips + "-away");
        var steps = 0;

        await bench.RunAsync(ticket, stepSeconds: 10, each: () =>
        {
            if (++steps == 50) Directory.Move(bench.Clips + "-away", bench.Clips);
        });

        Assert.Equal((1, StubStage.Reason), (bench.Calls, bench.Dataset.Clips()[0].Reason));
    }

    [Fact]
    public async Task ClipThatTakesForEver_IsStoppedInProportionToItsLength_AndCountsAsACrash()
    {
        var begun = new List<DateTimeOffset>();
        using var bench = new Bench(new() { TimeOut = new() { BaseSeconds = 100, SecondsPerSecond = 5 } });
        bench.Happens = async (_, ct) =>
        {
            begun.Add(bench.Time.GetUtcNow());
            await Task.Delay(Timeout.InfiniteTimeSpan, ct);
        };

        await bench.RunAsync(bench.Put("a.mp4", "a"), stepSeconds: 5);

        Assert.Equal(3, bench.Calls);
        Assert.True(begun[1] - begun[0] >= TimeSpan.FromSeconds(150), $"the first try had {begun[1] - begun[0]}; 100 s and 5 s for each of 10 s are due");
        Assert.Contains("not done within 150 s", bench.Dataset.Clips()[0].Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhatCannotGetBetter_IsNotTriedAgain_ButListed()
    {
        using var bench = new Bench { Happens = (_, _) => throw new InvalidOperationException("a bug") };

        await bench.RunAsync(bench.Put("a.mp4", "a"));

        Assert.Equal(1, bench.Calls);
        Assert.Equal((NightEnd.PutOff, "failed"), (bench.Entries[0].End, bench.Entries[0].Reason));
        Assert.Empty(bench.Dataset.Clips());
    }

    [Fact]
    public async Task ClipThatWasReplaced_IsLeftToItsNewTicket()
    {
        using var bench = new Bench();
        var old = bench.Put("a.mp4", "a");
        var fresh = bench.Put("a.mp4", "quite another clip");

        await bench.RunAsync(old);
        Assert.Equal((0, 0), (bench.Calls, bench.Entries.Count));

        await bench.RunAsync(fresh);
        Assert.Equal(1, bench.Calls);
    }

    [Fact]
    public async Task ClipInOtherHands_IsLeftThere()
    {
        using var bench = new Bench { Happens = (_, _) => throw new ClipElsewhereException("elsewhere") };

        await bench.RunAsync(bench.Put("a.mp4", "a"));

        Assert.Equal((1, 0), (bench.Calls, bench.Entries.Count));
    }

    private static string[] Crashes(Bench bench) =>
        Directory.Exists(Path.Combine(bench.Desk.Folder, "crashes")) ? Directory.GetFiles(Path.Combine(bench.Desk.Folder, "crashes")) : [];

    [Fact]
    public async Task ConsentTakenBack_ErasesTheRows()
    {
        using var bench = new Bench();
        var ticket = bench.Put("a.mp4", "a");
        await bench.RunAsync(ticket);
        File.WriteAllText(Path.Combine(bench.Clips, SessionSheet.FileName), "clip_file,rider,consent\na.mp4,Onyx,no\n");

        var due = Assert.Single(bench.Pending.Of([ticket], bench.Sheet.Current()));
        await bench.RunAsync(due);

        Assert.Empty(bench.Dataset.Clips());
        Assert.Empty(bench.Pending.Of([ticket], bench.Sheet.Current()));
    }

    /// <summary>Nobody touches a file: at midnight the worker finds by itself that a consent is over.</summary>
    [Fact]
    public async Task ConsentThatEnds_ErasesTheRows_TheDayAfter()
    {
        using var bench = new Bench();
        var ticket = bench.Put("a.mp4", "a");
        File.WriteAllText(Path.Combine(bench.Clips, SessionSheet.FileName), "clip_file,rider,consent\na.mp4,Onyx,yes\n");
        File.WriteAllText(Path.Combine(bench.Clips, ConsentFile.FileName), "rider,scope,until\nOnyx,measure show,2026-11-24\n");
        await bench.RunAsync(ticket);
        Assert.Single(bench.Dataset.Clips());
        Assert.Empty(bench.Pending.Of([ticket], bench.Sheet.Current()));

        bench.Time.Jumped = TimeSpan.FromDays(1);
        await bench.RunAsync(Assert.Single(bench.Pending.Of([ticket], bench.Sheet.Current())));

        Assert.Empty(bench.Dataset.Clips());
        var entry = bench.Entries[^1];
        Assert.Equal((NightEnd.NoConsent, "consent_ended"), (entry.End, entry.Reason));
        Assert.Contains("the consent of rider Onyx ended with 2026-11-24", entry.Detail, StringComparison.Ordinal);
    }
}
