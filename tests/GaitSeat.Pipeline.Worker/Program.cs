using System.Runtime.InteropServices;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Children;
using GaitSeat.Pipeline.Worker;
using Microsoft.Extensions.Logging.Abstractions;

// clip folder, dataset folder, folder for what is told, PostgreSQL connection
if (args is not [var clips, var dataset, var told, var connection]) return 2;

using var stop = new CancellationTokenSource();
using var signal = PosixSignalRegistration.Create(PosixSignal.SIGTERM, s =>
{
    s.Cancel = true;
    stop.Cancel();
});
var guard = new Lock();
var own = Path.Combine(told, Environment.ProcessId + ".txt");
void Tell(string what, string file)
{
    lock (guard) File.AppendAllText(own, $"{what} {file}\n");
}

var stage = new StubStage(TimeSpan.FromMilliseconds(150), f => Tell("begins", f), f => Tell("ends", f));
var pipeline = new PipelineSettings
{
    Watch = new()
    {
        ScanSeconds = 0.5, SettleSeconds = 0, StopSeconds = 2, Storage = new() { FreeMinimumMb = 0 },
        Queue = new() { PollSeconds = 0.2, InvisibilitySeconds = 5 },
    },
};
var parts = new WatchParts(
    (work, sheet) => new LockedClip(work, Path.GetFullPath(dataset), f => sheet.Current().RowOf(f)),
    (_, _) => Task.FromResult<double?>(1), NullLogger.Instance, "stub", "0", TimeProvider.System);
using var host = WatchHost.Open(new(clips, dataset, "season", connection, pipeline), stage, parts);
Tell("runs", host.Name);
await host.RunAsync(stop.Token);
return 0;
