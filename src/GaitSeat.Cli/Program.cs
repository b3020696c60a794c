using System.Runtime.InteropServices;
using GaitSeat.Cli;
using GaitSeat.Cli.Watching;

if (WindowsService.IsAsked) return await WindowsService.RunAsync(ct => CommandLine.RunAsync(args, AnsiConsoles.Create(), ct));

using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, press) =>
{
    press.Cancel = true;
    stop.Cancel();
};
// What systemd and containers send.
using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, signal =>
{
    signal.Cancel = true;
    stop.Cancel();
});

return await CommandLine.RunAsync(args, AnsiConsoles.Create(), stop.Token);
