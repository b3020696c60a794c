using System.Diagnostics;
using GaitSeat.Pipeline.Worker;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>Three worker processes, one folder, one PostgreSQL; the measuring step is a stub that tells what it begins and ends.</summary>
public sealed class SharedQueueTests : IDisposable
{
    private const int Clips = 60;
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-shared-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task OfThreeWorkersOneIsKilledInTheMiddle_NothingIsLost_NothingDoneTwice()
    {
        if (!PostgresServer.IsInstalled) Assert.Skip(PostgresServer.Missing);
        await using var server = await PostgresServer.StartAsync();
        Folder("clips");
        var workers = Enumerable.Range(0, 3).Select(_ => Start(server.Connection)).ToList();
        await UntilAsync(() => Told().Count(t => t.What == "runs") == 3);
        for (var i = 0; i < Clips; i++) await File.WriteAllTextAsync(Path.Combine(Folder("clips"), $"c{i:00}.mp4"), $"clip {i}");

        Process? victim = null;
        await UntilAsync(() => Told().Count(t => t.What == "ends") >= 6 && (victim = workers.Find(w => IsUnderWay(w.Id))) is not null);
        victim!.Kill();
        await UntilAsync(() => Rows("clips") == Clips);
        foreach (var worker in workers.Where(w => w != victim)) await StopAsync(worker);

        var told = Told();
        Assert.Equal(Clips, told.Where(t => t.What == "ends").Select(t => t.File).Distinct().Count());
        // Begun twice is only what the killed one had in hand.
        var again = told.Where(t => t.What == "begins").GroupBy(t => t.File).Where(g => g.Count() > 1).ToList();
        Assert.True(again.Count <= 1, $"begun more than once: {string.Join(", ", again.Select(g => $"{g.Key} by {string.Join(" and ", g.Select(t => t.Process))}"))}");
        Assert.All(again, g => Assert.Contains(victim.Id, g.Select(t => t.Process)));
        Assert.True(told.Where(t => t.What == "ends").Select(t => t.Process).Distinct().Count() >= 2, "one worker did it all");

        var dataset = Dataset.Open(Folder("dataset"));
        Assert.Equal(Clips, dataset.Clips().Select(c => c.ClipKey).Distinct().Count());
        Assert.All(dataset.Clips(), c => Assert.Equal(StubStage.Reason, c.Reason));
        Assert.Equal(Clips, dataset.Clips().Count);
    }

    /// <summary>Each has a queue of its own and finds all clips; the lock of a clip and the ledger keep them apart.</summary>
    [Fact]
    public async Task TwoWorkersOnOneFolder_WithoutASharedQueue_DoEachClipOnce()
    {
        Folder("clips");
        for (var i = 0; i < Clips; i++) await File.WriteAllTextAsync(Path.Combine(Folder("clips"), $"c{i:00}.mp4"), $"clip {i}");
        Folder("told");
        var workers = Enumerable.Range(0, 2).Select(_ => Start("-")).ToList();

        await UntilAsync(() => Rows("clips") == Clips);
        foreach (var worker in workers) await StopAsync(worker);

        var told = Told();
        Assert.Equal(Clips, told.Count(t => t.What == "begins"));
        Assert.Equal(Clips, told.Where(t => t.What == "ends").Select(t => t.File).Distinct().Count());
        Assert.Equal(Clips, Dataset.Open(Folder("dataset")).Clips().Select(c => c.ClipKey).Distinct().Count());
        Assert.Empty(Directory.EnumerateFiles(Folder("dataset"), "*.tmp", SearchOption.AllDirectories));
    }

    private string Folder(string name) => Directory.CreateDirectory(Path.Combine(_folder, name)).FullName;

    private Process Start(string connection)
    {
        var program = typeof(StubStage).Assembly.Location;
        return Process.Start(new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet", [program, "inside", Folder("clips"), Folder("dataset"), Folder("told"), connection]))!;
    }

    private bool IsUnderWay(int process)
    {
        var own = Told().Where(t => t.Process == process).ToList();
        return own.Count(t => t.What == "begins") > own.Count(t => t.What == "ends");
    }

    private List<(int Process, string What, string File)> Told() =>
    [
        .. from path in Directory.EnumerateFiles(Folder("told"))
           from line in File.ReadAllText(path).Split('\n')[..^1]
           let words = line.Split(' ', 2)
           select (int.Parse(Path.GetFileNameWithoutExtension(path), null), words[0], words[1]),
    ];

    private int Rows(string table) => Directory.Exists(Path.Combine(Folder("dataset"), table)) ? Directory.GetFiles(Path.Combine(Folder("dataset"), table), "*.parquet").Length : 0;

    private static async Task StopAsync(Process worker)
    {
        using var kill = Process.Start("kill", ["-TERM", worker.Id.ToString(null, null)]);
        await worker.WaitForExitAsync();
        Assert.Equal(0, worker.ExitCode);
    }

    private static async Task UntilAsync(Func<bool> holds)
    {
        var held = false;
        for (var i = 0; i < 2400 && !(held = holds()); i++) await Task.Delay(50);
        Assert.True(held, "it did not come to that within two minutes");
    }
}
