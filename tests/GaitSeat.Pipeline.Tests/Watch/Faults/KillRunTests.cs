using System.Diagnostics;
using GaitSeat.Pipeline.Worker;

namespace GaitSeat.Pipeline.Tests.Watch.Faults;

/// <summary>
/// Two workers with child processes on one PostgreSQL, and SIGKILL at random moments for one of them, for a child or for the database, until the season is done; then the next season.
/// The measuring step is made up (no video, no models), so that a clip is short and the moments fall on starting, locking, writing and telling rather than on decoding.
/// </summary>
public sealed class KillRunTests(ITestOutputHelper output) : IDisposable
{
    private static readonly int _clips = LongRun.IsOn ? 60 : 16;
    private const int LongestPauseMilliseconds = 600;
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-kills-").FullName;
    private readonly Random _chance = new(20261129);
    private readonly Dictionary<string, int> _killed = new() { ["worker"] = 0, ["clip's process"] = 0, ["PostgreSQL"] = 0 };

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task WhoeverIsKilledWhenever_EachClipIsThereOnce_AndTheBytesAreThoseOfAQuietRun()
    {
        var kills = LongRun.IsOn ? 240 : 4;
        if (!PostgresServer.IsInstalled) Assert.Skip(PostgresServer.Missing);
        await using var server = await PostgresServer.StartAsync();
        for (var i = 0; i < _clips; i++) await File.WriteAllTextAsync(Path.Combine(Folder("clips"), $"c{i:00}.mp4"), $"{(i % 10 == 0 ? "no " : "")}clip {i}");
        var quiet = Folder("quiet");
        using (var worker = Start(quiet, "-"))
        {
            await UntilDoneAsync(quiet);
            await StopAsync(worker);
        }

        var seasons = 0;
        while (_killed.Values.Sum() < kills || seasons == 0)
        {
            var dataset = Folder($"season{seasons++}");
            List<Process> workers = [Start(dataset, server.Connection), Start(dataset, server.Connection)];
            while (Rows(dataset) < _clips && _killed.Values.Sum() < kills) await KillOneAsync(dataset, workers, server);
            RestartThoseThatCouldNotStart(dataset, workers, server);
            await UntilDoneAsync(dataset);
            foreach (var worker in workers) await StopAsync(worker);
            SeasonCheck.Throw(quiet, dataset, _clips, "strides", "tracks", "spells");
            await server.ForgetAsync("gaitseat_queue");
        }

        output.WriteLine($"{_killed.Values.Sum()} kills over {seasons} seasons of {_clips} clips: {string.Join(", ", _killed.Select(k => $"{k.Key} {k.Value}"))}");
        Assert.True(_killed.Values.Sum() >= kills);
    }

    private async Task KillOneAsync(string dataset, List<Process> workers, PostgresServer server)
    {
        // Mostly a clip is in hand; where starting takes long, as on a busy machine, kills would else fall on nothing but starts.
        var patience = _chance.Next(4) == 0 ? 0 : 400;
        while (patience-- > 0 && Children(dataset).Count == 0)
        {
            await Task.Delay(50);
            RestartThoseThatCouldNotStart(dataset, workers, server);
        }

        await Task.Delay(_chance.Next(LongestPauseMilliseconds));
        RestartThoseThatCouldNotStart(dataset, workers, server);
        switch (_chance.Next(10))
        {
            case 0:
                await server.KillHardAsync();
                await Task.Delay(_chance.Next(LongestPauseMilliseconds));
                await server.ResumeAsync();
                _killed["PostgreSQL"]++;
                break;
            case < 5:
                var place = _chance.Next(workers.Count);
                workers[place].Kill();
                workers[place].Dispose();
                workers[place] = Start(dataset, server.Connection);
                _killed["worker"]++;
                break;
            default:
                var children = Children(dataset);
                if (children.Count > 0 && Processes.Kill(children[_chance.Next(children.Count)])) _killed["clip's process"]++;
                break;
        }
    }

    /// <summary>What a service manager does: a worker that finds no database at its start says so and ends. Any other end is a fault.</summary>
    private void RestartThoseThatCouldNotStart(string dataset, List<Process> workers, PostgresServer server)
    {
        const int NoDatabase = 2;
        for (var i = 0; i < workers.Count; i++)
        {
            if (!workers[i].HasExited) continue;
            Assert.Equal(NoDatabase, workers[i].ExitCode);
            workers[i].Dispose();
            workers[i] = Start(dataset, server.Connection);
        }
    }

    private static List<int> Children(string dataset) => Processes.Find(words => words.Contains("clip") && words.Contains(dataset));

    private string Folder(string name) => Directory.CreateDirectory(Path.Combine(_folder, name)).FullName;

    private Process Start(string dataset, string connection)
    {
        const string WaitMilliseconds = "50";
        var program = typeof(MadeStage).Assembly.Location;
        string[] words = [program, "children", Folder("clips"), dataset, WaitMilliseconds, connection];
        return Process.Start(new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet", words))!;
    }

    private static int Rows(string dataset) => Directory.Exists(Path.Combine(dataset, "clips")) ? Directory.GetFiles(Path.Combine(dataset, "clips"), "*.parquet").Length : 0;

    private static async Task UntilDoneAsync(string dataset)
    {
        for (var i = 0; i < 6000 && Rows(dataset) < _clips; i++) await Task.Delay(50);
        Assert.Equal(_clips, Rows(dataset));
    }

    private static async Task StopAsync(Process worker)
    {
        using (worker)
        using (var kill = Process.Start("kill", ["-TERM", worker.Id.ToString(null, null)]))
        {
            await worker.WaitForExitAsync();
            Assert.Equal(0, worker.ExitCode);
        }
    }
}
