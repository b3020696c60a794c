using System.Runtime.InteropServices;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Children;
using GaitSeat.Pipeline.Worker;
using GaitSeat.Store;
using Microsoft.Extensions.Logging.Abstractions;

// A worker for tests, with a measuring step that needs neither video nor models:
//   inside <clips> <dataset> <told> <connection or ->    measures in its own process and tells what it begins and ends
//   children <clips> <dataset> <wait ms> <connection or ->    measures in child processes, as the program does
//   clip <dataset> <wait ms> <clip>    such a child
using var stop = new CancellationTokenSource();
using var signal = PosixSignalRegistration.Create(PosixSignal.SIGTERM, s =>
{
    s.Cancel = true;
    stop.Cancel();
});
try
{
    return await RunAsync();
}
catch (SeasonException e)
{
    Console.Error.WriteLine(e.Message);
    return 2;
}

Task<int> RunAsync() => args switch
{
    ["inside", var clips, var dataset, var told, var connection] => InsideAsync(clips, dataset, told, connection),
    ["children", var clips, var dataset, var wait, var connection] => ChildrenAsync(clips, dataset, wait, connection),
    ["clip", var dataset, var wait, _] => ClipAsync(dataset, wait),
    _ => Task.FromResult(2),
};

async Task<int> InsideAsync(string clips, string dataset, string told, string connection)
{
    var guard = new Lock();
    var own = Path.Combine(told, Environment.ProcessId + ".txt");
    void Tell(string what, string file)
    {
        lock (guard) File.AppendAllText(own, $"{what} {file}\n");
    }

    var stage = new StubStage(TimeSpan.FromMilliseconds(150), f => Tell("begins", f), f => Tell("ends", f));
    using var host = Open(clips, dataset, connection, stage, work => new LockedClip(work, Path.GetFullPath(dataset)));
    Tell("runs", host.Name);
    await host.RunAsync(stop.Token);
    return 0;
}

async Task<int> ChildrenAsync(string clips, string dataset, string wait, string connection)
{
    var child = new ChildCommand(Environment.ProcessPath!, [typeof(MadeStage).Assembly.Location, "clip", Path.GetFullPath(dataset), wait]);
    using var host = Open(clips, dataset, connection, new MadeStage(TimeSpan.Zero), _ => new ChildWorker(child, 0, TimeSpan.FromSeconds(5)));
    await host.RunAsync(stop.Token);
    return 0;
}

async Task<int> ClipAsync(string dataset, string wait)
{
    var work = new ClipWork(new MadeStage(TimeSpan.FromMilliseconds(int.Parse(wait, null))), Dataset.Open(dataset), tracks: true, "0");
    await new ChildSide(Console.Out, Console.OpenStandardInput()).RunAsync(new LockedClip(work, dataset), stop.Token);
    return 0;
}

static WatchHost Open(string clips, string dataset, string connection, IClipStage stage, Func<ClipWork, IClipWorker> worker)
{
    var pipeline = new PipelineSettings
    {
        Watch = new()
        {
            ScanSeconds = 0.5, SettleSeconds = 0, StopSeconds = 2, PutOffMinutes = 0, Storage = new() { FreeMinimumMb = 0, ProbeSeconds = 0.5 },
            Retry = new() { PauseSeconds = 0.1, PauseMaximumSeconds = 1 }, Crash = new() { PauseSeconds = 0.1 }, Queue = new() { PollSeconds = 0.2, InvisibilitySeconds = 5 },
        },
    };
    var parts = new WatchParts(worker, (_, _) => Task.FromResult<double?>(1), NullLogger.Instance, "stub", "0", TimeProvider.System);
    return WatchHost.Open(new(clips, dataset, "season", connection == "-" ? null : connection, pipeline), stage, parts);
}
